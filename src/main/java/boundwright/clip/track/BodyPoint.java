package boundwright.clip.track;

import boundwright.footfall.Foot;

/**
 * The 33 body points in the order in which the landmark network gives them (science of the clip: hips 23/24, ankles
 * 27/28, heels 29/30, toes 31/32; read). Left is odd-numbered, right the next even number.
 */
public enum BodyPoint {
  NOSE, LEFT_EYE_INNER, LEFT_EYE, LEFT_EYE_OUTER, RIGHT_EYE_INNER, RIGHT_EYE, RIGHT_EYE_OUTER, LEFT_EAR, RIGHT_EAR,
  LEFT_MOUTH, RIGHT_MOUTH, LEFT_SHOULDER, RIGHT_SHOULDER, LEFT_ELBOW, RIGHT_ELBOW, LEFT_WRIST, RIGHT_WRIST, LEFT_PINKY,
  RIGHT_PINKY, LEFT_INDEX, RIGHT_INDEX, LEFT_THUMB, RIGHT_THUMB, LEFT_HIP, RIGHT_HIP, LEFT_KNEE, RIGHT_KNEE, LEFT_ANKLE,
  RIGHT_ANKLE, LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE;

  /** How many points a frame has. */
  public static final int COUNT = 33;

  private static final BodyPoint[] ALL = values();

  /** The point of a joint on the side of this foot. */
  public static BodyPoint of(Joint joint, Foot side) {
    return ALL[joint.leftIndex() + (side == Foot.RIGHT ? 1 : 0)];
  }
}
