package boundwright.meet;

import boundwright.quantity.RefusedException;

/** What nobody jumps, runs or measures: the sanity limits of this room (standing: judgement). Each refusal is a sentence. */
final class MeetLimits {
  /** Shortest and longest triple jump [m]. */
  static final double MIN_JUMP_M = 3;
  static final double MAX_JUMP_M = 19;
  /** Smallest and largest board gap [m]. */
  static final double MIN_GAP_M = -0.60;
  static final double MAX_GAP_M = 2.00;
  /** Largest head wind (negative) and tail wind [m/s]. */
  static final double MIN_WIND = -8;
  static final double MAX_WIND = 12;
  /** Longest run-up [m]. */
  static final double MAX_RUN_UP_M = 55;

  private MeetLimits() {}

  /** A whole triple jump [m], official or effective. */
  static double jump(String what, double metres) {
    return within(what, metres, MIN_JUMP_M, MAX_JUMP_M, "m", "Check the unit and the figures.");
  }

  static double gap(double metres) {
    return within("board gap", metres, MIN_GAP_M, MAX_GAP_M, "m", "It is toe to take-off line, + behind the line.");
  }

  static double wind(double speed) {
    return within("wind", speed, MIN_WIND, MAX_WIND, "m/s", "A tail wind is +, a head wind is -.");
  }

  static double runUp(String what, double metres) {
    return within(what, metres, 0, MAX_RUN_UP_M, "m", "It is measured from the board back to the mark.");
  }

  /** {@code value} if it lies in the range; else a refusal with value, limit and the way out. */
  static double within(String what, double value, double least, double most, String unit, String wayOut) {
    if (!(value >= least && value <= most)) {
      String u = unit.isEmpty() ? "" : " " + unit;
      throw new RefusedException(
          "A " + what + " of " + plain(value) + u + " is out of range: " + plain(least) + " to " + plain(most) + u + ". " + wayOut);
    }
    return value;
  }

  static int count(String what, int value, int least, int most, String wayOut) {
    if (value < least || value > most) {
      throw new RefusedException(what + " of " + value + " is out of range: " + least + " to " + most + ". " + wayOut);
    }
    return value;
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e6 ? Long.toString((long) value) : Double.toString(value);
  }
}
