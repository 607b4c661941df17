package boundwright.approach.aim;

import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;

/**
 * What a coach can set for the aim at the board; the defaults' sources stand in {@link boundwright.evidence.JumpSources}.
 *
 * @param noMarkBelow_m no mark counts as a mark so far below the athlete's mean [m], 0 to 19 (judgement)
 * @param rivalSd_m spread of a rival's marks [m], 0.01 to 2 (judgement)
 * @param rivalFouls foul chance of a rival's attempt, 0 to 1 (finals 2004 to 2020, long jump: .30; read)
 */
public record AimSettings(double noMarkBelow_m, double rivalSd_m, double rivalFouls) {
  /** Used until the coach sets their own. */
  public static final AimSettings DEFAULT = new AimSettings(1.0, 0.25, 0.30);

  /** Refuses values outside their ranges. */
  public AimSettings {
    Limits.within("distance that no mark counts below the mean", noMarkBelow_m, 0, JumpLimits.MAX_JUMP_M, "m", "1 m is usual.");
    Limits.within("spread of a rival's marks", rivalSd_m, 0.01, 2, "m", "0.15 to 0.35 m is usual.");
    Limits.within("foul chance of a rival", rivalFouls, 0, 1, "", "0.3 is usual in finals.");
  }
}
