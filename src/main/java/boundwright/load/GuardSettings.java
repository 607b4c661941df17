package boundwright.load;

/**
 * What the facility set for the guard.
 *
 * @param limits the limits
 * @param season the part of the year
 */
public record GuardSettings(GuardLimits limits, Season season) {
  /** The default limits, off-season. */
  public static final GuardSettings DEFAULT = new GuardSettings(GuardLimits.DEFAULT, Season.OFF_SEASON);
}
