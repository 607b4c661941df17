package boundwright.load.account;

import boundwright.quantity.RefusedException;

/**
 * How contacts are weighed: settings of the facility.
 *
 * @param power how fast the weight of a contact grows with its force, {@value #LEAST_POWER} to {@value #MOST_POWER}; a fatigue
 *     exponent used for bone (Edwards 2018, memory)
 * @param times on the ground, by steps
 * @param setUnits what a set of weights counts for each leg [standing-bound contacts], 0 to 20: slow lifts have no contacts that
 *     could be weighed (judgement)
 * @param sportUnits what an hour of sport rated 10 counts for each leg [standing-bound contacts], 0 to 200 (judgement)
 */
public record LoadScale(double power, ContactTimes times, double setUnits, double sportUnits) {
  /** Smallest and largest power between which an answer is looked at again. */
  public static final double LEAST_POWER = 4;
  /** See {@link #LEAST_POWER}. */
  public static final double MOST_POWER = 9;
  /** Power 7, a set of weights 1, an hour of the hardest sport 30 for each leg. */
  public static final LoadScale DEFAULT = new LoadScale(7, ContactTimes.DEFAULT, 1, 30);

  /** Refuses what is out of range. */
  public LoadScale {
    if (!(power >= LEAST_POWER && power <= MOST_POWER)) {
      throw new RefusedException("A power of " + power + " is out of range: 4 to 9. What is known of bone lies between; 7 is usual.");
    }
    if (!(setUnits >= 0 && setUnits <= 20)) {
      throw new RefusedException("A set of weights of " + setUnits + " standing-bound contacts is out of range: 0 to 20 for each leg.");
    }
    if (!(sportUnits >= 0 && sportUnits <= 200)) {
      throw new RefusedException("An hour of sport of " + sportUnits + " standing-bound contacts is out of range: 0 to 200 for each leg.");
    }
  }
}
