package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** The one-fact-at-a-time updates against the textbook formulas done at once by a general-purpose library (Hipparchus). */
class BeliefTest {
  private static final long SEED = 20260302;

  private static Belief random(Random r, int n) {
    double[][] a = new double[n][n];
    for (double[] row : a) {
      for (int j = 0; j < n; j++) {
        row[j] = r.nextGaussian();
      }
    }
    RealMatrix m = MatrixUtils.createRealMatrix(a);
    RealMatrix cov = m.multiply(m.transpose());
    Belief b = new Belief(n);
    for (int i = 0; i < n; i++) {
      b.setMean(i, r.nextGaussian());
      for (int j = 0; j <= i; j++) {
        b.setCovariance(i, j, cov.getEntry(i, j));
      }
    }
    return b;
  }

  private static RealMatrix cov(Belief b) {
    RealMatrix m = MatrixUtils.createRealMatrix(b.size(), b.size());
    for (int i = 0; i < b.size(); i++) {
      for (int j = 0; j < b.size(); j++) {
        m.setEntry(i, j, b.covariance(i, j));
      }
    }
    return m;
  }

  private static RealVector mean(Belief b) {
    RealVector v = MatrixUtils.createRealVector(new double[b.size()]);
    for (int i = 0; i < b.size(); i++) {
      v.setEntry(i, b.mean(i));
    }
    return v;
  }

  /** mean + P H' (H P H' + R)^-1 (y - H mean): the batch form, inverted by the library. */
  @Test
  void measuringOneByOneEqualsConditioningAtOnce() {
    Random r = new Random(SEED);
    for (int round = 0; round < 30; round++) {
      int n = 2 + r.nextInt(6);
      int k = 1 + r.nextInt(4);
      Belief b = random(r, n);
      RealMatrix p = cov(b);
      RealVector m = mean(b);
      RealMatrix h = MatrixUtils.createRealMatrix(k, n);
      RealVector y = MatrixUtils.createRealVector(new double[k]);
      RealMatrix noise = MatrixUtils.createRealMatrix(k, k);
      for (int i = 0; i < k; i++) {
        for (int j = 0; j < n; j++) {
          h.setEntry(i, j, r.nextGaussian());
        }
        y.setEntry(i, r.nextGaussian());
        noise.setEntry(i, i, 0.1 + r.nextDouble());
      }
      for (int i = 0; i < k; i++) {
        b.measure(h.getRow(i), y.getEntry(i), noise.getEntry(i, i));
      }
      RealMatrix gain = p.multiply(h.transpose()).multiply(MatrixUtils.inverse(h.multiply(p).multiply(h.transpose()).add(noise)));
      RealVector wantedMean = m.add(gain.operate(y.subtract(h.operate(m))));
      RealMatrix wantedCov = p.subtract(gain.multiply(h).multiply(p));
      assertThat(mean(b).subtract(wantedMean).getNorm()).as("seed %s round %s", SEED, round).isLessThan(1e-8);
      assertThat(cov(b).subtract(wantedCov).getNorm1()).as("seed %s round %s", SEED, round).isLessThan(1e-8);
    }
  }

  /** Mean and variance after a tap against brute numerical integration of the same density. */
  @Test
  void tappingMatchesTheMomentsOfTheTrueDensity() {
    Random r = new Random(SEED);
    NormalDistribution normal = new NormalDistribution(0, 1);
    for (int round = 0; round < 40; round++) {
      double mu = r.nextGaussian();
      double sd = 0.3 + r.nextDouble();
      double limit = mu + sd * (r.nextDouble() * 8 - 4);
      boolean above = r.nextBoolean();
      double slip = round % 3 == 0 ? 0 : 0.01;
      double miss = round % 2 == 0 ? slip : 0.05;
      Belief b = new Belief(1);
      b.setMean(0, mu);
      b.setCovariance(0, 0, sd * sd);
      b.side(new double[] {1}, limit, above, 1 - slip, miss);
      double z = 0;
      double first = 0;
      double second = 0;
      int steps = 400_000;
      for (int i = 0; i < steps; i++) {
        double x = mu + sd * (-10 + 20 * (i + 0.5) / steps);
        double w = normal.density((x - mu) / sd) * ((x > limit) == above ? 1 - slip : miss);
        z += w;
        first += w * x;
        second += w * x * x;
      }
      double m = first / z;
      assertThat(b.mean(0)).as("seed %s round %s", SEED, round).isCloseTo(m, within(2e-4));
      assertThat(b.variance(0)).as("seed %s round %s", SEED, round).isCloseTo(second / z - m * m, within(2e-4));
    }
  }

  /** What one unknown learns, another tied to it learns through the covariance: E[x2] moves by cov / var times E[x1]'s move. */
  @Test
  void aTapMovesWhatIsTiedToIt() {
    Belief b = random(new Random(SEED), 3);
    double before0 = b.mean(0);
    double before1 = b.mean(1);
    double ratio = b.covariance(0, 1) / b.variance(0);
    b.side(new double[] {1, 0, 0}, before0 + 1, true, 1, 0);
    assertThat(b.mean(1) - before1).isCloseTo(ratio * (b.mean(0) - before0), within(1e-10));
    assertThat(b.mean(0)).isGreaterThan(before0);
  }

  /** Mean and covariance of two normals mixed, against drawing neither: the textbook's formula by hand for two unknowns. */
  @Test
  void mixingMatchesTheMomentsOfTheMixture() {
    Belief a = random(new Random(SEED), 2);
    Belief b = random(new Random(SEED + 1), 2);
    Belief m = a.mixed(b, 0.3);
    double mean0 = 0.3 * a.mean(0) + 0.7 * b.mean(0);
    double mean1 = 0.3 * a.mean(1) + 0.7 * b.mean(1);
    double both =
        0.3 * (a.covariance(0, 1) + a.mean(0) * a.mean(1)) + 0.7 * (b.covariance(0, 1) + b.mean(0) * b.mean(1)) - mean0 * mean1;
    assertThat(m.mean(0)).isCloseTo(mean0, within(1e-12));
    assertThat(m.covariance(0, 1)).isCloseTo(both, within(1e-12));
  }

  /** x moves by g times v, v shrinks to k of itself: the covariance is F P F' by the library. */
  @Test
  void flowingIsALinearMap() {
    Belief b = random(new Random(SEED), 4);
    RealMatrix f = MatrixUtils.createRealIdentityMatrix(4);
    f.setEntry(1, 3, 0.8);
    f.setEntry(3, 3, 0.6);
    RealMatrix wanted = f.multiply(cov(b)).multiply(f.transpose());
    RealVector wantedMean = f.operate(mean(b));
    b.flow(1, 3, 0.8, 0.6);
    assertThat(cov(b).subtract(wanted).getNorm1()).isLessThan(1e-12);
    assertThat(mean(b).subtract(wantedMean).getNorm()).isLessThan(1e-12);
  }

  /** One unknown becomes k times another and something independent: what is tied to the other is tied to it, k times as much. */
  @Test
  void inheritingKeepsWhatIsTied() {
    Belief b = random(new Random(SEED), 3);
    double with2 = b.covariance(1, 2);
    double variance = b.variance(1);
    b.inherit(0, 1, 0.7, 0.2);
    assertThat(b.mean(0)).isCloseTo(0.7 * b.mean(1), within(1e-12));
    assertThat(b.covariance(0, 2)).isCloseTo(0.7 * with2, within(1e-12));
    assertThat(b.covariance(0, 1)).isCloseTo(0.7 * variance, within(1e-12));
    assertThat(b.variance(0)).isCloseTo(0.49 * variance + 0.2, within(1e-12));
  }

  @Test
  void anImpossibleTapStaysFinite() {
    for (double slip : new double[] {0.01, 0.001}) {
      Belief b = new Belief(1);
      b.setCovariance(0, 0, 1);
      b.side(new double[] {1}, 40, true, 1 - slip, slip);
      assertThat(b.mean(0)).isFinite();
      assertThat(b.variance(0)).isPositive();
    }
  }
}
