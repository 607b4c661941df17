package boundwright.approach.legs;

/** What is measured of a leg. */
public enum Measure {
  /** A flight from a foot to the same foot [m]. */
  HOP("hop", "m"),
  /** A flight from a foot to the other foot [m]. */
  BOUND("bound", "m"),
  /** The last flight of a rep into sand, to the landing [m]. */
  LAST_FLIGHT("last flight into sand", "m"),
  /** A long jump from the toe, or from the line where the gap is not known [m]. */
  LONG_JUMP("long jump", "m"),
  /** Speed at the take-off of a long jump [m/s]. */
  TAKE_OFF_SPEED("long-jump take-off speed", "m/s");

  private final String label;
  private final String unit;

  Measure(String label, String unit) {
    this.label = label;
    this.unit = unit;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** {@code m} or {@code m/s}. */
  public String unit() {
    return unit;
  }
}
