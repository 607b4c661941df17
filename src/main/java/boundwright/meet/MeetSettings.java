package boundwright.meet;

import boundwright.approach.aim.AimSettings;
import boundwright.approach.run.RunUpSettings;
import boundwright.jump.JumpSettings;

/**
 * What a coach can set from the jump to the meet; the rooms below know only their own part.
 *
 * @param jump how a jump's shares are named
 * @param runUp marks and rhythm of the full run-up
 * @param aim what no mark is worth, and what rivals may do
 * @param rules of a new meet
 */
public record MeetSettings(JumpSettings jump, RunUpSettings runUp, AimSettings aim, MeetRules rules) {
  /** Used until the coach sets their own. */
  public static final MeetSettings DEFAULT =
      new MeetSettings(JumpSettings.DEFAULT, RunUpSettings.DEFAULT, AimSettings.DEFAULT, MeetRules.DEFAULT);
}
