package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.growth.FastGrowth;
import boundwright.footfall.Foot;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.BackStep;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Which hold stands on a day, and what holds and pain make of a way back: the house's own rules, that only a named clinician and a date end a hold. */
class LegCareTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);

  private static MedicalHold hold(int from, @Nullable Integer cleared) {
    return new MedicalHold(7, TODAY.plusDays(from), "", cleared == null ? null : "Dr Sedge", cleared == null ? null : TODAY.plusDays(cleared));
  }

  /** Of two holds nobody is told the day of the one that ends first. */
  @Test
  void ofTwoHoldsTheOneThatLastsLongestIsNamed() {
    MedicalHold ends = new MedicalHold(1, LocalDate.of(2026, 5, 10), "", "Dr Sedge (invented)", LocalDate.of(2026, 6, 1));
    MedicalHold open = new MedicalHold(2, LocalDate.of(2026, 5, 12), "", null, null);
    LegCare care = new LegCare(false, null, List.of(), List.of(ends, open));
    assertThat(care.standing(LocalDate.of(2026, 5, 14))).contains(open);
    assertThat(new Guard(GuardLimits.DEFAULT, null).medicalHold(care, LocalDate.of(2026, 5, 14)).orElseThrow().said()).contains("enter the name of the clinician");
  }

  @Test
  void aHoldStandsUntilTheDayOfTheClinician() {
    assertThat(hold(-3, 0).stands(TODAY)).as("ended from today on").isFalse();
    assertThat(hold(-3, 1).stands(TODAY)).as("ended from tomorrow on").isTrue();
    assertThat(hold(-3, null).stands(TODAY)).isTrue();
    assertThat(hold(5, null).stands(TODAY)).as("set for later, ended by nobody").isTrue();
    assertThat(hold(5, null).holds(TODAY)).as("and yet bounding is not stopped today").isFalse();
    assertThat(hold(5, 9).stands(TODAY)).as("set for later, with its end").isFalse();
  }

  /** At its third stage by two steps of the coach, a week after it began and two weeks after. */
  private static WayBack way(int begun) {
    LocalDate first = TODAY.minusDays(begun);
    List<BackStep> steps =
        IntStream.of(1, 2).mapToObj(n -> new BackStep(n, first.plusWeeks(n), BackStep.Kind.ON, n, "Coach Reed", "")).toList();
    return new WayBack(1, Foot.LEFT, first, Stages.USUAL, 100, 28, new WayBack.Clearance("Dr Sedge", first, true), steps, null);
  }

  private static LegBack stands(LegCare care, Pain... felt) {
    return care.withWays(List.of(way(40)), List.of(felt), GuardLimits.DEFAULT.pain(), TODAY).backs().get(0);
  }

  private static LegCare held(MedicalHold... holds) {
    return new LegCare(false, null, List.of(), List.of(holds));
  }

  @Test
  void onlyAHoldThatWasOpenedOnTheWayAndHasEndedBeginsItAnew() {
    assertThat(stands(held()).stage()).isEqualTo(2);
    assertThat(stands(held(hold(-60, -40))).stage()).as("the hold that it began after").isEqualTo(2);
    assertThat(stands(held(hold(-60, -30))).stage()).as("opened before it ran").isEqualTo(2);
    assertThat(stands(held(hold(-10, null))).stage()).as("nobody has ended it").isEqualTo(2);
    assertThat(stands(held(hold(-10, 1))).stage()).as("ended from tomorrow on").isEqualTo(2);
    assertThat(stands(held(hold(-10, 0)))).satisfies(b -> assertThat(b.stage()).isZero()).satisfies(b -> assertThat(b.since()).isEqualTo(TODAY));
    assertThat(stands(held(hold(-20, -15), hold(-10, -4), hold(-30, -25))).since()).as("the newest end").isEqualTo(TODAY.minusDays(4));
  }

  @Test
  void painIsGradedAsTheGuardGradesIt() {
    Pain three = new Pain(1, TODAY.minusDays(1), "left shin", 3, true, false);
    assertThat(stands(held(), three).stage()).as("an adult's 3 of 10").isEqualTo(2);
    assertThat(stands(new LegCare(true, null, List.of(), List.of()), three).stage()).as("of a growing athlete it is too much").isEqualTo(1);
    FastGrowth fast = new FastGrowth(true, TODAY, 8.1, 6.8, 9.4, TODAY, 7);
    LegCare grows = new LegCare(false, TODAY.minusYears(2), List.of(three), List.of(), List.of(), fast);
    assertThat(stands(grows, three).stage()).as("of one who grows fast too").isEqualTo(1);
    LegCare with = grows.withWays(List.of(), List.of(three), GuardLimits.DEFAULT.pain(), TODAY);
    assertThat(with).as("all else stays").isEqualTo(grows);
  }

  @Test
  void theFirstThatStandsIsNamed() {
    MedicalHold stands = hold(-1, null);
    LegCare care = new LegCare(false, null, List.of(), List.of(hold(-9, -5), stands));
    assertThat(care.standing(TODAY)).contains(stands);
    assertThat(LegCare.NONE.standing(TODAY)).isEmpty();
    assertThat(stands.refusesWayBack()).hasMessageContaining("Medical hold 7 stands since 2026-05-19: a way back begins when a named clinician has ended it");
  }
}
