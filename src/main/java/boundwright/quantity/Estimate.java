package boundwright.quantity;

/**
 * A quantity that is not known exactly: its 5, 50 and 95 % points. Unit: whatever the field that holds it says, metres
 * unless stated.
 *
 * @param p05 the value that is undercut one time in twenty
 * @param p50 the median
 * @param p95 the value that is passed one time in twenty
 */
public record Estimate(double p05, double p50, double p95) {
  /** Standard normal 95 % point (Abramowitz and Stegun, table 26.1; published). */
  public static final double Z95 = 1.6448536269514722;

  /** Refuses points out of order or not finite. */
  public Estimate {
    if (!(p05 <= p50 && p50 <= p95) || Double.isInfinite(p05) || Double.isInfinite(p95)) {
      throw new IllegalArgumentException("5-50-95 % points out of order: " + p05 + ", " + p50 + ", " + p95);
    }
  }

  /** The estimate of a normal quantity. {@code sd} is its standard deviation, same unit, at least 0. */
  public static Estimate normal(double mean, double sd) {
    return new Estimate(mean - Z95 * sd, mean, mean + Z95 * sd);
  }

  /** Half the width of the 90 % interval, same unit. */
  public double halfWidth() {
    return (p95 - p05) / 2;
  }

  /** Whether the 90 % interval leaves 0 out: the data tell on which side of it the quantity lies. */
  public boolean told() {
    return p05 > 0 || p95 < 0;
  }

  /** The same estimate seen from a point that lies {@code by} further back. */
  public Estimate plus(double by) {
    return new Estimate(p05 + by, p50 + by, p95 + by);
  }
}
