package boundwright.inference;

/**
 * The standard normal distribution, fast: the aim asks for it tens of thousands of times per answer. Hart's rational
 * approximation in double precision as given by West 2005, Wilmott Magazine (memory); the test holds it against an
 * independent implementation to 1e-13.
 */
public final class Normal {
  private static final double ROOT_TWO_PI = 2.5066282746310007;

  private Normal() {}

  public static double density(double z) {
    return Math.exp(-z * z / 2) / ROOT_TWO_PI;
  }

  /** Chance of a value below {@code z}. */
  public static double below(double z) {
    double x = Math.abs(z);
    if (x > 37) {
      return z > 0 ? 1 : 0;
    }
    double e = Math.exp(-x * x / 2);
    double tail;
    if (x < 7.07106781186547) {
      double top = 3.52624965998911e-02 * x + 0.700383064443688;
      top = top * x + 6.37396220353165;
      top = top * x + 33.912866078383;
      top = top * x + 112.079291497871;
      top = top * x + 221.213596169931;
      top = top * x + 220.206867912376;
      double bottom = 8.83883476483184e-02 * x + 1.75566716318264;
      bottom = bottom * x + 16.064177579207;
      bottom = bottom * x + 86.7807322029461;
      bottom = bottom * x + 296.564248779674;
      bottom = bottom * x + 637.333633378831;
      bottom = bottom * x + 793.826512519948;
      bottom = bottom * x + 440.413735824752;
      tail = e * top / bottom;
    } else {
      double f = x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))));
      tail = e / f / ROOT_TWO_PI;
    }
    return z > 0 ? 1 - tail : tail;
  }

  /**
   * Mean of what lies above 0 of a normal quantity, same unit (worked: moments of a truncated normal).
   *
   * @param sd its standard deviation, above 0
   */
  public static double meanAbove0(double mean, double sd) {
    double k = mean / sd;
    return mean + sd * density(k) / Math.max(below(k), 1e-12);
  }

  /** The value below which lies {@code p}, 0 to 1 exclusive; by bisection, for the few places that need it. */
  public static double quantile(double p) {
    double low = -40;
    double high = 40;
    for (int i = 0; i < 200 && high - low > 1e-15 * Math.max(1, Math.abs(low)); i++) {
      double mid = (low + high) / 2;
      if (below(mid) < p) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }
}
