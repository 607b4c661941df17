package boundwright.quantity;

/**
 * An interval in which an unknown lies at a stated level. Unit: that of the quantity it belongs to.
 *
 * @param low lower end
 * @param high upper end, not below {@code low}
 * @param level the chance that stands behind it, for example 0.95
 */
public record Interval(double low, double high, double level) {
  /** Standard normal 97.5 % point (Abramowitz and Stegun, table 26.1; memory). */
  public static final double Z975 = 1.959963984540054;

  /** Refuses ends out of order and levels outside 0 to 1. */
  public Interval {
    if (!(low <= high) || !(level > 0 && level < 1)) {
      throw new IllegalArgumentException("Not an interval: " + low + " to " + high + " at " + level);
    }
  }

  /** Whether {@code value} lies inside or on an end. */
  public boolean holds(double value) {
    return value >= low && value <= high;
  }
}
