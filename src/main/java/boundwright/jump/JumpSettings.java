package boundwright.jump;

import boundwright.quantity.Limits;

/**
 * What a coach can set for the jump; the default's source stands in {@link boundwright.evidence.JumpSources}.
 *
 * @param classThreshold percentage points by which a share must lead, 0 to 20 (Hay 1992; memory)
 */
public record JumpSettings(double classThreshold) {
  /** Used until the coach sets their own. */
  public static final JumpSettings DEFAULT = new JumpSettings(Shares.DEFAULT_THRESHOLD);

  /** Refuses values outside their ranges. */
  public JumpSettings {
    Limits.within("class threshold", classThreshold, 0, 20, "percentage points", "2 is usual.");
  }
}
