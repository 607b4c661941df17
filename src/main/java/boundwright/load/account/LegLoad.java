package boundwright.load.account;

import boundwright.footfall.Foot;

/**
 * What some days asked of the two legs.
 *
 * @param jumps jump contacts in the sense of the handbooks: both legs, a landing on two feet once
 * @param right jump contacts of the right leg
 * @param left jump contacts of the left leg
 * @param rightUnits of the right leg, everything counted [standing-bound contacts]
 * @param leftUnits of the left leg, everything counted [standing-bound contacts]
 */
public record LegLoad(int jumps, int right, int left, double rightUnits, double leftUnits) {
  /** Nothing. */
  public static final LegLoad NONE = new LegLoad(0, 0, 0, 0, 0);

  /** Both together. */
  public LegLoad plus(LegLoad other) {
    return new LegLoad(
        jumps + other.jumps, right + other.right, left + other.left, rightUnits + other.rightUnits, leftUnits + other.leftUnits);
  }

  /** Of one leg [standing-bound contacts]. */
  public double units(Foot foot) {
    return foot == Foot.RIGHT ? rightUnits : leftUnits;
  }

  /** Of both legs [standing-bound contacts]. */
  public double units() {
    return rightUnits + leftUnits;
  }
}
