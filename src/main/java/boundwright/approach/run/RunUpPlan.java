package boundwright.approach.run;

import boundwright.athlete.Athlete;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Estimate;
import boundwright.quantity.Limits;

/**
 * A full run-up as it is taped: all distances are measured from the take-off line back, in metres.
 *
 * @param steps run
 * @param speed at the board [m/s]
 * @param startMark_m where the run begins: its middle is the mark to lay, which the mark in place stays while the board does not tell it to move
 * @param checkSteps how many steps out the coach stands
 * @param checkMark_m where the foot should fall then
 * @param earlyStep which step the athlete checks for themselves, counted from the start
 * @param earlyMark_m where it should fall
 * @param aim_m board gap that is aimed at
 * @param runs run-throughs of exactly so many steps that it rests on
 */
public record RunUpPlan(
    int steps,
    Estimate speed,
    Estimate startMark_m,
    int checkSteps,
    Estimate checkMark_m,
    int earlyStep,
    Estimate earlyMark_m,
    double aim_m,
    int runs) {
  /** Steps out at which the coach's check mark usually stands (common practice: 4 to 6). */
  public static final int USUAL_CHECK = 5;
  /** Step at which the athlete usually checks for themselves (common practice: 2 to 6). */
  public static final int USUAL_EARLY = 4;

  /**
   * The plan for a number of steps.
   *
   * @param steps 1 to 26
   * @param aim_m board gap aimed at [m]
   * @param checkSteps steps out, 4 to 6; in a run-up shorter than that, the first step
   * @param earlyStep 1 to 8, counted from the start; in a shorter run-up, the first step
   */
  public static RunUpPlan of(StepModel model, SpeedBySteps speed, int steps, double aim_m, int checkSteps, int earlyStep) {
    Limits.count("Run-up steps", steps, 1, Athlete.MAX_STEPS, "A standing start needs no marks.");
    JumpLimits.gap(aim_m);
    Limits.count("A check mark at steps out", checkSteps, 4, 6, "Steering starts about five steps out.");
    Limits.count("An early mark at step", earlyStep, 1, 8, "4 is usual.");
    int out = checkSteps < steps ? checkSteps : steps - 1;
    int early = earlyStep < steps ? earlyStep : 1;
    Estimate start = model.length(steps).plus(aim_m);
    RunLimits.runUp("start mark", start.p50());
    return new RunUpPlan(
        steps,
        speed.at(steps),
        start,
        out,
        model.between(steps - out, steps, steps).plus(aim_m),
        early,
        model.between(early, steps, steps).plus(aim_m),
        aim_m,
        model.runs(steps));
  }

  /** The plan for a speed at the board: the fewest steps that reach it. */
  public static RunUpPlan forSpeed(
      StepModel model, SpeedBySteps speed, double wanted, double aim_m, int checkSteps, int earlyStep) {
    return of(model, speed, speed.stepsFor(wanted), aim_m, checkSteps, earlyStep);
  }

  /**
   * The same run-up begun from a mark that the board's log speaks for. It may be out as far as what the steps say reaches, on the further side.
   * The other marks go with it, as each step is taken to be as much longer or shorter. A mark outside what the steps say changes nothing.
   *
   * @param mark_m start mark to the take-off line [m]
   */
  public RunUpPlan from(double mark_m) {
    if (mark_m < startMark_m.p05() || mark_m > startMark_m.p95()) {
      return this;
    }
    double longer = (mark_m - aim_m) / (startMark_m.p50() - aim_m);
    double half = startMark_m.halfWidth() + Math.abs(mark_m - startMark_m.p50());
    Estimate start = new Estimate(mark_m - half, mark_m, mark_m + half);
    return new RunUpPlan(steps, speed, start, checkSteps, stretched(checkMark_m, longer), earlyStep, stretched(earlyMark_m, longer), aim_m, runs);
  }

  private Estimate stretched(Estimate mark, double longer) {
    return mark.plus((longer - 1) * (mark.p50() - aim_m));
  }
}
