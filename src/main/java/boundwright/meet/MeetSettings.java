package boundwright.meet;

/**
 * What a coach can set for the jump and the meet; the defaults' sources stand in {@link boundwright.evidence.JumpSources}.
 *
 * @param classThreshold percentage points by which a share must lead, 0 to 20 (Hay 1992; memory)
 * @param rhythm_m spread at the board from which the rhythm is worth training [m], 0.02 to 0.6 (judgement)
 * @param checkSteps steps out at which the coach's check mark lies, 4 to 6 (common practice)
 * @param earlyStep step at which the athlete checks for themselves, 1 to 8 (common practice)
 * @param noMarkBelow_m no mark counts as a mark so far below the athlete's mean [m], 0 to 19 (judgement)
 * @param rivalSd_m spread of a rival's marks [m], 0.01 to 2 (judgement)
 * @param rivalFouls foul chance of a rival's attempt, 0 to 1 (finals 2004 to 2020, long jump: .30; read)
 * @param rules of a new meet
 */
public record MeetSettings(
    double classThreshold,
    double rhythm_m,
    int checkSteps,
    int earlyStep,
    double noMarkBelow_m,
    double rivalSd_m,
    double rivalFouls,
    MeetRules rules) {
  /** Used until the coach sets their own. */
  public static final MeetSettings DEFAULT =
      new MeetSettings(
          Shares.DEFAULT_THRESHOLD,
          StartAdvice.DEFAULT_RHYTHM_M,
          RunUpPlan.USUAL_CHECK,
          RunUpPlan.USUAL_EARLY,
          1.0,
          0.25,
          0.30,
          MeetRules.DEFAULT);

  /** Refuses values outside their ranges. */
  public MeetSettings {
    MeetLimits.within("class threshold", classThreshold, 0, 20, "percentage points", "2 is usual.");
    MeetLimits.within("spread that is worth training", rhythm_m, 0.02, 0.6, "m", "0.12 m is usual.");
    MeetLimits.count("A check mark at steps out", checkSteps, 4, 6, "Steering starts about five steps out.");
    MeetLimits.count("An early mark at step", earlyStep, 1, 8, "4 is usual.");
    MeetLimits.within("distance that no mark counts below the mean", noMarkBelow_m, 0, MeetLimits.MAX_JUMP_M, "m", "1 m is usual.");
    MeetLimits.within("spread of a rival's marks", rivalSd_m, 0.01, 2, "m", "0.15 to 0.35 m is usual.");
    MeetLimits.within("foul chance of a rival", rivalFouls, 0, 1, "", "0.3 is usual in finals.");
  }
}
