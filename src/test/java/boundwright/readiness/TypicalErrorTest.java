package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.footfall.Foot;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.TypicalError.Change;
import boundwright.readiness.TypicalError.Pair;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The error of a test and what it means for a change. */
class TypicalErrorTest {
  private static final long SEED = 20260415;
  private static final List<Pair> FIVE =
      List.of(new Pair(62, 67), new Pair(78, 76), new Pair(81, 87), new Pair(55, 55), new Pair(66, 63));

  /** Five athletes tested twice, in the form of Hopkins 2000, Sports Med 30:1-15 (form read, figures worked). */
  @Test
  void fiveAthletesTestedTwice() {
    TypicalError e = TypicalError.ofPairs(FIVE);
    assertThat(e.changeSd()).isCloseTo(4.0866, within(5e-5));
    assertThat(e.te()).isCloseTo(2.8896, within(5e-5));
    assertThat(e.cvPercent()).isCloseTo(4.188, within(5e-4));
    assertThat(e.icc()).isCloseTo(.9384, within(5e-5));
    assertThat(e.mean()).isCloseTo(69.0, within(1e-12));
    assertThat(e.meanChange()).isCloseTo(1.2, within(1e-12));
    assertThat(e.detectableChange()).isCloseTo(1.96 * Math.sqrt(2) * 2.8896, within(5e-4));
  }

  /** The levels' variance and the error's variance make the ICC: its definition, against the mean squares' way to it. */
  @Test
  void betweenAndErrorVarianceMakeTheCorrelation() {
    TypicalError e = TypicalError.ofPairs(FIVE);
    double between = e.betweenSd() * e.betweenSd();
    assertThat(between / (between + e.te() * e.te())).isCloseTo(e.icc(), within(1e-12));
    assertThat(e.smallestWorthwhile()).isCloseTo(0.2 * e.betweenSd(), within(1e-12));
    assertThat(e.seesWorthwhile()).isFalse();
  }

  /** Chi-square 2.5 and 97.5 % points on 4 degrees of freedom are 0.4844 and 11.143 (tables; memory). */
  @Test
  void intervalByChiSquare() {
    TypicalError e = TypicalError.ofPairs(FIVE);
    assertThat(e.interval().low()).isCloseTo(e.te() * Math.sqrt(4 / 11.143), within(1e-3));
    assertThat(e.interval().high()).isCloseTo(e.te() * Math.sqrt(4 / 0.4844), within(1e-3));
  }

  /** The interval holds the true error 95 times in 100 when the errors are normal: that is what it says. */
  @Test
  void intervalHoldsTheTrueError() {
    Random r = new Random(SEED);
    int held = 0;
    int rounds = 2000;
    for (int i = 0; i < rounds; i++) {
      List<Pair> pairs = new ArrayList<>();
      for (int a = 0; a < 8; a++) {
        double level = 7 + r.nextGaussian() * 0.6;
        pairs.add(new Pair(level + r.nextGaussian() * 0.2, level + 0.1 + r.nextGaussian() * 0.2));
      }
      held += TypicalError.ofPairs(pairs).interval().holds(0.2) ? 1 : 0;
    }
    // Four standard errors of a share of .95 in 2000 rounds.
    assertThat(held / (double) rounds).as("seed " + SEED).isCloseTo(.95, within(.02));
  }

  /** A shift that all athletes share is not error. */
  @Test
  void learningTheTestIsNotError() {
    List<Pair> shifted = FIVE.stream().map(p -> new Pair(p.first(), p.second() + 10)).toList();
    assertThat(TypicalError.ofPairs(shifted).te()).isCloseTo(TypicalError.ofPairs(FIVE).te(), within(1e-12));
    assertThat(TypicalError.ofPairs(shifted).meanChange()).isCloseTo(11.2, within(1e-12));
  }

  @Test
  void judgesAChange() {
    TypicalError e = new TypicalError(12, 7.0, 0, 0.10, 0.50, .96);
    Change small = e.judge(7.00, 7.20);
    assertThat(small.beyondError()).isFalse();
    assertThat(small.inWords()).contains("Within the error");
    Change large = e.judge(7.00, 7.30);
    assertThat(large.beyondError()).isTrue();
    assertThat(large.inWords()).contains("Better");
    // (0.30 - 0.10) / (0.10 sqrt 2) = 1.4142: upper normal share .9214 (tables; memory).
    assertThat(large.chanceBetter()).isCloseTo(.9214, within(5e-5));
    assertThat(e.judge(7.30, 7.00).chanceWorse()).isCloseTo(.9214, within(5e-5));
    assertThat(e.judge(7.30, 7.00).inWords()).contains("Lower");
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> TypicalError.ofPairs(FIVE.subList(0, 1))).isInstanceOf(RefusedException.class).hasMessageContaining("was 1");
    assertThatThrownBy(() -> TypicalError.ofPairs(List.of(new Pair(1, 2), new Pair(1, Double.NaN))))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("NaN");
    assertThat(TypicalError.ofPairs(FIVE.subList(0, 2)).icc()).isNaN();
    assertThat(TypicalError.ofPairs(List.of(new Pair(.1, .1), new Pair(.1, .1), new Pair(.1, .1))).icc()).isNaN();
  }

  /** 148 / 160. Standing: worked. */
  @Test
  void limbSymmetry() {
    LimbSymmetry s = new LimbSymmetry(1.48, 1.60);
    assertThat(s.share()).isCloseTo(.925, within(1e-12));
    assertThat(s.weaker()).contains(Foot.RIGHT);
    assertThat(s.inWords()).contains("right leg", "92.5 %", "own history");
    assertThat(new LimbSymmetry(1.6, 1.6).weaker()).isEmpty();
    assertThatThrownBy(() -> new LimbSymmetry(0, 1)).isInstanceOf(RefusedException.class).hasMessageContaining("0.0 (right)");
  }

  /** One earlier test: 1.96 sqrt 2 te (worked); many: the history's own error fades, down to 1.96 te. */
  @Test
  void aLegAgainstItsOwnHistory() {
    LegChange one = LegChange.of(Foot.LEFT, List.of(9.00), 8.60, 0.20);
    assertThat(one.detectable()).isCloseTo(1.96 * Math.sqrt(2) * 0.20, within(1e-4));
    assertThat(one.lower()).isFalse();
    assertThat(one.inWords(LengthUnit.METRES)).contains("left leg is 0.40 m below its one earlier test (9.00 m)", "0.55 m", "within the error");
    LegChange many = LegChange.of(Foot.LEFT, List.of(9.1, 8.9, 9.0, 9.0), 8.50, 0.20);
    assertThat(many.detectable()).isCloseTo(1.96 * 0.20 * Math.sqrt(1.25), within(1e-4));
    assertThat(many.lower()).isTrue();
    assertThat(many.inWords(LengthUnit.METRES)).contains("mean of its 4 earlier tests", "more than error", "medical staff");
    assertThat(LegChange.of(Foot.RIGHT, List.of(9.0), 9.8, 0.2).inWords(LengthUnit.METRES)).contains("gained");
  }

  @Test
  void aLegWithoutHistoryIsNotJudged() {
    assertThatThrownBy(() -> LegChange.of(Foot.LEFT, List.of(), 8.5, 0.2)).isInstanceOf(RefusedException.class).hasMessageContaining("no earlier score");
    assertThatThrownBy(() -> LegChange.of(Foot.LEFT, List.of(9.0), 8.5, 0)).isInstanceOf(RefusedException.class).hasMessageContaining("above 0");
  }
}
