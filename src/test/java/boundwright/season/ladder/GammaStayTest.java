package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.special.Gamma;
import org.junit.jupiter.api.Test;

/** The likelihood of a stay against closed forms and against an integration of its own (worked). */
class GammaStayTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  @Test
  void ofShapeOneItIsTheExponentialInClosedForm() {
    double mean = 7.3;
    double eta = Math.log(mean);
    // more than 5: e^(-5/mean); its logarithm's slope in log mean is 5/mean, its curvature -5/mean
    double[] over = GammaStay.told(new SessionsNeeded(5, INFINITE), 1, eta);
    assertThat(over[0]).isCloseTo(-5 / mean, within(1e-12));
    assertThat(over[1]).isCloseTo(5 / mean, within(1e-10));
    assertThat(over[2]).isCloseTo(-5 / mean, within(1e-10));
    double[] between = GammaStay.told(new SessionsNeeded(5, 6), 1, eta);
    assertThat(between[0]).isCloseTo(Math.log(Math.exp(-5 / mean) - Math.exp(-6 / mean)), within(1e-10));
    assertThat(GammaStay.quantile(0.5, 1, eta)).as("median of an exponential").isCloseTo(mean * Math.log(2), within(1e-6));
  }

  @Test
  void whatIsToldOfAnIntervalIsTheIntegralOfTheDensity() {
    for (double k : new double[] {1.5, 4, 9.7}) {
      for (double mean : new double[] {3, 12, 40}) {
        for (double[] ab : new double[][] {{0, 3}, {3, 4}, {11, 12}, {29, 30}}) {
          double p = simpson(ab[0], ab[1], k, mean);
          double[] told = GammaStay.told(new SessionsNeeded(ab[0], ab[1]), k, Math.log(mean));
          assertThat(told[0]).as("shape %s mean %s %s to %s", k, mean, ab[0], ab[1]).isCloseTo(Math.log(p), within(1e-6));
        }
        double rest = 1 - simpson(0, 8, k, mean);
        if (rest > 1e-6) {
          assertThat(GammaStay.over(8, k, Math.log(mean))).isCloseTo(rest, within(1e-7));
        }
      }
    }
  }

  @Test
  void slopesAndCurvaturesAreThoseOfTheValue() {
    double h = 1e-4;
    for (SessionsNeeded s : new SessionsNeeded[] {new SessionsNeeded(0, 4), new SessionsNeeded(9, 10), new SessionsNeeded(14, INFINITE), new SessionsNeeded(60, 61)}) {
      for (double eta : new double[] {1.5, 2.5, 3.4}) {
        double[] at = GammaStay.told(s, 4.2, eta);
        double up = GammaStay.told(s, 4.2, eta + h)[0];
        double down = GammaStay.told(s, 4.2, eta - h)[0];
        assertThat(at[1]).as("%s at %s", s, eta).isCloseTo((up - down) / (2 * h), within(1e-4 * (1 + Math.abs(at[1]))));
        assertThat(at[2]).as("%s at %s", s, eta).isCloseTo((up - 2 * at[0] + down) / (h * h), within(1e-3 * (1 + Math.abs(at[2]))));
      }
    }
  }

  @Test
  void theVarianceOfTheLogarithmIsTheLibrarysTrigamma() {
    for (double k : new double[] {1, 1.3, 2, 5.5, 9.99, 10, 37, 200}) {
      assertThat(GammaStay.logVariance(k)).as("shape %s", k).isCloseTo(Gamma.trigamma(k), within(1e-9));
    }
  }

  /** By Simpson's rule on the logarithm's scale, where the density is smooth. */
  private static double simpson(double a, double b, double k, double mean) {
    int n = 4000;
    double low = Math.log(Math.max(a, 1e-7));
    double step = (Math.log(b) - low) / n;
    double sum = 0;
    for (int i = 0; i <= n; i++) {
      double z = k * Math.exp(low + i * step) / mean;
      double f = Math.exp(k * Math.log(z) - z - Gamma.logGamma(k));
      sum += (i == 0 || i == n ? 1 : i % 2 == 1 ? 4 : 2) * f;
    }
    return sum * step / 3;
  }
}
