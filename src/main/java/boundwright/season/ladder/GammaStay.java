package boundwright.season.ladder;

import org.hipparchus.special.Gamma;

/**
 * Sessions that are needed, gamma distributed: density {@code z^(k-1) e^-z / (theta Gamma(k))} with {@code z = x / theta} and mean
 * {@code e^eta = k theta}. From shape 1 on the chance of being ready in the next session never falls the longer one has waited. The
 * logarithm of what an interval tells is concave in {@code eta} (Prekopa 1973: integrals of log-concave functions; memory), so the best
 * fit is the only one. All for x of at most a few hundred sessions. Standing: worked (textbook form); the tests integrate numerically.
 */
final class GammaStay {
  private static final double TINY = 1e-280;

  private GammaStay() {}

  /** Chance that more than {@code x} sessions are needed. */
  static double over(double x, double k, double eta) {
    return x <= 0 ? 1 : Gamma.regularizedGammaQ(k, k * x * Math.exp(-eta));
  }

  /** Sessions within which a share {@code p} is ready, 0 to 1 exclusive; by bisection. */
  static double quantile(double p, double k, double eta) {
    double low = 0;
    double high = Math.exp(eta);
    while (over(high, k, eta) > 1 - p) {
      high *= 2;
    }
    for (int i = 0; i < 60 && high - low > 1e-9 * high; i++) {
      double mid = (low + high) / 2;
      if (over(mid, k, eta) > 1 - p) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }

  /** Variance of the logarithm of a gamma variate of shape {@code k}, at least 1: recurrence and asymptotic series (textbook; to 1e-9). */
  static double logVariance(double k) {
    double sum = 0;
    double x = k;
    while (x < 10) {
      sum += 1 / (x * x);
      x++;
    }
    double r = 1 / (x * x);
    return sum + 1 / x + r / 2 + r / x * (1.0 / 6 - r * (1.0 / 30 - r * (1.0 / 42 - r / 30)));
  }

  /** {@code {log-likelihood, slope, curvature}} in {@code eta} of what is known; the curvature is at most 0. */
  static double[] told(SessionsNeeded s, double k, double eta) {
    double rate = k * Math.exp(-eta);
    double a = rate * s.over();
    if (Double.isInfinite(s.within())) {
      return censored(a, k);
    }
    double b = rate * s.within();
    // from the side on which the smaller numbers are, so that nothing is lost to rounding
    double p = a > k ? Gamma.regularizedGammaQ(k, a) - Gamma.regularizedGammaQ(k, b) : Gamma.regularizedGammaP(k, b) - below(a, k);
    if (!(p > TINY)) {
      return new double[] {Double.NEGATIVE_INFINITY, 0, 0};
    }
    double ga = g(a, k);
    double gb = g(b, k);
    double slope = (ga - gb) / p;
    double second = (gb * (k - b) - ga * (k - a)) / p;
    return new double[] {Math.log(p), slope, Math.min(0, second - slope * slope)};
  }

  private static double[] censored(double a, double k) {
    if (a <= 0) {
      return new double[] {0, 0, 0};
    }
    double q = Gamma.regularizedGammaQ(k, a);
    if (!(q > TINY)) {
      return new double[] {Double.NEGATIVE_INFINITY, 0, 0};
    }
    double slope = g(a, k) / q;
    double second = -g(a, k) * (k - a) / q;
    return new double[] {Math.log(q), slope, Math.min(0, second - slope * slope)};
  }

  private static double below(double z, double k) {
    return z <= 0 ? 0 : Gamma.regularizedGammaP(k, z);
  }

  /** Density of the logarithm of {@code z}: {@code z^k e^-z / Gamma(k)}. */
  private static double g(double z, double k) {
    return z <= 0 ? 0 : Math.exp(k * Math.log(z) - z - Gamma.logGamma(k));
  }
}
