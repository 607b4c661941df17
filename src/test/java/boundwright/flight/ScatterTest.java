package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The recursion against data drawn, by the library's Cholesky factor, from a covariance with known factors. */
class ScatterTest {
  private static RealMatrix shared(int n, double variance) {
    RealMatrix m = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        m.setEntry(i, j, variance * (i + 1) * (j + 1));
      }
    }
    return m;
  }

  private static RealMatrix cumulated(int n, double variance) {
    RealMatrix m = MatrixUtils.createRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        m.setEntry(i, j, variance * (Math.min(i, j) + 1));
      }
    }
    return m;
  }

  private static Scatter learn(double repFactor, double flightFactor, int reps, long seed) {
    int n = 6;
    Random r = new Random(seed);
    RealMatrix rep = shared(n, 0.01);
    RealMatrix flight = cumulated(n, 0.02);
    RealMatrix truth = rep.scalarMultiply(repFactor).add(flight.scalarMultiply(flightFactor));
    RealMatrix factor = new CholeskyDecomposition(truth).getL();
    Scatter s = Scatter.prior();
    for (int k = 0; k < reps; k++) {
      double[] z = new double[n];
      for (int i = 0; i < n; i++) {
        z[i] = r.nextGaussian();
      }
      RealMatrix repNow = rep.scalarMultiply(s.likely(Scatter.REP));
      RealMatrix flightNow = flight.scalarMultiply(s.likely(Scatter.FLIGHT));
      s = s.after(factor.operate(z), repNow.add(flightNow).getData(), new @Nullable RealMatrix[] {null, repNow, flightNow});
    }
    return s;
  }

  @Test
  void findsTheFactorsThatTheDataWereDrawnWith() {
    long seed = 8;
    for (double[] truth : new double[][] {{1, 1}, {3, 0.4}, {0.3, 2.5}}) {
      Scatter s = learn(truth[0], truth[1], 600, seed);
      assertThat(s.likely(Scatter.REP) / truth[0]).as("rep, seed %s", seed).isCloseTo(1, within(0.25));
      assertThat(s.likely(Scatter.FLIGHT) / truth[1]).as("flight, seed %s", seed).isCloseTo(1, within(0.12));
    }
  }

  @Test
  void isWiderWhileLittleIsKnownAndTiesTheKinds() {
    Scatter none = Scatter.prior();
    assertThat(none.likely(Scatter.DAY)).isEqualTo(1);
    assertThat(none.mean(Scatter.DAY)).isCloseTo(Math.exp(0.9 * 0.9 / 2), within(1e-9));
    Scatter steady = learn(0.2, 0.2, 100, 8);
    assertThat(steady.likely(Scatter.DAY)).as("a steady athlete is taken to have steady days").isLessThan(0.7);
    assertThat(steady.mean(Scatter.FLIGHT) / steady.likely(Scatter.FLIGHT)).isLessThan(1.05);
  }

  @Test
  void oneFreakRepDoesNotUndoASeason() {
    Scatter s = learn(1, 1, 200, 8);
    RealMatrix rep = shared(6, 0.01).scalarMultiply(s.likely(Scatter.REP));
    RealMatrix flight = cumulated(6, 0.02).scalarMultiply(s.likely(Scatter.FLIGHT));
    double[] freak = {9, 9, 9, 9, 9, 9};
    Scatter after = s.after(freak, rep.add(flight).getData(), new @Nullable RealMatrix[] {null, rep, flight});
    assertThat(after.likely(Scatter.FLIGHT) / s.likely(Scatter.FLIGHT)).isLessThanOrEqualTo(Math.exp(0.7) + 1e-9);
  }

  @Test
  void figuresComeBack() {
    Scatter s = learn(2, 0.5, 10, 3);
    assertThat(Scatter.of(s.figures())).isEqualTo(s);
  }
}
