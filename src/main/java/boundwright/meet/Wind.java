package boundwright.meet;

import boundwright.approach.run.RunLimits;
import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;

/** The wind of an attempt, by the rule (World Athletics; memory). */
public final class Wind {
  /** Largest tail wind with which a mark counts for records [m/s]. */
  public static final double LIMIT = 2.0;

  private Wind() {}

  /** Where the rule stood. */
  public static Source source() {
    return JumpSources.WIND_RULE;
  }

  /**
   * As it is read out: to the next higher tenth in the positive direction, unless the second decimal is zero.
   *
   * @param measured tail wind + [m/s], -8 to 12
   */
  public static double rounded(double measured) {
    RunLimits.wind(measured);
    double tenths = Math.ceil(measured * 10 - 1e-6);
    return tenths == 0 ? 0 : tenths / 10;
  }

  /** Whether a mark with this measured wind counts for records. The rank in the meet does not depend on it. */
  public static boolean legal(double measured) {
    return rounded(measured) <= LIMIT + 1e-9;
  }
}
