package boundwright.approach.run;

import boundwright.approach.board.StartAdvice;
import boundwright.quantity.Limits;

/**
 * What a coach can set for the full run-up; the defaults' sources stand in {@link boundwright.evidence.JumpSources}.
 *
 * @param rhythm_m spread at the board from which the rhythm is worth training [m], 0.02 to 0.6 (judgement)
 * @param checkSteps steps out at which the coach's check mark lies, 4 to 6 (common practice)
 * @param earlyStep step at which the athlete checks for themselves, 1 to 8 (common practice)
 */
public record RunUpSettings(double rhythm_m, int checkSteps, int earlyStep) {
  /** Used until the coach sets their own. */
  public static final RunUpSettings DEFAULT =
      new RunUpSettings(StartAdvice.DEFAULT_RHYTHM_M, RunUpPlan.USUAL_CHECK, RunUpPlan.USUAL_EARLY);

  /** Refuses values outside their ranges. */
  public RunUpSettings {
    Limits.within("spread that is worth training", rhythm_m, 0.02, 0.6, "m", "0.12 m is usual.");
    Limits.count("A check mark at steps out", checkSteps, 4, 6, "Steering starts about five steps out.");
    Limits.count("An early mark at step", earlyStep, 1, 8, "4 is usual.");
  }
}
