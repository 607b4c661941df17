package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.readiness.Evidence.Name;
import boundwright.readiness.GateSeasons.Met;
import org.junit.jupiter.api.Test;

/**
 * A small share of {@code bench/gate}: whole seasons of invented athletes against what the project asks of the gate
 * (requirements; the rates are own output). The athletes are a process of their own, see {@link SeasonAthlete}.
 */
class GateSeasonsTest {
  private static final long SEED = 41;
  private static final int MONTH = GateSeasons.FOUR_WEEKS;

  private static Met season(SeasonAthlete kind, int steps, int sessions, int athletes) {
    return GateSeasons.season(kind, steps, sessions, athletes, 0, SEED);
  }

  @Test
  void aShareOfSeventyPassesInAtMostFivePerCentOfStays() {
    Met m = season(SeasonAthlete.of(0.70), 4, 24, 100);
    assertThat(m.thereWithin(Name.CLEAN, 24)).as("seed %s", SEED).isLessThanOrEqualTo(0.05);
    assertThat(m.addedWithin(24)).as("seed %s", SEED).isLessThanOrEqualTo(0.05);
  }

  @Test
  void aShareOfNinetyFivePassesWithinFourWeeksAndNotBeforeTheLeastStay() {
    Met four = season(SeasonAthlete.of(0.95), 4, MONTH, 200);
    assertThat(four.addedWithin(MONTH)).as("from 4 steps, seed %s", SEED).isGreaterThanOrEqualTo(0.95);
    assertThat(four.addedWithin(4)).as("the fifth session is the first after two weeks").isZero();
    Met six = season(SeasonAthlete.of(0.95), 6, MONTH, 200);
    assertThat(six.addedWithin(MONTH)).as("from 6 steps, seed %s", SEED).isGreaterThanOrEqualTo(0.95);
    assertThat(six.addedWithin(6)).as("the seventh session is the first after three weeks").isZero();
  }

  @Test
  void aLearnerIsLetUpSoonAndNotSentBack() {
    // .92 is reached in the twelfth session of those who learn in twelve
    Met m = season(SeasonAthlete.of(SeasonAthlete.learner(12)), 4, 18, 100);
    assertThat(m.addedWithin(18)).as("seed %s", SEED).isGreaterThanOrEqualTo(0.90);
    assertThat(m.toldBack(1, 18)).as("seed %s", SEED).isLessThanOrEqualTo(0.10);
  }

  @Test
  void backIsForAFallAndNotForASteadyEighty() {
    assertThat(season(SeasonAthlete.of(0.80), 4, 24, 100).toldBack(1, 24)).as("seed %s", SEED).isLessThanOrEqualTo(0.10);
    Met fall = season(SeasonAthlete.of(SeasonAthlete.fall(10)), 4, 14, 100);
    assertThat(fall.toldBack(11, 14)).as("seed %s", SEED).isGreaterThanOrEqualTo(0.85);
  }

  @Test
  void measuringIsNotPunished() {
    Met m = season(SeasonAthlete.of(1.0).measured(2.29 * 0.05, 0), 4, MONTH, 100);
    assertThat(m.addedWithin(MONTH)).as("seed %s", SEED).isGreaterThanOrEqualTo(0.95);
    Met fades = season(SeasonAthlete.of(1.0).measured(2.29 * 0.03, -0.10), 4, MONTH, 60);
    assertThat(fades.missing(Name.NO_FADING, 1, MONTH)).as("a true fading is seen").isGreaterThanOrEqualTo(0.85);
  }

  @Test
  void speedUsedIsWhatTheLogSaysAndDriftDoesNotFakeIt() {
    SeasonAthlete three = SeasonAthlete.of(1.0).measured(0.09, 0).withReps(3);
    assertThat(season(three.compared(3, 0, 0.05), 4, MONTH, 200).thereWithin(Name.SPEED_USED, MONTH)).as("seed %s", SEED).isLessThanOrEqualTo(0.05);
    assertThat(season(three.compared(3, 0.09, 0.05), 4, MONTH, 200).thereWithin(Name.SPEED_USED, MONTH))
        .as("seed %s", SEED)
        .isGreaterThanOrEqualTo(0.85);
  }

  @Test
  void allInputsTogether() {
    SeasonAthlete kind = SeasonAthlete.of(0.95).withForm(0.3).measured(0.09, -0.01).compared(3, 0.06, 0.05);
    assertThat(GateSeasons.season(kind, 4, MONTH, 100, 0.05, SEED).addedWithin(MONTH)).as("seed %s", SEED).isGreaterThanOrEqualTo(0.75);
  }
}
