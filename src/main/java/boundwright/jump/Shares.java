package boundwright.jump;

import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;

/**
 * How a triple jump's distance is shared between its phases. Each share is between 0 and 1; together they are 1.
 *
 * @param hop the hop's part
 * @param step the step's part
 * @param jump the jump's part
 */
public record Shares(double hop, double step, double jump) {
  /** Percentage points by which a share must lead (Hay 1992; memory, so a setting). */
  public static final double DEFAULT_THRESHOLD = 2;

  /** Refuses shares that are no shares. */
  public Shares {
    if (!(hop > 0 && step > 0 && jump > 0 && Math.abs(hop + step + jump - 1) < 1e-6)) {
      throw new RefusedException(
          "Shares of " + hop + ", " + step + " and " + jump + " do not make a whole: each is above 0 and together they are 1. "
              + "Give the three lengths instead.");
    }
  }

  /** From three lengths in any unit. */
  public static Shares ofLengths(double hop, double step, double jump) {
    double sum = hop + step + jump;
    return new Shares(hop / sum, step / sum, jump / sum);
  }

  /** One phase's part, 0 to 1. */
  public double of(Phase phase) {
    return switch (phase) {
      case HOP -> hop;
      case STEP -> step;
      case JUMP -> jump;
    };
  }

  /**
   * The class by the rule of Hay 1992 (memory): hop- or jump-dominated when that share is at least {@code threshold}
   * percentage points above the next largest, else balanced.
   *
   * @param threshold percentage points, 0 to 20; {@link #DEFAULT_THRESHOLD} is usual
   */
  public PhaseClass classify(double threshold) {
    Limits.within("class threshold", threshold, 0, 20, "percentage points", "2 is usual.");
    double lead = threshold / 100 - 1e-9;
    if (hop - Math.max(step, jump) >= lead) {
      return PhaseClass.HOP_DOMINATED;
    }
    if (jump - Math.max(step, hop) >= lead) {
      return PhaseClass.JUMP_DOMINATED;
    }
    return PhaseClass.BALANCED;
  }
}
