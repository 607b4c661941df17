package boundwright.track;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.quantity.AskedOnce;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.MarkAdvice;

/**
 * Asks once whether a tape far from the advised mark is meant: a slip in the field, or the wrong unit, would otherwise be
 * learned from. The same tape tapped a second time is taken. Kept in memory only; after a restart it asks again.
 */
final class OddTape {
  /** How far from the mark is odd [m], and as a share of the mark, whichever is less (judgement). */
  private static final double FAR_M = 5;
  private static final double FAR_SHARE = 1 / 3.0;

  private final AskedOnce asked = new AskedOnce();

  /**
   * Lets a tape pass that is near the mark or was asked about before.
   *
   * @throws RefusedException with the question, the first time
   */
  void check(Athlete athlete, Rep rep, MarkAdvice advice, LengthUnit unit) {
    Double tape = rep.markToSand_m();
    double mark = advice.markToSand_m();
    if (tape == null || Math.abs(tape - mark) <= Math.max(1, Math.min(FAR_M, mark * FAR_SHARE))) {
      return;
    }
    String key = athlete.id() + "/" + rep.sequence().letters() + "/" + rep.approachSteps() + "/" + tape;
    if (asked.first(key)) {
      throw new RefusedException(
          "The mark is " + unit.write(mark) + ". Is the tape really at " + unit.write(tape)
              + "? Tap again to log it so (on the command line: --sure), or correct it. Nothing was logged.");
    }
  }
}
