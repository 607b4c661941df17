package boundwright.season.weeks;

import boundwright.quantity.RefusedException;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.util.FastMath;

/**
 * A taper along an exponential: on its k-th day the load is {@code exp(-k / tau)} of before (Bosquet et al. 2007, MSSE 39:1358-1365,
 * read; mostly endurance evidence). A mean cut of 41, 50 and 60 % over 14 days takes a tau of 13.045, 9.623 and 6.950 days (worked).
 *
 * @param days of the taper, at least 1
 * @param tau time constant [days]
 */
public record TaperCurve(int days, double tau) {
  /**
   * The curve with this mean cut.
   *
   * @param cut mean over its days, 0.01 to 0.95
   */
  public static TaperCurve of(int days, double cut) {
    if (days < 2 || !(cut >= 0.01 && cut <= 0.95)) {
      throw new RefusedException("A taper of " + days + " days with a mean cut of " + cut + " is out of range: at least 2 days, 0.01 to 0.95.");
    }
    double least = 1 / -FastMath.log(0.04 / days);
    double tau = new BrentSolver(1e-9).solve(200, t -> mean(days, t) - (1 - cut), least, 60.0 * days);
    return new TaperCurve(days, tau);
  }

  private static double mean(int days, double tau) {
    double sum = 0;
    for (int k = 1; k <= days; k++) {
      sum += FastMath.exp(-k / tau);
    }
    return sum / days;
  }

  /** The share of before that is left on its k-th day, 1 the first. */
  public double share(int k) {
    return FastMath.exp(-k / tau);
  }
}
