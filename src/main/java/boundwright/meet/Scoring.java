package boundwright.meet;

import boundwright.evidence.JumpSources;
import boundwright.evidence.Source;
import boundwright.jump.JumpLimits;
import boundwright.jump.MeasureRule;
import boundwright.quantity.Limits;

/** Points by {@code floor(a (x + b)^2 - 5000)} (World Athletics scoring: form read, coefficients memory). */
public enum Scoring {
  /** Triple jump, men. */
  TRIPLE_JUMP_MEN("triple jump, men", .4611, 98.63),
  /** Triple jump, women. */
  TRIPLE_JUMP_WOMEN("triple jump, women", .4282, 105.53),
  /** Long jump, men. */
  LONG_JUMP_MEN("long jump, men", 1.929, 48.41),
  /** Long jump, women. */
  LONG_JUMP_WOMEN("long jump, women", 1.966, 49.24);

  private final String label;
  private final double a;
  private final double b;

  Scoring(String label, double a, double b) {
    this.label = label;
    this.a = a;
    this.b = b;
  }

  /** In words for the coach. */
  public String label() {
    return label;
  }

  /** Where it stood. */
  public Source source() {
    return JumpSources.SCORING;
  }

  /**
   * Points for a distance, which is rounded down to the centimetre first; never below 0.
   *
   * @param metres triple jump 3 to 19, long jump 1 to 10
   */
  public int points(double metres) {
    if (this == TRIPLE_JUMP_MEN || this == TRIPLE_JUMP_WOMEN) {
      JumpLimits.jump("triple jump", metres);
    } else {
      Limits.within("long jump", metres, 1, 10, "m", "Check the unit.");
    }
    double x = MeasureRule.CENTIMETRE.down(metres) + b;
    return (int) Math.max(0, Math.floor(a * x * x - 5000 + 1e-9));
  }
}
