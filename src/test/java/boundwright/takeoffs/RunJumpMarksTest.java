package boundwright.takeoffs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Surface;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** Tapes of repeated take-offs, hand-worked: an athlete whose places never change, and what cannot be. */
class RunJumpMarksTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 4);
  private static final RunJumps FOUR = new RunJumps(Foot.LEFT, 2, 4);
  private static final RunUp MEASURED = new RunUp(new Estimate(6.4, 6.5, 6.6), new Estimate(6, 6, 6), 3);

  /** Every rep the same: take-offs 6.00 m apart, the last flight 4.00 m into the sand, so the rep ends at 22.00 m (worked: 3 x 6 + 4). */
  private static List<RunJumpRep> same(int reps) {
    List<RunJumpRep> out = new ArrayList<>();
    for (int i = 0; i < reps; i++) {
      out.add(new RunJumpRep(i + 1, 1, DAY.plusDays(i / 3), FOUR, 4, Surface.TRACK, true, List.of(6.0, 12.0, 18.0), 22.0, ""));
    }
    return out;
  }

  private static RunJumpMarks marks(List<RunJumpRep> log, RunJumps pattern, boolean inSand) {
    return RunJumpMarks.of(
        new RunJumpModel(RunJumpLawTest.lengths(), log, DAY.plusDays(60)), pattern, 4, inSand, MEASURED, CoachSettings.DEFAULT);
  }

  @Test
  void whoAlwaysFallsAtTheSamePlacesGetsTheirTapesThere() {
    RunJumpMarks m = marks(same(30), FOUR, true);
    double mark = Objects.requireNonNull(m.sand()).best_m();
    for (int jump = 2; jump <= 4; jump++) {
      RunJumpMarks.TakeOffMark t = m.takeOffs().get(jump - 1);
      assertThat(t.fromMark_m().p50()).isCloseTo(6.0 * (jump - 1), within(0.06 * (jump - 1)));
      assertThat(Objects.requireNonNull(t.toSand_m())).as("tape back from the sand").isCloseTo(mark - t.fromMark_m().p50(), within(1e-12));
    }
    assertThat(m.landing().p50()).isCloseTo(22, within(0.22));
    // both margins are .30 m: the best mark lies between the last take-off and the landing, 18.3 to 21.7 m (worked)
    assertThat(mark).isBetween(18.5, 21.5);
    assertThat(Objects.requireNonNull(m.sand()).chance()).isGreaterThan(0.95);
    assertThat(Objects.requireNonNull(m.sand()).window()).isNotNull();
    assertThat(m.takeOffs()).extracting(RunJumpMarks.TakeOffMark::foot).containsExactly(Foot.LEFT, Foot.RIGHT, Foot.LEFT, Foot.RIGHT);
    assertThat(m.needed_m()).isCloseTo(mark + 6.6, within(1e-9));
    assertThat(m.from()).contains("30 measured reps");
    assertThat(m.instead(LengthUnit.METRES)).isEmpty();
    assertThat(m.warnings()).isEmpty();
  }

  /** With three take-offs of the same athlete the landing is one stretch of 6 m nearer (worked: 22 - 6 = 16). */
  @Test
  void whatWasLearnedOfFourHoldsForThree() {
    assertThat(marks(same(30), FOUR.times(3), true).landing().p50()).isCloseTo(16, within(0.35));
  }

  @Test
  void onTheFlatThereIsNoSandAndNoTapeFromIt() {
    RunJumpMarks m = marks(same(30), FOUR, false);
    assertThat(m.sand()).isNull();
    assertThat(m.takeOffs()).allMatch(t -> t.toSand_m() == null);
    assertThat(m.landing().p50()).as("upright on the free leg is shorter than into the sand").isLessThan(21.9);
    assertThat(m.needed_m()).isCloseTo(m.landing().p95() + 6.6, within(1e-9));
  }

  @Test
  void withoutARepItSaysThatNoMarkIsToBeReliedOn() {
    RunJumpMarks m = marks(List.of(), new RunJumps(Foot.RIGHT, 2, 6), true);
    assertThat(Objects.requireNonNull(m.sand()).window()).isNull();
    assertThat(m.instead(LengthUnit.METRES)).startsWith("No mark reaches 90 in 100").contains("Measure take-off marks");
    assertThat(m.from()).contains("first guess");
  }

  /** A good day's reps move today's forecast towards them, and tomorrow's less. */
  @Test
  void todaysFormCountsForToday() {
    List<RunJumpRep> log = new ArrayList<>(same(30));
    LocalDate today = DAY.plusDays(20);
    for (int i = 0; i < 4; i++) {
      log.add(new RunJumpRep(100 + i, 1, today, FOUR, 4, Surface.TRACK, true, List.of(6.2, 12.4, 18.6), 22.7, ""));
    }
    double now = new RunJumpModel(RunJumpLawTest.lengths(), log, today).told(FOUR, 4, true).landing().mean();
    double next = new RunJumpModel(RunJumpLawTest.lengths(), log, today.plusDays(1)).told(FOUR, 4, true).landing().mean();
    assertThat(now).isGreaterThan(next + 0.05);
  }

  /** Of more reps than are learned from, it says how many those are. */
  @Test
  void itRestsOnTheNewestRepsAlone() {
    RunJumpMarks m = marks(same(RunJumpModel.MOST_REPS + 30), FOUR, true);
    assertThat(m.reps()).isEqualTo(120);
    assertThat(m.from()).contains("120 measured reps");
  }

  @Test
  void theOrderOfRepsOfADayDoesNotMatter() {
    List<RunJumpRep> log = new ArrayList<>();
    InventedJumper who = new InventedJumper(11, 1);
    for (int i = 0; i < 8; i++) {
      log.add(RunJumpLawTest.rep(who, DAY, new RunJumps(Foot.LEFT, 2, 3 + i % 2), 4, true, false));
    }
    double one = new RunJumpModel(RunJumpLawTest.lengths(), log, DAY).told(FOUR, 4, true).landing().mean();
    Collections.reverse(log);
    assertThat(new RunJumpModel(RunJumpLawTest.lengths(), log, DAY).told(FOUR, 4, true).landing().mean()).isCloseTo(one, within(1e-9));
  }

  private static RunJumpRep rep(List<Double> places, double landing) {
    return new RunJumpRep(0, 1, DAY, FOUR, 4, Surface.TRACK, true, places, landing, "");
  }

  @Test
  void placesThatCannotBeAreRefusedWithTheirLimit() {
    assertThatThrownBy(() -> rep(List.of(6.0, 5.0, 18.0), 22)).isInstanceOf(RefusedException.class).hasMessageContaining("Take-off 3 at 5.00 m").hasMessageContaining("0.90 m");
    assertThatThrownBy(() -> rep(List.of(6.0, 12.0, 18.0), 30)).isInstanceOf(RefusedException.class).hasMessageContaining("The landing at 30.00 m").hasMessageContaining("9.00 m");
    assertThatThrownBy(() -> rep(List.of(6.0, 12.0, 18.0, 22.0), 23)).isInstanceOf(RefusedException.class).hasMessageContaining("4 places").hasMessageContaining("take-offs 2 to 4");
    assertThat(rep(List.of(Double.NaN, 12.0), 22).measured()).isTrue();
    assertThat(new RunJumpRep(0, 1, DAY, FOUR, 4, Surface.TRACK, false, List.of(), null, "").measured()).as("it may be kept for the load alone").isFalse();
  }
}
