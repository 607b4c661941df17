package boundwright.athlete.growth;

import java.util.List;

/**
 * How children grow about the peak of their height spurt, as a local linear trend that knows it: the speed {@code v} is drawn to a mean course,
 * {@code dv = m'(s) ds - k (v - m(s)) ds + dW}, the height is its integral, and how far the speed wanders depends on the years {@code s} from the
 * peak. Speed [cm/y], time [y].
 *
 * <p>The courses are the likeliest for the heights of every second of 136 real children, 66 boys and 70 girls born in 1928 and 1929, measured every
 * half year from 8 years on (Tuddenham and Snyder 1954, Univ. California Publ. Child Dev. 1:183-364; read as the data set of an R package). Return,
 * first spread and wander have the best interval score on readings with an error of 0.4 cm made from those heights; the wander was then lowered until
 * the interval held nine times in ten on these children and two kinds of made-up growth together. The other children, and made-up growth of other
 * seeds, are what it was held against: {@code docs/growth.md}.
 */
final class GrowthCourse {
  /** Years from the peak of the first mean speed and of the last; before and after it stays the same. */
  private static final double FIRST = -4;
  private static final double STEP = 0.5;
  /** How fast the speed returns to its course: so much of what it is off it, a year [1/y]. */
  static final double RETURN = 0.65;
  /** Years from the peak at which the wander changes. */
  static final double[] BORDERS = {-2, 0, 1, 2};
  /** How fast the speed wanders, before the first border, between two, and after the last [cm2/y3]. */
  static final double[] WANDER = {0.5, 1.4, 0.8, 0.3, 0.12};

  /** Mean speeds of boys and of girls every half year from 4 years before the peak on [cm/y]. */
  static final GrowthCourse BOYS =
      new GrowthCourse(5.3, 5.2, 5.2, 5.2, 5.7, 6.8, 8.2, 9.0, 8.5, 6.8, 4.7, 3.0, 2.0, 1.5, 1.1, 0.8, 0.6, 0.5, 0.2);
  static final GrowthCourse GIRLS =
      new GrowthCourse(5.6, 5.7, 5.7, 5.4, 5.3, 5.5, 6.1, 7.0, 7.8, 7.7, 6.5, 4.7, 2.9, 1.9, 1.3, 1.0, 0.7, 0.6, 0.3);
  static final List<GrowthCourse> ALL = List.of(BOYS, GIRLS);

  private final double[] speed;
  private final double[] height;

  private GrowthCourse(double... speed) {
    this.speed = speed;
    this.height = new double[speed.length];
    for (int i = 1; i < speed.length; i++) {
      height[i] = height[i - 1] + STEP * (speed[i - 1] + speed[i]) / 2;
    }
  }

  /** Mean speed so many years from the peak [cm/y]. */
  double speed(double s) {
    double x = (s - FIRST) / STEP;
    if (x <= 0) {
      return speed[0];
    }
    int i = (int) x;
    return i >= speed.length - 1 ? speed[speed.length - 1] : speed[i] + (x - i) * (speed[i + 1] - speed[i]);
  }

  /** Height gained on the mean course since {@link #FIRST} [cm]; negative before. */
  double height(double s) {
    double x = (s - FIRST) / STEP;
    if (x <= 0) {
      return x * STEP * speed[0];
    }
    int i = (int) x;
    int last = speed.length - 1;
    double u = (x - i) * STEP;
    return i >= last ? height[last] + (x - last) * STEP * speed[last] : height[i] + u * (speed[i] + speed(s)) / 2;
  }

  /**
   * The state {@code t} years after one that was {@code s} years from the peak; exact for any {@code t}.
   *
   * @param wander times {@link #WANDER}
   */
  GrowthState after(GrowthState from, double s, double t, double wander) {
    double e = left(t);
    GrowthState out = from.plus(0, -speed(s)).moved((1 - e) / RETURN, e).plus(height(s + t) - height(s), speed(s + t));
    // noise of each stretch of the same wander, carried to the end
    double at = s;
    for (int i = 0; i <= BORDERS.length && at < s + t; i++) {
      double until = i < BORDERS.length ? Math.min(BORDERS[i], s + t) : s + t;
      if (until > at) {
        boolean whole = at == s && until == s + t;
        out = noise(out, wander * WANDER[i], until - at, whole ? e : left(until - at), until == s + t ? 1 : left(s + t - until));
        at = until;
      }
    }
    return out;
  }

  /** After wandering for {@code t} years, of which {@code e} is left at their end, and {@code rest} of that at last. */
  private static GrowthState noise(GrowthState to, double wander, double t, double e, double rest) {
    double g = (1 - e) / RETURN;
    double hh = wander * (t - 2 * g + (1 - e * e) / (2 * RETURN)) / (RETURN * RETURN);
    double hv = wander * g * g / 2;
    double vv = wander * (1 - e * e) / (2 * RETURN);
    double gr = (1 - rest) / RETURN;
    return to.lessSure(hh + 2 * gr * hv + gr * gr * vv, rest * (hv + gr * vv), rest * rest * vv);
  }

  /** Height that 1 cm/y too much has brought after {@code t} years [cm]. */
  static double gained(double t) {
    return (1 - left(t)) / RETURN;
  }

  /** What is left of 1 cm/y too much after {@code t} years [cm/y]. */
  static double left(double t) {
    return Math.exp(-RETURN * t);
  }
}
