package boundwright.approach.run;

import boundwright.approach.weather.Weather;
import boundwright.quantity.Limits;

/** What nobody runs or measures on the way to the board (standing: judgement). */
public final class RunLimits {
  /** Longest run-up [m]. */
  static final double MAX_RUN_UP_M = 55;

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
    return Weather.wind(speed);
  }
}
