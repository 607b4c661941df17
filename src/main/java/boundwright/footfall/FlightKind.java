package boundwright.footfall;

/** What lies between one contact and the next (common practice, from the event's own rule: hop same foot, step other). */
public enum FlightKind {
  /** From a foot to the same foot. */
  HOP("hop"),
  /** From a foot to the other foot; in the triple jump, the step. */
  BOUND("bound"),
  /** The last flight, into sand or onto grass, landing on both feet. */
  JUMP("jump");

  private final String label;

  FlightKind(String label) {
    this.label = label;
  }

  /** The kind in one word. */
  public String label() {
    return label;
  }
}
