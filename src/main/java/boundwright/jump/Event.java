package boundwright.jump;

import boundwright.quantity.Limits;

/** The two horizontal jumps. What is kept of a run-up, a take-off at the board or a meet belongs to one of them and is never mixed. */
public enum Event {
  /** Hop, step and jump. */
  TRIPLE_JUMP("triple jump", 3, 19, 3, 15, "13 m (men) and 11 m (women) are international."),
  /** One jump from the board. */
  LONG_JUMP("long jump", 1, 10, 1, 3, "In the long jump the line lies 1 to 3 m before the sand.");

  private final String label;
  private final double least_m;
  private final double most_m;
  private final double nearest_m;
  private final double furthest_m;
  private final String boards;

  Event(String label, double least_m, double most_m, double nearest_m, double furthest_m, String boards) {
    this.label = label;
    this.least_m = least_m;
    this.most_m = most_m;
    this.nearest_m = nearest_m;
    this.furthest_m = furthest_m;
    this.boards = boards;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Shortest jump that is taken [m] (sanity limit; judgement). */
  public double least_m() {
    return least_m;
  }

  /** Longest jump that is taken [m] (sanity limit; judgement). */
  public double most_m() {
    return most_m;
  }

  /**
   * A whole jump of this event [m], official or effective.
   *
   * @throws boundwright.quantity.RefusedException if nobody jumps it
   */
  public double jump(String what, double metres) {
    return Limits.within(what, metres, least_m, most_m, "m", "Check the unit and the figures.");
  }

  /**
   * Take-off line to the near edge of the sand [m]: 3 to 15 in the triple jump, 1 to 3 in the long jump.
   *
   * @throws boundwright.quantity.RefusedException if it is out of range
   */
  public double board(double metres) {
    return Limits.within("board distance", metres, nearest_m, furthest_m, "m", boards);
  }
}
