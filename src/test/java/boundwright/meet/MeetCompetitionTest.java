package boundwright.meet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.aim.Rival;
import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.jump.MeasureRule;
import boundwright.meet.MeetRules.FinalOrder;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Attempts, rounding, ranks, the cut, the order and the points, against the rules and the printed values. */
class MeetCompetitionTest {
  /**
   * Points: form read, coefficients memory (they agree with 4,079 printed entries); the four values from the collection,
   * exact.
   */
  @ParameterizedTest
  @CsvSource({
    "TRIPLE_JUMP_MEN, 18.29, 1303", "TRIPLE_JUMP_WOMEN, 15.74, 1297", "TRIPLE_JUMP_MEN, 15.00, 953", "TRIPLE_JUMP_WOMEN, 13.00, 1015"
  })
  void points(Scoring event, double metres, int points) {
    assertThat(event.points(metres)).isEqualTo(points);
    assertThat(event.points(metres + .009)).as("rounded down first").isEqualTo(points);
  }

  /** The long jump's coefficients from the collection (memory): the formula by hand, 8.00 m men: 1.929 x 56.41^2 - 5000 = 1138.26. */
  @Test
  void longJumpPoints() {
    assertThat(Scoring.LONG_JUMP_MEN.points(8.00)).isEqualTo(1138);
    assertThat(Scoring.LONG_JUMP_WOMEN.points(7.00)).isEqualTo((int) (1.966 * 56.24 * 56.24 - 5000));
    assertThatThrownBy(() -> Scoring.TRIPLE_JUMP_MEN.points(19.5)).isInstanceOf(RefusedException.class).hasMessageContaining("19.5 m");
  }

  /** Wind to the next higher tenth in the positive direction: +2.03 is +2.1, -2.03 is -2.0; limit +2.0 (memory). */
  @ParameterizedTest
  @CsvSource({
    "2.03, 2.1, false", "-2.03, -2.0, true", "2.0, 2.0, true", "2.001, 2.1, false", "1.91, 2.0, true", "-0.05, 0, true", "0, 0, true",
    "0.1, 0.1, true", "0.3, 0.3, true", "-1.7, -1.7, true"
  })
  void wind(double measured, double read, boolean legal) {
    assertThat(Wind.rounded(measured)).isEqualTo(read);
    assertThat(Wind.legal(measured)).isEqualTo(legal);
  }

  /** Rounded down to 0.01 m (TR 30; read) and to the lesser quarter inch (read). */
  @Test
  void roundingDown() {
    assertThat(MeasureRule.CENTIMETRE.down(14.129)).isEqualTo(14.12);
    assertThat(MeasureRule.CENTIMETRE.down(14.12)).isEqualTo(14.12);
    for (int cm = 300; cm < 1900; cm++) {
      assertThat(MeasureRule.CENTIMETRE.down(cm / 100.0)).isEqualTo(cm / 100.0);
      assertThat(MeasureRule.CENTIMETRE.steps(cm * 0.01)).isEqualTo(cm);
    }
    double fortyFeet = 40 * LengthUnit.FOOT_M;
    assertThat(LengthUnit.FEET_INCHES.write(MeasureRule.QUARTER_INCH.down(fortyFeet + 6.49 * LengthUnit.INCH_M))).isEqualTo("40 ft 6 1/4 in");
    assertThat(MeasureRule.QUARTER_INCH.down(fortyFeet)).isCloseTo(fortyFeet, within(1e-9));
  }

  /** 13 m and 11 m (read); 32 and 24 ft in high school (read, "about"). */
  @Test
  void boards() {
    assertThat(BoardDistance.ALL.get(0).distance_m()).isEqualTo(13);
    assertThat(BoardDistance.ALL.get(1).distance_m()).isEqualTo(11);
    assertThat(LengthUnit.FEET_INCHES.write(BoardDistance.ALL.get(2).distance_m())).isEqualTo("32 ft 0 in");
    assertThat(LengthUnit.FEET_INCHES.write(BoardDistance.ALL.get(3).distance_m())).isEqualTo("24 ft 0 in");
    assertThat(Sources.ALL).containsAll(JumpSources.ALL).doesNotHaveDuplicates();
    assertThat(Sources.ALL.stream().map(Source::id)).doesNotHaveDuplicates();
  }

  private static Meet jumped(Meet m, String who, double... marks) {
    Meet out = m;
    for (int r = 0; r < marks.length; r++) {
      out = out.with(marks[r] == 0 ? Attempt.foul(who, r + 1) : marks[r] < 0 ? Attempt.pass(who, r + 1) : Attempt.valid(who, r + 1, marks[r]));
    }
    return out;
  }

  private static List<String> names(int n) {
    List<String> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      out.add("" + (char) ('A' + i));
    }
    return out;
  }

  /** Ties by the second best, then the third (read); level in all is a shared rank; no mark has none. */
  @Test
  void ranksAndTies() {
    Meet m = Meet.of(MeetRules.DEFAULT, names(6));
    m = jumped(m, "A", 14.00, 13.50, 0);
    m = jumped(m, "B", 13.60, 14.009, 0);
    m = jumped(m, "C", 14.00, 13.60, 12.0);
    m = jumped(m, "D", 0, 0, 0);
    m = jumped(m, "E", 14.00, 13.50, 0);
    m = jumped(m, "F", -1, 14.02, 0);
    assertThat(m.placings()).extracting(Placing::athlete).containsExactly("F", "C", "B", "A", "E", "D");
    assertThat(m.placings()).extracting(Placing::rank).containsExactly(1, 2, 3, 4, 4, null);
    assertThat(m.placings().get(2).best_m()).isEqualTo(14.00);
    assertThat(m.placings(1)).extracting(Placing::athlete).startsWith("A", "C", "E", "B");
  }

  /** More than eight: the best eight after three go on (read); the ninth does not, one level with the eighth does. */
  @Test
  void cutAfterThree() {
    Meet m = Meet.of(MeetRules.DEFAULT, names(10));
    for (int i = 0; i < 9; i++) {
      m = jumped(m, "" + (char) ('A' + i), 14.00 - .1 * i, 0, 0);
    }
    m = jumped(m, "J", 0, 0, 0);
    assertThat(m.hasCut()).isTrue();
    assertThat(m.goesOn()).containsExactly("A", "B", "C", "D", "E", "F", "G", "H");
    assertThat(m.attemptsLeft("A")).isEqualTo(3);
    assertThat(m.attemptsLeft("I")).isZero();
    Meet cut = m;
    assertThatThrownBy(() -> cut.with(Attempt.valid("I", 4, 14.5))).isInstanceOf(RefusedException.class).hasMessageContaining("did not go on");
    Meet level = jumped(m, "I", 13.30, 0, 0);
    assertThat(level.goesOn()).contains("H", "I").hasSize(9);
    Meet second = jumped(m, "I", 13.30, 12.0, 0);
    assertThat(second.goesOn()).contains("I").doesNotContain("H").hasSize(8);
    Meet eight = Meet.of(MeetRules.DEFAULT, names(8));
    assertThat(eight.hasCut()).isFalse();
    assertThat(eight.attemptsLeft("A")).isEqualTo(6);
    assertThat(jumped(eight, "H", 0, 0, 0).goesOn()).contains("H");
  }

  /** The order of the later rounds by edition (memory): each setting as it says; without a mark first. */
  @Test
  void orderOfTheLaterRounds() {
    for (FinalOrder order : FinalOrder.values()) {
      Meet m = Meet.of(new MeetRules(3, 6, 8, order, MeasureRule.CENTIMETRE, 60), names(4));
      m = jumped(m, "A", 14.0, 0, 0);
      m = jumped(m, "B", 13.0, 0, 0);
      m = jumped(m, "C", 0, 0, 0);
      m = jumped(m, "D", 13.5, 0, 0);
      assertThat(m.order(2)).containsExactly("A", "B", "C", "D");
      List<String> worst = List.of("C", "B", "D", "A");
      assertThat(m.order(4)).as(order.label()).isEqualTo(order == FinalOrder.AS_DRAWN ? names(4) : worst);
      Meet four = m.with(Attempt.valid("B", 4, 14.5));
      List<String> anew = List.of("C", "D", "A", "B");
      assertThat(four.order(5)).isEqualTo(
          order == FinalOrder.AS_DRAWN ? names(4) : order == FinalOrder.WORST_FIRST_ALWAYS ? anew : worst);
      assertThat(four.order(6)).isEqualTo(
          order == FinalOrder.AS_DRAWN ? names(4) : order == FinalOrder.WORST_FIRST_ONCE ? worst : anew);
    }
  }

  /** What a rival's mark asks for: a centimetre more, or level with the better second mark; nothing when ahead. */
  @Test
  void whatARivalsMarkMeans() {
    Meet m = Meet.of(MeetRules.DEFAULT, names(3));
    m = jumped(m, "A", 14.10, 13.0, 0);
    m = jumped(m, "B", 13.90, 13.5, 0);
    assertThat(m.neededAhead("B", "A")).isEqualTo(14.10);
    assertThat(m.neededAhead("C", "A")).isEqualTo(14.11);
    assertThat(m.neededAhead("A", "B")).isNull();
    Meet level = m.with(Attempt.valid("B", 4, 14.10));
    assertThat(level.placings().get(0).athlete()).isEqualTo("B");
    List<Rival> rivals = m.rivals("B", .25, .3, 13.0);
    assertThat(rivals).extracting(Rival::name).containsExactly("A", "C");
    assertThat(rivals.get(0).attemptsLeft()).isEqualTo(3);
    assertThat(rivals.get(0).mean_m()).isCloseTo(13.55, within(1e-9));
    assertThat(new Goal.Place(1, rivals).needed_m(.9)).isGreaterThan(14.10);
    List<RivalMeaning> means = RivalMeaning.of(m, "B", new JumpForm(13.9, .2, .1), .25, .3, 13.0);
    assertThat(means).extracting(r -> r.rival().name()).containsExactly("A", "C");
    assertThat(means.get(0).needed_m()).isEqualTo(14.10);
    assertThat(means.get(1).needed_m()).isNull();
    double better = aheadChance(RivalMeaning.of(m, "B", new JumpForm(14.3, .2, .1), .25, .3, 13.0));
    assertThat(aheadChance(means)).isBetween(.01, .99).isLessThan(better);
  }

  private static double aheadChance(List<RivalMeaning> means) {
    return Objects.requireNonNull(means.get(0).next()).worth();
  }

  /** A windy mark ranks but does not count for records; a mark without a gauge does not either. */
  @Test
  void windyMarksRank() {
    Meet m = Meet.of(MeetRules.DEFAULT, List.of("A"));
    m = m.with(new Attempt("A", 1, Attempt.Result.VALID, 14.50, 2.03, .05, 0));
    m = m.with(new Attempt("A", 2, Attempt.Result.VALID, 14.20, 1.95, .05, 0));
    m = m.with(new Attempt("A", 3, Attempt.Result.VALID, 14.60, null, .05, 0));
    assertThat(m.placings().get(0).best_m()).isEqualTo(14.60);
    assertThat(m.placings().get(0).bestLegal_m()).isEqualTo(14.20);
  }

  /** A slip can be mended: an attempt entered again replaces the first, and can be taken back. */
  @Test
  void slipsAreMended() {
    Meet m = jumped(Meet.of(MeetRules.DEFAULT, List.of("A")), "A", 14.0);
    assertThat(m.with(Attempt.valid("A", 1, 13.0)).placings().get(0).best_m()).isEqualTo(13.0);
    assertThat(m.without("A", 1).attempts()).isEmpty();
  }

  @Test
  void refusesInWords() {
    Meet m = Meet.of(MeetRules.DEFAULT, List.of("A"));
    assertThatThrownBy(() -> m.with(Attempt.valid("Z", 1, 14))).isInstanceOf(RefusedException.class).hasMessageContaining("\"Z\"");
    assertThatThrownBy(() -> Attempt.valid("A", 7, 14)).isInstanceOf(RefusedException.class).hasMessageContaining("7");
    assertThatThrownBy(() -> Attempt.valid("A", 1, 2.99)).isInstanceOf(RefusedException.class).hasMessageContaining("3 to 19 m");
    assertThatThrownBy(() -> Attempt.valid("A", 1, Double.NaN)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new Attempt("A", 1, Attempt.Result.FOUL, 14.0, null, null, 0))
        .isInstanceOf(RefusedException.class).hasMessageContaining("cannot have a distance");
    assertThatThrownBy(() -> new Attempt("A", 1, Attempt.Result.VALID, 14.0, 12.5, null, 0))
        .isInstanceOf(RefusedException.class).hasMessageContaining("12.5 m/s");
    assertThatThrownBy(() -> new Attempt("A", 1, Attempt.Result.VALID, 14.0, null, -.01, 0))
        .isInstanceOf(RefusedException.class).hasMessageContaining("contradiction");
    assertThatThrownBy(() -> Meet.of(MeetRules.DEFAULT, List.of("A", "A"))).isInstanceOf(RefusedException.class).hasMessageContaining("twice");
    assertThatThrownBy(() -> Meet.of(MeetRules.DEFAULT, List.of())).isInstanceOf(RefusedException.class);
  }
}
