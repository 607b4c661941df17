package boundwright.approach.aim;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSpread;
import boundwright.inference.Normal;
import boundwright.meet.Attempt;
import boundwright.meet.Meet;
import boundwright.meet.MeetRules;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Spread and bias at the board with fouls counted in, and the advice that comes of it. */
class AimBoardSpreadTest {
  /** Section 7 (worked): fouls .30 and a mean legal gap of 8 cm give se 7.83 and an aim of 4.11 cm. */
  @Test
  void fromFoulShareAndMeanLegalGap() {
    BoardSpread.Fit fit = BoardSpread.ofShare(.30, .08);
    assertThat(100 * fit.sd_m()).isCloseTo(7.83, within(.005));
    assertThat(100 * fit.mean_m()).isCloseTo(4.11, within(.005));
  }

  /** Without fouls the likeliest values are mean and (divided by n) standard deviation, by definition. */
  @Test
  void likeliestWithoutFoulsIsMeanAndSpread() {
    BoardSpread.Fit fit = BoardSpread.likeliest(BoardGaps.of(List.of(.05, .12, .02, .20, .11), 0));
    assertThat(fit.mean_m()).isCloseTo(.10, within(1e-9));
    assertThat(fit.sd_m()).isCloseTo(Math.sqrt((.0025 + .0004 + .0064 + .01 + .0001) / 5), within(1e-9));
  }

  /** The likeliest values sit on top of a likelihood computed here on a fine grid. */
  @Test
  void likeliestWithFoulsIsTheTop() {
    List<Double> gaps = List.of(.05, .12, .02, .20, .11, .03, .08);
    BoardSpread.Fit fit = BoardSpread.likeliest(BoardGaps.of(gaps, 3));
    double top = logLikelihood(gaps, 3, fit.mean_m(), fit.sd_m());
    for (double dm = -.03; dm <= .03; dm += .001) {
      for (double ds = -.03; ds <= .03; ds += .001) {
        assertThat(logLikelihood(gaps, 3, fit.mean_m() + dm, fit.sd_m() + ds)).isLessThanOrEqualTo(top + 1e-9);
      }
    }
  }

  private static double logLikelihood(List<Double> gaps, int fouls, double mean, double sd) {
    double l = fouls * Math.log(Normal.below(-mean / sd));
    for (double g : gaps) {
      l += Math.log(Normal.density((g - mean) / sd) / sd);
    }
    return l;
  }

  /** 90 % intervals on 300 simulated logs whose athletes are drawn as the prior says: 85-95 % hold the truth. */
  @Test
  void intervalsHoldTheTruth() {
    Random random = new Random(90);
    int mean = 0;
    int sd = 0;
    int foul = 0;
    for (int i = 0; i < 300; i++) {
      double m = .08 + .06 * random.nextGaussian();
      double s = .10 * Math.exp(.35 * random.nextGaussian());
      List<Double> gaps = new ArrayList<>();
      int fouls = 0;
      for (int a = 0; a < 18; a++) {
        double g = m + s * random.nextGaussian();
        if (g < 0) {
          fouls++;
        } else {
          gaps.add(g);
        }
      }
      BoardSpread b = BoardSpread.of(BoardGaps.of(gaps, fouls));
      mean += holds(b.mean_m(), m);
      sd += holds(b.sd_m(), s);
      foul += holds(b.foulChance(), Normal.below(-m / s));
    }
    assertThat(mean / 300.0).as("mean, seed 90").isBetween(.85, .95);
    assertThat(sd / 300.0).as("spread, seed 90").isBetween(.85, .95);
    assertThat(foul / 300.0).as("fouls, seed 90").isBetween(.85, .95);
  }

  private static int holds(Estimate e, double value) {
    return e.p05() <= value && value <= e.p95() ? 1 : 0;
  }

  /** A long log forgets the prior and finds the likeliest values. */
  @Test
  void aLongLogForgetsThePrior() {
    Random random = new Random(2);
    List<Double> gaps = new ArrayList<>();
    int fouls = 0;
    for (int a = 0; a < 3000; a++) {
      double g = .11 + .06 * random.nextGaussian();
      if (g < 0) {
        fouls++;
      } else {
        gaps.add(g);
      }
    }
    BoardGaps log = BoardGaps.of(gaps, fouls);
    BoardSpread b = BoardSpread.of(log);
    BoardSpread.Fit fit = BoardSpread.likeliest(log);
    assertThat(b.mean_m().p50()).isCloseTo(fit.mean_m(), within(5e-4));
    assertThat(b.sd_m().p50()).isCloseTo(fit.sd_m(), within(5e-4));
    assertThat(b.mean_m().halfWidth()).isCloseTo(1.645 * .06 / Math.sqrt(3000), within(3e-4));
    assertThat(b.attempts()).isEqualTo(3000);
    assertThat(log.foulShare()).isCloseTo(Normal.below(-.11 / .06), within(.01));
  }

  /** Nothing logged is the prior; fouls alone still say something: further over the line than the prior. */
  @Test
  void foulsAloneTell() {
    BoardSpread none = BoardSpread.of(BoardGaps.of(List.of(), 0));
    BoardSpread fouls = BoardSpread.of(BoardGaps.of(List.of(), 5));
    assertThat(none.mean_m().p50()).isCloseTo(.08, within(.01));
    assertThat(fouls.mean_m().p50()).isLessThan(0);
    assertThat(fouls.foulChance().p50()).isGreaterThan(.8);
    assertThatThrownBy(() -> BoardSpread.likeliest(BoardGaps.of(List.of(), 5)))
        .isInstanceOf(RefusedException.class).hasMessageContaining("at least 2");
    assertThatThrownBy(() -> BoardSpread.likeliest(BoardGaps.of(List.of(.1, .1), 0))).isInstanceOf(RefusedException.class);
  }

  /** "Move the start back", with the foul chance before and after. */
  @Test
  void adviceMovesTheStart() {
    List<Double> gaps = List.of(.02, .05, .01, .08, .03, .10, .04);
    BoardSpread board = BoardSpread.of(BoardGaps.of(gaps, 6));
    EffectiveForm form = EffectiveForm.of(List.of(13.9, 14.1, 14.0, 13.8, 14.25));
    AimAdvice a = AimAdvice.of(board, form.with(board), new Goal.Longest(0), 3);
    assertThat(a.moveStart_m()).isCloseTo(a.best().aim_m() - board.mean_m().p50(), within(1e-12)).isPositive();
    assertThat(a.best().foulChance()).isLessThan(a.now().foulChance());
    assertThat(a.best().worth()).isGreaterThan(a.now().worth());
    assertThat(a.nearest_m()).isLessThanOrEqualTo(a.best().aim_m());
    assertThat(a.furthest_m()).isGreaterThanOrEqualTo(a.best().aim_m());
    assertThat(a.words(LengthUnit.METRES)).startsWith("Move the start back ").contains(" cm").contains("Foul chance now");
    assertThat(a.words(LengthUnit.FEET_INCHES)).contains(" in.");
  }

  /** Effective form: with many attempts the sample's own mean and standard deviation. */
  @Test
  void effectiveForm() {
    Random random = new Random(6);
    List<Double> e = new ArrayList<>();
    for (int i = 0; i < 2000; i++) {
      e.add(14 + .2 * random.nextGaussian());
    }
    EffectiveForm form = EffectiveForm.of(e);
    assertThat(form.mean_m().p50()).isCloseTo(14, within(.02));
    assertThat(form.sd_m().p50()).isCloseTo(.2, within(.01));
    assertThat(EffectiveForm.of(List.of(14.0)).sd_m().p95()).isGreaterThan(.4);
    assertThatThrownBy(() -> EffectiveForm.of(List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("both");
  }

  /** Moving the start back by d for some attempts and correcting the log finds the same place (invariance; worked). */
  @Test
  void aMovedStartMarkIsCorrected() {
    Meet meet = Meet.of(MeetRules.DEFAULT, List.of("A"));
    Attempt back = new Attempt("A", 2, Attempt.Result.VALID, 14.0, null, .15, .10);
    Attempt foul = new Attempt("A", 3, Attempt.Result.FOUL, null, null, null, .10);
    BoardGaps log = meet.with(Attempt.foul("A", 1)).with(back).with(foul).with(Attempt.pass("A", 4)).boardGaps("A");
    assertThat(log.measured_m()).hasSize(1);
    assertThat(log.measured_m().get(0)).isCloseTo(.05, within(1e-12));
    assertThat(log.foulsBelow_m()).containsExactly(-0.0, -.10);
    List<Double> gaps = List.of(.05, .12, .02, .20, .11, .03, .08);
    BoardSpread.Fit one = BoardSpread.likeliest(BoardGaps.of(gaps, 3));
    BoardSpread.Fit other =
        BoardSpread.likeliest(new BoardGaps(gaps.stream().map(g -> g - .1).toList(), List.of(-.1, -.1, -.1)));
    assertThat(other.mean_m()).isCloseTo(one.mean_m() - .1, within(1e-8));
    assertThat(other.sd_m()).isCloseTo(one.sd_m(), within(1e-8));
  }

  @Test
  void refusesGapsNobodyMeasures() {
    assertThatThrownBy(() -> BoardGaps.of(List.of(2.01), 0)).isInstanceOf(RefusedException.class).hasMessageContaining("2.01 m");
    assertThatThrownBy(() -> BoardGaps.of(List.of(Double.NaN), 0)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> BoardGaps.of(List.of(), -1)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> BoardSpread.ofShare(0, .08)).isInstanceOf(RefusedException.class).hasMessageContaining("fouls");
  }
}
