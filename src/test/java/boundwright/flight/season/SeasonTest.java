package boundwright.flight.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A short share of {@link LearningTable}: does the learning keep its word on athletes of another process, as weeks pass and as
 * coaches log? The limits are the project's own requirement; the long table stands in {@code docs/learning.md}.
 */
class SeasonTest {
  private static final long SEED = 600_000;
  private static final int ATHLETES = 12;

  private static Score both(Scenario scenario, Logging logging, double ratio, double bailOuts, List<Drill> drills, int most, Function<Season, Score> which) {
    Score all = new Score();
    for (double spread : new double[] {LearningTable.STEADY, LearningTable.USUAL}) {
      all.add(LearningTable.sum(new LearningTable(ATHLETES, SEED, spread).run(scenario, logging, ratio, bailOuts, drills, most), which));
    }
    System.out.printf("%s %s seed %d: %s%n", scenario, logging, SEED, all.line());
    return all;
  }

  @ParameterizedTest
  @ValueSource(doubles = {1.10, 1.31, 1.50})
  void landingsAloneLeaveTheLastFlightOpen(double ratio) {
    Score s = both(Scenario.STEADY, Logging.LANDING, ratio, 0, Drill.FEW, 60, x -> x.scored(60));
    assertThat(s.last()).as("last contact covered, ratio %s, seed %s", ratio, SEED).isGreaterThanOrEqualTo(0.85);
    assertThat(s.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.97);
  }

  @ParameterizedTest
  @EnumSource(value = Logging.class, names = {"LANDING", "TAPS"})
  void changeIsFollowed(Logging logging) {
    Score s = both(Scenario.PLUS_8, logging, Double.NaN, 0, Drill.FEW, 1000, x -> x.late);
    assertThat(s.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.97);
    assertThat(s.last()).as("last contact covered, seed %s", SEED).isBetween(0.85, 0.98);
    assertThat(s.success()).as("kept where nine in ten were promised, seed %s", SEED).isGreaterThanOrEqualTo(0.9);
  }

  @ParameterizedTest
  @EnumSource(value = Scenario.class, names = {"FOUR_WEEKS_OFF", "ONE_LEG_BACK"})
  void theFirstSessionBackIsNotBoasted(Scenario scenario) {
    Score s = both(scenario, Logging.LANDING, Double.NaN, 0, Drill.FEW, 1000, x -> x.firstBack);
    assertThat(s.landing()).as("landing covered, seed %s", SEED).isGreaterThanOrEqualTo(0.85);
    assertThat(s.last()).as("last contact covered, seed %s", SEED).isGreaterThanOrEqualTo(0.85);
  }

  /** Four weeks off with one leg back at -14 %: the project's own requirement; the constants were settled on other seeds. */
  @ParameterizedTest
  @EnumSource(value = Logging.class, names = {"PRINTS", "MIXED"})
  void theFirstFiveSessionsBackKeepTheirWord(Logging logging) {
    Score s = both(Scenario.ONE_LEG_FOUR_WEEKS, logging, Double.NaN, 0, Drill.FEW, 1000, x -> x.firstFive);
    assertThat(s.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.95);
    assertThat(s.last()).as("last contact covered, seed %s", SEED).isBetween(0.85, 0.95);
  }

  @Test
  void abandonedRepsThatNobodyMarkedDoNotWidenTheForecast() {
    Score without = both(Scenario.STEADY, Logging.LANDING, Double.NaN, 0, Drill.FEW, 1000, x -> x.late);
    Score with = both(Scenario.STEADY, Logging.LANDING, Double.NaN, 0.04, Drill.FEW, 1000, x -> x.late);
    assertThat(with.width / without.width).as("width, seed %s", SEED).isBetween(0.85, 1.15);
    assertThat(with.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.97);
  }

  @Test
  void sixtyRepsOverMixedDrillsAreSharp() {
    Score s = both(Scenario.STEADY, Logging.PRINTS, Double.NaN, 0, Drill.MIXED, 60, x -> x.scored(60));
    assertThat(s.ratio()).as("width over the truth's, seed %s", SEED).isLessThanOrEqualTo(1.6);
    assertThat(s.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.95);
  }
}
