package boundwright.clip.body;

/**
 * How the foot met the ground, by the angle of heel to toe against the ground less its angle when standing flat: above
 * 8.0 degrees heel, -1.6 to 8.0 mid-foot, below -1.6 forefoot (Altman and Davis 2012; memory. Mo et al.: 7.4 and -0.8;
 * read).
 */
public enum Strike {
  /** Heel first. */
  HEEL("heel"),
  /** Heel and ball nearly together. */
  MID("whole foot"),
  /** Ball or toe first. */
  FOREFOOT("ball of the foot");

  /** Above it the heel leads [degrees]. */
  public static final double HEEL_ABOVE_DEG = 8.0;
  /** Below it the forefoot leads [degrees]. */
  public static final double FOREFOOT_BELOW_DEG = -1.6;

  private final String label;

  Strike(String label) {
    this.label = label;
  }

  /** The class in words for the coach. */
  public String label() {
    return label;
  }

  /** The class of an angle [degrees]; toe up is positive. */
  public static Strike of(double angleDeg) {
    return angleDeg > HEEL_ABOVE_DEG ? HEEL : angleDeg < FOREFOOT_BELOW_DEG ? FOREFOOT : MID;
  }
}
