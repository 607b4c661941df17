package boundwright.athlete;

import boundwright.quantity.RefusedException;

/**
 * The place of training.
 *
 * @param name as the coach calls it
 * @param runway_m runway that can be used, from the near edge of the sand back [m], 5 to 80 m
 * @param pit_m length of the sand [m], 3 to 15 m
 * @param flat_m longest stretch of level ground without sand [m], 10 to 200 m
 * @param surface what the runway is made of
 */
public record Facility(String name, double runway_m, double pit_m, double flat_m, Surface surface) {
  /** Used until the coach enters their own: a 40 m runway (rules minimum, World Athletics, read), 8 m of sand (judgement). */
  public static final Facility DEFAULT = new Facility("Home runway", 40, 8, 60, Surface.TRACK);

  /** Refuses impossible places. */
  public Facility {
    range("runway", runway_m, 5, 80);
    range("sand", pit_m, 3, 15);
    range("level ground", flat_m, 10, 200);
  }

  private static void range(String what, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new RefusedException(
          "A " + what + " length of " + value + " m is out of range: " + least + " to " + most + " m. Measure it and enter metres.");
    }
  }
}
