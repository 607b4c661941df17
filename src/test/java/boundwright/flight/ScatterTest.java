package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The factors against reps and days drawn with known ones. */
class ScatterTest {
  /** Reps of one number each way: a rep's form and a flight's scatter, seen apart, drawn with these factors. */
  private static Scatter learn(double repFactor, double flightFactor, int reps, long seed) {
    Random r = new Random(seed);
    Scatter s = Scatter.prior();
    for (int k = 0; k < reps; k++) {
      double rep = r.nextGaussian() * Math.sqrt(repFactor);
      double flight = r.nextGaussian() * Math.sqrt(flightFactor);
      s = s.seen(likelihood(rep, flight));
    }
    return s;
  }

  private static double[][] likelihood(double rep, double flight) {
    double[][] out = new double[Scatter.STEPS][Scatter.STEPS];
    for (int i = 0; i < Scatter.STEPS; i++) {
      for (int j = 0; j < Scatter.STEPS; j++) {
        out[i][j] = normal(rep, Scatter.factor(i)) * normal(flight, Scatter.factor(j));
      }
    }
    return out;
  }

  private static double normal(double x, double variance) {
    return Math.exp(-x * x / (2 * variance)) / Math.sqrt(variance);
  }

  @Test
  void findsTheFactorsThatTheDataWereDrawnWith() {
    long seed = 8;
    for (double[] truth : new double[][] {{1, 1}, {2.5, 0.4}, {0.3, 2}}) {
      Scatter s = learn(truth[0], truth[1], 600, seed);
      assertThat(s.likely(Scatter.REP) / truth[0]).as("rep, seed %s", seed).isCloseTo(1, within(0.25));
      assertThat(s.likely(Scatter.FLIGHT) / truth[1]).as("flight, seed %s", seed).isCloseTo(1, within(0.25));
    }
  }

  /** One rep's posterior mean against a fine numerical integration of prior times likelihood (the rep's factor alone). */
  @Test
  void oneRepIsWeighedAsBayesSays() {
    double seen = 0.3;
    double sum = 0;
    double mean = 0;
    for (double log = Scatter.LEAST; log <= Scatter.LEAST + Scatter.STEP * (Scatter.STEPS - 1) + 1e-9; log += 0.01) {
      double w = Math.exp(-Math.pow((log + 0.8) / 0.9, 2) / 2) * normal(seen, Math.exp(log));
      sum += w;
      mean += w * log;
    }
    double[][] alone = new double[Scatter.STEPS][Scatter.STEPS];
    for (int i = 0; i < Scatter.STEPS; i++) {
      java.util.Arrays.fill(alone[i], normal(seen, Scatter.factor(i)));
    }
    assertThat(Scatter.prior().seen(alone).logs()[Scatter.REP]).isCloseTo(mean / sum, within(0.06));
  }

  @Test
  void aSteadyAthleteIsBelievedWithinTenReps() {
    Scatter s = learn(0.12, 0.12, 10, 8);
    assertThat(s.mean(Scatter.REP)).isLessThan(0.35);
    assertThat(s.mean(Scatter.DAY)).as("steady reps, steady days").isLessThan(0.6 * Scatter.prior().mean(Scatter.DAY));
  }

  @Test
  void isWiderWhileLittleIsKnown() {
    Scatter none = Scatter.prior();
    assertThat(none.mean(Scatter.DAY) / none.likely(Scatter.DAY)).isGreaterThan(1.3);
    Scatter much = learn(1, 1, 300, 8);
    assertThat(much.mean(Scatter.FLIGHT) / much.likely(Scatter.FLIGHT)).isLessThan(1.1);
  }

  @Test
  void daysTeachTheDaysFactor() {
    Random r = new Random(5);
    Scatter s = Scatter.prior();
    for (int i = 0; i < 60; i++) {
      s = s.dayOver(Math.sqrt(2 + 0.2) * r.nextGaussian(), 0.2, 1);
    }
    assertThat(s.likely(Scatter.DAY)).isBetween(1.3, 3.2);
  }

  @Test
  void oneFreakRepDoesNotUndoASeason() {
    Scatter s = learn(1, 1, 200, 8);
    Scatter after = s.seen(likelihood(9, 9));
    assertThat(after.likely(Scatter.FLIGHT) / s.likely(Scatter.FLIGHT)).isBetween(1.0, 1.7);
  }

  @Test
  void figuresComeBack() {
    Scatter s = learn(2, 0.5, 10, 3);
    assertThat(Scatter.of(s.figures())).isEqualTo(s);
  }
}
