package boundwright.jump;

import boundwright.quantity.Limits;

/** What nobody jumps: the sanity limits of a whole triple jump and of its take-off (standing: judgement). */
public final class JumpLimits {
  /** Shortest triple jump [m]. */
  public static final double MIN_JUMP_M = 3;
  /** Longest triple jump [m]. */
  public static final double MAX_JUMP_M = 19;
  /** Smallest board gap [m]; negative is a foul. */
  public static final double MIN_GAP_M = -0.60;
  /** Largest board gap [m]. */
  public static final double MAX_GAP_M = 2.00;

  private JumpLimits() {}

  /**
   * A whole triple jump [m], official or effective.
   *
   * @throws boundwright.quantity.RefusedException if nobody jumps it
   */
  public static double jump(String what, double metres) {
    return Limits.within(what, metres, MIN_JUMP_M, MAX_JUMP_M, "m", "Check the unit and the figures.");
  }

  /**
   * Toe to take-off line [m], + behind the line.
   *
   * @throws boundwright.quantity.RefusedException if it is out of range
   */
  public static double gap(double metres) {
    return Limits.within("board gap", metres, MIN_GAP_M, MAX_GAP_M, "m", "It is toe to take-off line, + behind the line.");
  }
}
