package boundwright.jump;

import boundwright.quantity.Limits;

/** What nobody jumps: the sanity limits of a whole jump and of its take-off (standing: judgement); those of one event are {@link Event}'s. */
public final class JumpLimits {
  /** Shortest jump of either event [m]. */
  public static final double MIN_JUMP_M = 1;
  /** Longest jump of either event [m]. */
  public static final double MAX_JUMP_M = 19;
  /** Smallest board gap [m]; negative is a foul. */
  public static final double MIN_GAP_M = -0.60;
  /** Largest board gap [m]. */
  public static final double MAX_GAP_M = 2.00;

  private JumpLimits() {}

  /**
   * A whole jump [m] where the event is not known, official or effective.
   *
   * @throws boundwright.quantity.RefusedException if nobody jumps it in either
   */
  public static double eitherJump(String what, double metres) {
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
