package boundwright.clip.track;

/** A body point that exists on both sides. */
public enum Joint {
  /** Shoulder. */
  SHOULDER(11),
  /** Elbow. */
  ELBOW(13),
  /** Wrist. */
  WRIST(15),
  /** Knuckle of the little finger. */
  PINKY(17),
  /** Knuckle of the index finger. */
  INDEX(19),
  /** Thumb. */
  THUMB(21),
  /** Hip. */
  HIP(23),
  /** Knee. */
  KNEE(25),
  /** Ankle. */
  ANKLE(27),
  /** Heel. */
  HEEL(29),
  /** Toe tip. */
  TOE(31);

  private final int leftIndex;

  Joint(int leftIndex) {
    this.leftIndex = leftIndex;
  }

  int leftIndex() {
    return leftIndex;
  }
}
