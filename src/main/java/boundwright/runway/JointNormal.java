package boundwright.runway;

import org.hipparchus.special.Erf;
import org.hipparchus.util.FastMath;

/**
 * Chances of two standard normal quantities that move together. Hipparchus has none.
 *
 * <p>The chance that both stay below their limits grows with the correlation r at the rate of their joint density (Plackett
 * 1954, Biometrika 41:351-360; memory, high), so it is a one-dimensional integral over the angle whose sine is r: Drezner and
 * Wesolowsky 1990 (J Stat Comput Simul 35:101-107; memory). Near |r| = 1, where that integrand has a spike, the integral runs
 * from the other end, over sqrt(1 - r^2), with the first terms of its series taken out and done in closed form: Genz 2004
 * (Stat Comput 14:251-260; memory). Twenty Gauss-Legendre points; against quadrature in 30 digits the error stays below 1e-14
 * (own output, in the tests), for every r from -1 to 1.
 */
final class JointNormal {
  private static final double STEEP = 0.925;
  /** Beyond this a standard normal is as good as never: keeps every exponent in the range of a double. */
  private static final double NEVER = 38;
  /** The rule's points on 0 to 1 and their weights, written out (a test reads them from Hipparchus): working them out costs a phone 0.1 s. */
  static final double[] POINT = {
    0.0034357004074525577, 0.018014036361043095, 0.04388278587433703, 0.08044151408889061,
    0.1268340467699246, 0.1819731596367425, 0.24456649902458644, 0.3131469556422902,
    0.38610707442917747, 0.46173673943325133, 0.5382632605667487, 0.6138929255708225,
    0.6868530443577098, 0.7554335009754136, 0.8180268403632576, 0.8731659532300754,
    0.9195584859111094, 0.956117214125663, 0.981985963638957, 0.9965642995925474
  };
  /** See {@link #POINT}. */
  static final double[] WEIGHT = {
    0.008807003569576132, 0.02030071490019352, 0.03133602416705452, 0.04163837078835233,
    0.05096505990862024, 0.05909726598075916, 0.06584431922458825, 0.07104805465919106,
    0.07458649323630188, 0.076376693565363, 0.076376693565363, 0.07458649323630188,
    0.07104805465919106, 0.06584431922458825, 0.05909726598075916, 0.05096505990862024,
    0.04163837078835233, 0.03133602416705452, 0.02030071490019352, 0.008807003569576132
  };

  private JointNormal() {}

  /** Chance that a standard normal quantity is below {@code x}. */
  static double below(double x) {
    return 0.5 * Erf.erfc(-x / Math.sqrt(2));
  }

  /** Natural logarithm of {@link #below}, also where that is too small for a double. */
  static double logBelow(double x) {
    if (x > -30) {
      return FastMath.log(below(x));
    }
    double s = 1 / (x * x);
    return -x * x / 2 - FastMath.log(-x * Math.sqrt(2 * Math.PI)) + FastMath.log1p(-s * (1 - 3 * s * (1 - 5 * s)));
  }

  /** Chance that the first is below {@code x} and the second above {@code y}; {@code r} is their correlation, -1 to 1. */
  static double belowAndAbove(double x, double y, double r) {
    return bothAbove(-x, y, -r);
  }

  /** Chance that both are above their limits; {@code r} is their correlation, -1 to 1. */
  static double bothAbove(double first, double second, double r) {
    double h = Math.max(-NEVER, Math.min(NEVER, first));
    double k = Math.max(-NEVER, Math.min(NEVER, second));
    double chance = Math.abs(r) < STEEP ? fromNone(h, k, r) : r > 0 ? fromOne(h, k, r) : below(-h) - fromOne(h, -k, -r);
    return Math.max(0, Math.min(1, chance));
  }

  /** From correlation 0 upwards, over the angle. */
  private static double fromNone(double h, double k, double r) {
    double angle = Math.asin(r);
    double half = (h * h + k * k) / 2;
    double sum = 0;
    for (int i = 0; i < POINT.length; i++) {
      double s = FastMath.sin(angle * POINT[i]);
      sum += WEIGHT[i] * FastMath.exp((s * h * k - half) / (1 - s * s));
    }
    return below(-h) * below(-k) + angle * sum / (2 * Math.PI);
  }

  /** From correlation 1 downwards, over x = sqrt(1 - r^2). */
  private static double fromOne(double h, double k, double r) {
    double one = below(-Math.max(h, k));
    double to2 = (1 - r) * (1 + r);
    if (to2 <= 0) {
      return one;
    }
    double to = Math.sqrt(to2);
    double hk = h * k;
    double apart2 = (h - k) * (h - k);
    double c = (4 - hk) / 8;
    double d = (12 - hk) / 16;
    double e = (1 - d * apart2 / 5) / 3;
    double closed = to * FastMath.exp(-(apart2 / to2 + hk) / 2) * (1 - c * (apart2 - to2) * e + c * d * to2 * to2 / 5);
    if (hk > -100) {
      double apart = Math.sqrt(apart2);
      closed -= FastMath.exp(-hk / 2) * Math.sqrt(2 * Math.PI) * below(-apart / to) * apart * (1 - c * apart2 * e);
    }
    double rest = 0;
    for (int i = 0; i < POINT.length; i++) {
      double x2 = to2 * POINT[i] * POINT[i];
      double root = Math.sqrt(1 - x2);
      double full = FastMath.exp(-hk * x2 / (2 * (1 + root) * (1 + root))) / root;
      rest += WEIGHT[i] * FastMath.exp(-(apart2 / x2 + hk) / 2) * (full - 1 - c * x2 * (1 + d * x2));
    }
    return one - (closed + to * rest) / (2 * Math.PI);
  }
}
