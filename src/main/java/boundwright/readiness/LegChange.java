package boundwright.readiness;

import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import boundwright.quantity.Interval;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.util.List;

/**
 * A leg against its own history: the latest score less the mean of {@code m} earlier ones, whose error is
 * te sqrt(1 + 1/m); what must be exceeded to be told from error at 95 % is 1.96 times that (m = 1 gives the usual minimal
 * detectable change; worked). A lower score is a reason to look and to ask, never a diagnosis.
 *
 * @param foot which leg
 * @param earlier how many earlier scores
 * @param usual their mean [m]
 * @param change latest less usual, with its 90 % interval [m]
 * @param detectable change that the error of the test does not explain, at 95 % [m]
 */
public record LegChange(Foot foot, int earlier, double usual, Estimate change, double detectable) {
  /**
   * Compares a leg with itself.
   *
   * @param foot which leg
   * @param history its earlier scores by the same protocol [m], at least one
   * @param latest the newest score [m]
   * @param te typical error of the test [m], above 0
   */
  public static LegChange of(Foot foot, List<Double> history, double latest, double te) {
    if (history.isEmpty()) {
      throw new RefusedException("The " + foot.label() + " leg has no earlier score to be compared with. This one is the first of its history.");
    }
    if (!(te > 0) || Double.isInfinite(te)) {
      throw new RefusedException("The error of the test is " + te + " m; it must be above 0. Repeat the test with the squad to learn it.");
    }
    double usual = history.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double sd = te * Math.sqrt(1 + 1.0 / history.size());
    return new LegChange(foot, history.size(), usual, Estimate.normal(latest - usual, sd), Interval.Z975 * sd);
  }

  /** Whether the error of the test explains the change badly. */
  public boolean beyondError() {
    return Math.abs(change.p50()) > detectable;
  }

  /** Whether the leg is below its own history by more than the error of the test. */
  public boolean lower() {
    return change.p50() < -detectable;
  }

  /** In sentences, lengths in the coach's unit. */
  public String inWords(LengthUnit unit) {
    String tests = earlier == 1 ? "its one earlier test" : "the mean of its " + earlier + " earlier tests";
    String head =
        "The " + foot.label() + " leg is " + unit.write(Math.abs(change.p50())) + (change.p50() < 0 ? " below " : " above ") + tests + " ("
            + unit.write(usual) + "); the error of the test explains up to " + unit.write(detectable) + ". ";
    if (lower()) {
      return head + "That is more than error: ask the athlete, test again on a fresh day, and leave pain or swelling to licensed medical staff.";
    }
    return head + (beyondError() ? "That is more than error: the leg has gained." : "That is within the error: no change can be told.");
  }
}
