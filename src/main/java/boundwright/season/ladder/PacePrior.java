package boundwright.season.ladder;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.quantity.Limits;

/**
 * What is believed of the sessions needed before this squad has shown any. Standing of the defaults: judgement, after the simulated
 * athletes of {@code bench/gate} (own output, 200 each, seed 12: a learner from .60 to .95 in 4, 8, 12, 18, 24 sessions passes in 9, 11, 14,
 * 19, 23, the median; a steady .90 with form of the day in 7, a tenth in 5 and a tenth after 15) and common practice of three to eight
 * weeks an approach at two sessions a week.
 *
 * @param mean sessions needed on average, 2 to 60
 * @param meanSd how unsure that is, SD of its logarithm, 0.05 to 2
 * @param stepsSd how much approaches differ, SD of the logarithm, 0.01 to 1
 * @param familySd how much families of drills differ, SD of the logarithm, 0.01 to 1
 * @param athletesSd how much athletes are expected to differ, SD of the logarithm, 0.05 to 1; the squad corrects it
 * @param shape of one athlete's stays, 1.5 to 15 (8: a standard deviation of .35 of the mean); the squad corrects it
 */
public record PacePrior(double mean, double meanSd, double stepsSd, double familySd, double athletesSd, double shape) {
  /** Where the model and its prior come from. */
  public static final Source SOURCE =
      new Source("pace", "Sessions needed until two steps are added: gamma distributed, squad, approach, family and athlete pooled",
          "the makers, see docs/season-ladder.md; corrected by the squad's own stays", Standing.JUDGEMENT);

  /** The defaults. */
  public static final PacePrior USUAL = new PacePrior(12, 0.5, 0.2, 0.15, 0.35, 8);

  /** Refuses priors out of range. */
  public PacePrior {
    String out = "Usual are 12 sessions, 0.5, 0.2, 0.15, 0.35 and 8.";
    Limits.within("mean of sessions needed", mean, 2, 60, "sessions", out);
    Limits.within("standard deviation of that mean", meanSd, 0.05, 2, "", out);
    Limits.within("difference between approaches", stepsSd, 0.01, 1, "", out);
    Limits.within("difference between families", familySd, 0.01, 1, "", out);
    Limits.within("difference between athletes", athletesSd, 0.05, 1, "", out);
    Limits.within("shape of stays", shape, 1.5, 15, "", out);
  }
}
