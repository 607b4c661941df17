package boundwright.flight.season;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.flight.FlightModel;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Whether forecasts keep their word while somebody grows fast ({@link Scenario#GROWING}, invented), with and without what their heights say. How
 * unsettled they count was chosen on seeds below 500 000; these are others.
 */
class GrowingSeasonTest {
  static final long SEED = 720_000;
  static final int ATHLETES = 24;

  static Score late(long seed, int athletes, Scenario scenario, Logging logging, boolean heights) {
    Score all = new Score();
    for (int i = 0; i < athletes; i++) {
      Random r = new Random(seed + 97L * i);
      double spread = (i % 2 == 0 ? LearningTable.STEADY : LearningTable.USUAL) * Math.exp(0.2 * r.nextGaussian());
      HiddenAthlete a = new HiddenAthlete(Level.KNOWN.get(i % 3), scenario, 1.15 + 0.3 * r.nextDouble(), spread, r);
      Profile known = a.profile(i + 1, r);
      FlightModel prior = FlightModel.prior(new Profile(known.athlete(), known.knownMarks(), known.runUps(), heights));
      all.add(new Season(a, prior, logging, 0, Drill.FEW, seed + 97L * i + 13).run(1000).late);
    }
    return all;
  }

  @ParameterizedTest
  @EnumSource(value = Logging.class, names = {"LANDING", "PRINTS"})
  void forecastsKeepTheirWordWhileSomebodyGrowsFast(Logging logging) {
    Score with = late(SEED, ATHLETES, Scenario.GROWING, logging, true);
    Score without = late(SEED, ATHLETES, Scenario.GROWING, logging, false);
    System.out.printf("growing, %s, seed %d: with heights %s%n", logging, SEED, with.line());
    System.out.printf("growing, %s, seed %d: without      %s%n", logging, SEED, without.line());
    assertThat(with.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.97);
    assertThat(with.last()).as("last contact covered, seed %s; with prints it stays just below 85 in 100", SEED).isBetween(without.last() + 0.01, 0.98);
    assertThat(with.interval / with.asked).as("interval score, lower is better").isLessThan(without.interval / without.asked);
  }

  @ParameterizedTest
  @EnumSource(value = Scenario.class, names = {"STEADY", "PLUS_5"})
  void whoGrowsFastWithoutAnyTroubleIsNotToldLittle(Scenario scenario) {
    Score with = late(SEED, ATHLETES, scenario, Logging.LANDING, true);
    Score without = late(SEED, ATHLETES, scenario, Logging.LANDING, false);
    assertThat(with.landing()).as("landing covered, seed %s", SEED).isBetween(0.85, 0.98);
    assertThat(with.width / without.width).as("width, seed %s", SEED).isBetween(1.0, 1.15);
  }
}
