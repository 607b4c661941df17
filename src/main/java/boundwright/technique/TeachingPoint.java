package boundwright.technique;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.Arrays;
import java.util.Optional;

/**
 * The points of a good bound, from the posture down to the foot and back up to the arms. All are common practice of the
 * trade: no measurement stands behind the words. The {@link #key} is what a logged rep keeps.
 */
public enum TeachingPoint {
  /** No lean to the front or to a side. */
  UPRIGHT("upright", "Trunk upright, eyes ahead", "leans"),
  /** The free thigh comes up. */
  KNEE_UP("knee-up", "Knee up, thigh near level", "low knee"),
  /** The recovering leg folds. */
  HEEL_TO_SEAT("heel-to-seat", "Heel comes up to the seat", "trailing heel"),
  /** The ankle is held. */
  TOE_UP("toe-up", "Toe up, ankle held firm", "toe dangles"),
  /** The leg is held until late, then driven down and back, from about 0.15 m above the ground. */
  HOLD_THEN_STRIKE("hold-then-strike", "Hold knee and toe, strike late: down and back", "strikes too early"),
  /** No reaching: under the body is the cue; measured, every contact is somewhat ahead of it. */
  FOOT_UNDER("foot-under", "Foot lands just ahead, felt under the body", "foot too far ahead"),
  /** The foot meets the ground as taught, see {@link FootContact}; here the default. */
  HEEL_ROLLS("heel-rolls", "Heel leads, foot rolls to the toe", "stabs with the toe"),
  /** Running over the take-off, not popping up as in a long jump. */
  HIPS_TALL("hips-tall", "Hips tall over the take-off, run across it", "pops up"),
  /** The speed is kept from contact to contact. */
  SPEED_THROUGH("speed-through", "Speed carried through to the last flight", "loses speed"),
  /** The arms keep the balance. */
  ARMS_BALANCE("arms-balance", "Arms keep the body square and level", "tips or twists");

  /** Where these points come from. */
  public static final Source SOURCE =
      new Source("bounding-teaching-points", "what to look for in a bound", "common practice", Standing.COMMON_PRACTICE);

  private final String key;
  private final String lookFor;
  private final String wentWrong;

  TeachingPoint(String key, String lookFor, String wentWrong) {
    this.key = key;
    this.lookFor = lookFor;
    this.wentWrong = wentWrong;
  }

  /** Short stable name, lower case with hyphens: what a rep keeps in its faults. */
  public String key() {
    return key;
  }

  /** What to look for, in a few words. */
  public String lookFor() {
    return lookFor;
  }

  /** What is ticked when it was not there, in two or three words. */
  public String wentWrong() {
    return wentWrong;
  }

  /** What to look for where the foot's contact is taught so. */
  public String lookFor(FootContact taught) {
    return this == HEEL_ROLLS ? taught.lookFor() : lookFor;
  }

  /** What is ticked when it was not there, where the foot's contact is taught so. */
  public String wentWrong(FootContact taught) {
    return this == HEEL_ROLLS ? taught.wentWrong() : wentWrong;
  }

  /** The point with this key; empty for a key that is not (or no longer) in the list. */
  public static Optional<TeachingPoint> byKey(String key) {
    return Arrays.stream(values()).filter(p -> p.key.equals(key)).findFirst();
  }
}
