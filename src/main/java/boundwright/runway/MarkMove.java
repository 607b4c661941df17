package boundwright.runway;

import boundwright.quantity.LengthUnit;

/**
 * How the advised take-off mark changed between two moments, both to the near edge of the sand.
 *
 * @param before_m the mark before [m]
 * @param after_m the mark now [m]
 */
public record MarkMove(double before_m, double after_m) {
  /**
   * The change in a sentence, as far as the coach's unit can write it: {@code The mark moved 12 cm back: from 9.40 m to
   * 9.52 m.} Back is away from the sand.
   */
  public String said(LengthUnit unit) {
    double by = unit.round(after_m) - unit.round(before_m);
    if (Math.abs(by) < unit.step() / 2) {
      return "The mark stays at " + unit.write(after_m) + ".";
    }
    return "The mark moved " + shortLength(unit, Math.abs(by)) + (by > 0 ? " back: from " : " forward: from ")
        + unit.write(before_m) + " to " + unit.write(after_m) + ".";
  }

  private static String shortLength(LengthUnit unit, double metres) {
    if (unit == LengthUnit.METRES && metres < 0.995) {
      return Math.round(metres * 100) + " cm";
    }
    return unit.write(metres);
  }
}
