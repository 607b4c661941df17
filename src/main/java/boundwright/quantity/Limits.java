package boundwright.quantity;

/** Refuses what lies out of a range, in one sentence: the value with its unit, the range, a way out. */
public final class Limits {
  private Limits() {}

  /**
   * {@code value} if it lies in the range.
   *
   * @param what is judged, as in "A WHAT of 3 m is out of range"
   * @param unit of value, least and most; may be empty
   * @param wayOut a sentence that says what to do
   * @throws RefusedException if it does not, or is not a number
   */
  public static double within(String what, double value, double least, double most, String unit, String wayOut) {
    if (!(value >= least && value <= most)) {
      String u = unit.isEmpty() ? "" : " " + unit;
      throw new RefusedException(
          "A " + what + " of " + plain(value) + u + " is out of range: " + plain(least) + " to " + plain(most) + u + ". " + wayOut);
    }
    return value;
  }

  /**
   * {@code value} if it lies in the range.
   *
   * @param what is counted, as in "WHAT of 3 is out of range"
   * @param wayOut a sentence that says what to do
   * @throws RefusedException if it does not
   */
  public static int count(String what, int value, int least, int most, String wayOut) {
    if (value < least || value > most) {
      throw new RefusedException(what + " of " + value + " is out of range: " + least + " to " + most + ". " + wayOut);
    }
    return value;
  }

  private static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e6 ? Long.toString((long) value) : Double.toString(value);
  }
}
