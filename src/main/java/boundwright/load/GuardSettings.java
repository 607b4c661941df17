package boundwright.load;

import boundwright.load.account.LoadScale;

/**
 * What the facility set.
 *
 * @param limits the limits
 * @param scale how contacts are weighed
 */
public record GuardSettings(GuardLimits limits, LoadScale scale) {
  /** The defaults. */
  public static final GuardSettings DEFAULT = new GuardSettings(GuardLimits.DEFAULT, LoadScale.DEFAULT);
}
