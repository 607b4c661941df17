package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SquadPriorTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);
  private static final Sequence DRILL = Sequence.parse("RRL x2");

  private static Profile profile(long id) {
    return Profile.bare(new Athlete(id, "Invented " + id, Level.INTERMEDIATE, Foot.RIGHT, 4));
  }

  /** A squad of steady athletes: RRL x2 from 4 steps, eight days of three reps with every footprint. */
  private static Map<Long, FlightModel> squad(int athletes, double spread) {
    Map<Long, FlightModel> out = new HashMap<>();
    for (long id = 1; id <= athletes; id++) {
      SimulatedAthlete s = new SimulatedAthlete(Level.INTERMEDIATE, 100 + id, spread);
      FlightModel m = FlightModel.prior(profile(id));
      for (int i = 0; i < 24; i++) {
        if (i % 3 == 0) {
          s.newDay();
        }
        m = m.learn(SimulatedAthlete.measured(DAY.plusDays(3L * (i / 3)), DRILL, 4, s.jump(DRILL, 4)));
      }
      out.put(id, m);
    }
    return out;
  }

  private static double spread(FlightModel m) {
    return m.forecast(DRILL, 4, Surface.TRACK, DAY).landing().halfWidth();
  }

  @Test
  void aSmallSquadSaysNothing() {
    SquadPrior four = SquadPrior.of(1, squad(4, 0.4));
    assertThat(spread(FlightModel.prior(profile(9), four))).isLessThan(spread(FlightModel.prior(profile(9))));
    assertThat(spread(FlightModel.prior(profile(1), four))).as("three others").isCloseTo(spread(FlightModel.prior(profile(1))), within(1e-12));
    SquadPrior three = SquadPrior.of(1, squad(3, 0.4));
    assertThat(spread(FlightModel.prior(profile(9), three))).isCloseTo(spread(FlightModel.prior(profile(9))), within(1e-12));
  }

  /** Who differs in nothing but the own reps begins alike: their own are left out of their own prior. */
  @Test
  void ownRepsAreLeftOutOfTheOwnPrior() {
    Map<Long, FlightModel> with = squad(8, 0.4);
    Map<Long, FlightModel> without = new HashMap<>(with);
    without.remove(3L);
    Forecast a = FlightModel.prior(profile(3), SquadPrior.of(1, with)).forecast(DRILL, 4, Surface.TRACK, DAY);
    Forecast b = FlightModel.prior(profile(3), SquadPrior.of(1, without)).forecast(DRILL, 4, Surface.TRACK, DAY);
    assertThat(a.landing().p50()).isCloseTo(b.landing().p50(), within(0.15));
    FlightModel odd = Objects.requireNonNull(with.get(3L));
    for (int i = 0; i < 12; i++) {
      odd = odd.learn(new Rep(0, 3, DAY.plusDays(40), DRILL, 4, Surface.TRACK, List.of(), 25.0, null, null, List.of()));
    }
    with.put(3L, odd);
    Forecast c = FlightModel.prior(profile(3), SquadPrior.of(1, with)).forecast(DRILL, 4, Surface.TRACK, DAY);
    assertThat(c.landing().p50()).as("the own 25 m move only how far athletes lie apart").isCloseTo(a.landing().p50(), within(0.15));
  }

  @Test
  void aSteadySquadMakesANewcomerSteady() {
    double steady = spread(FlightModel.prior(profile(99), SquadPrior.of(1, squad(8, 0.4))));
    double wild = spread(FlightModel.prior(profile(99), SquadPrior.of(1, squad(8, 1.3))));
    assertThat(steady).isLessThan(wild);
    assertThat(SquadPrior.of(1, squad(8, 0.4)).scatter(99).mean(Scatter.REP)).isLessThan(0.5 * Scatter.prior().mean(Scatter.REP));
  }

  @Test
  void ownRepsWinOverTheSquad() {
    SquadPrior squad = SquadPrior.of(1, squad(8, 0.4));
    FlightModel m = FlightModel.prior(profile(99), squad);
    double far = m.forecast(DRILL, 4, Surface.TRACK, DAY).landing().p50() * 1.2;
    Random r = new Random(3);
    for (int i = 0; i < 30; i++) {
      double landing = far * (1 + 0.02 * r.nextGaussian());
      m = m.learn(new Rep(0, 99, DAY.plusDays(i / 3), DRILL, 4, Surface.TRACK, List.of(), landing, null, null, List.of()));
    }
    assertThat(m.forecast(DRILL, 4, Surface.TRACK, DAY.plusDays(12)).landing().p50()).isCloseTo(far, within(0.03 * far));
  }

  @Test
  void sameSnapshotSameRepsSameBytes() {
    SquadPrior squad = SquadPrior.of(7, squad(6, 0.7));
    SquadPrior read = SquadPrior.fromBytes(squad.toBytes()).orElseThrow();
    assertThat(read.toBytes()).isEqualTo(squad.toBytes());
    SimulatedAthlete s = new SimulatedAthlete(Level.BEGINNER, 5);
    double[] p = s.jump(DRILL, 4);
    byte[] here = FlightModel.prior(profile(2), squad).learn(SimulatedAthlete.measured(DAY, DRILL, 4, p)).toBytes();
    byte[] there = FlightModel.prior(profile(2), read).learn(SimulatedAthlete.measured(DAY, DRILL, 4, p)).toBytes();
    assertThat(there).isEqualTo(here);
    assertThat(FlightModel.fromBytes(here).orElseThrow().squad()).isEqualTo(7);
    assertThat(SquadPrior.fromBytes(Arrays.copyOf(squad.toBytes(), 40))).isEmpty();
    byte[] other = squad.toBytes();
    other[0] ^= 1;
    assertThat(SquadPrior.fromBytes(other)).isEmpty();
  }

  /** One trait, known exactly of every athlete: the pool's middle and distance against the textbook's formulas worked by hand. */
  @Test
  void poolingOneNumberIsTheTextbooks() {
    double[][] prior = {{1.0}};
    List<double[]> means = List.of(new double[] {0.9}, new double[] {1.1}, new double[] {1.0}, new double[] {1.0});
    List<double[][]> exact = List.of(new double[][] {{1e-9}}, new double[][] {{1e-9}}, new double[][] {{1e-9}}, new double[][] {{1e-9}});
    Pooled pooled = new Pooled(new double[] {0}, prior, means, exact);
    // middle: prior variance .5, each athlete one reading with the distance's variance; distance: (8 x .5 + sum of squares) / 12
    double apart = 0.5;
    double middle = 0;
    for (int round = 0; round < 3; round++) {
      middle = 4 / apart / (1 / 0.5 + 4 / apart);
      double squares = 0;
      for (double[] m : means) {
        squares += (m[0] - middle) * (m[0] - middle);
      }
      apart = (8 * 0.5 + squares) / 12;
    }
    middle = 4 / apart / (1 / 0.5 + 4 / apart);
    assertThat(pooled.mean(-1)[0]).isCloseTo(middle, within(1e-6));
    assertThat(pooled.covariance(-1)[0][0]).isCloseTo(apart + 1 / (1 / 0.5 + 4 / apart), within(1e-6));
  }

  /** After thousands of reps the grid of the scatter has all its chance in one place, and a variance is 0. */
  @Test
  void whoIsKnownForCertainStillPools() {
    Pooled pooled =
        new Pooled(
            new double[] {0}, new double[][] {{1}}, List.of(new double[] {0.1}, new double[] {0.2}),
            List.of(new double[][] {{0}}, new double[][] {{0.1}}));
    assertThat(pooled.mean(-1)[0]).isBetween(0.0, 0.2);
    assertThat(pooled.covariance(-1)[0][0]).isBetween(0.0, 1.0);
  }
}
