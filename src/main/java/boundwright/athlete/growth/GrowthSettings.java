package boundwright.athlete.growth;

import boundwright.quantity.Limits;

/**
 * What the facility set; all defaults are judgement.
 *
 * @param fast_cm_y speed above which care is lower limits [cm/y], 3 to 12
 * @param unsure_cm_y half the 90 % interval of the speed from which it is time to measure again [cm/y], 0.5 to 6
 * @param weeks longest time between two heights of somebody who grows, 4 to 26
 */
public record GrowthSettings(double fast_cm_y, double unsure_cm_y, int weeks) {
  /** Used until somebody sets others. */
  public static final GrowthSettings DEFAULT = new GrowthSettings(7, 2, 12);

  /** Refuses values outside their ranges. */
  public GrowthSettings {
    Limits.within("speed of growth from which limits are lower", fast_cm_y, 3, 12, "cm a year", "7 is usual.");
    Limits.within("unsureness of the speed of growth", unsure_cm_y, 0.5, 6, "cm a year", "2 is usual.");
    Limits.count("Weeks between two heights", weeks, 4, 26, "12 is usual.");
  }
}
