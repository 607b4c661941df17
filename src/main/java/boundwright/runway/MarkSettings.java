package boundwright.runway;

import boundwright.quantity.RefusedException;

/**
 * What the coach asks of a mark. All are settings; the defaults are judgement.
 *
 * @param chance asked of the rep: that it ends in sand and keeps the last contact out of it, each by its margin; 0.5 to 0.99
 * @param sandMargin_m how far into the sand the landing must be [m], 0 to 2
 * @param clearMargin_m how far before the sand the last contact must be [m], 0 to 2
 */
public record MarkSettings(double chance, double sandMargin_m, double clearMargin_m) {
  /** Chance 0.9; 0.30 m into the sand; the last contact 0.30 m, a foot's length, before it. */
  public static final MarkSettings DEFAULT = new MarkSettings(0.9, 0.30, 0.30);

  /** Refuses values outside their ranges. */
  public MarkSettings {
    if (!(chance >= 0.5 && chance <= 0.99)) {
      throw new RefusedException("A chance of " + chance + " is out of range: 0.5 to 0.99. 0.9 means nine reps in ten.");
    }
    margin("margin into the sand", sandMargin_m);
    margin("margin before the sand", clearMargin_m);
  }

  private static void margin(String what, double value) {
    if (!(value >= 0 && value <= 2)) {
      throw new RefusedException("A " + what + " of " + value + " m is out of range: 0 to 2 m. The default is 0.30 m.");
    }
  }
}
