package boundwright.approach.run;

import boundwright.quantity.Limits;

/** What nobody runs or measures on the way to the board (standing: judgement). */
public final class RunLimits {
  /** Longest run-up [m]. */
  static final double MAX_RUN_UP_M = 55;
  /** Largest head wind [m/s]. */
  public static final double MIN_WIND = -8;
  /** Largest tail wind [m/s]. */
  public static final double MAX_WIND = 12;

  private RunLimits() {}

  static double runUp(String what, double metres) {
    return Limits.within(what, metres, 0, MAX_RUN_UP_M, "m", "It is measured from the board back to the mark.");
  }

  /**
   * Wind along the runway [m/s], + from behind.
   *
   * @throws boundwright.quantity.RefusedException if nobody jumps in it
   */
  public static double wind(double speed) {
    return Limits.within("wind", speed, MIN_WIND, MAX_WIND, "m/s", "A tail wind is +, a head wind is -.");
  }
}
