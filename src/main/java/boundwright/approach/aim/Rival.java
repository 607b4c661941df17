package boundwright.approach.aim;

import boundwright.inference.Normal;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import org.jspecify.annotations.Nullable;

/**
 * Another athlete in the meet: what stands, and what may still come. Marks to come are normal, independent.
 *
 * @param name as on the list
 * @param best_m best official mark so far [m], or null while there is none
 * @param attemptsLeft that will still count, 0 to 6
 * @param mean_m mean of their legal marks [m], 1 to 19; used only with attempts left
 * @param sd_m its standard deviation [m], 0.01 to 2
 * @param foulChance chance that an attempt gives no mark, 0 to 1
 */
public record Rival(String name, @Nullable Double best_m, int attemptsLeft, double mean_m, double sd_m, double foulChance) {
  /** Refuses values outside their ranges. */
  public Rival {
    if (best_m != null) {
      JumpLimits.eitherJump("mark of " + name, best_m);
    }
    Limits.count("Attempts left", attemptsLeft, 0, 6, "A meet has up to six.");
    if (attemptsLeft > 0) {
      JumpLimits.eitherJump("mean mark of " + name, mean_m);
      Limits.within("spread of the marks of " + name, sd_m, 0.01, 2, "m", "0.15 to 0.35 m is usual.");
      Limits.within("foul chance of " + name, foulChance, 0, 1, "", "0.3 is usual in finals.");
    }
  }

  /** A rival whose mark stands and who has no attempt left. */
  public static Rival done(String name, double best_m) {
    return new Rival(name, best_m, 0, 0, 0, 0);
  }

  /** Chance that their best in the end, rounded down, is below {@code centimetres}. */
  double below(int centimetres) {
    if (best_m != null && Math.floor(best_m * 100 + 1e-6) >= centimetres) {
      return 0;
    }
    if (attemptsLeft == 0) {
      return 1;
    }
    double one = foulChance + (1 - foulChance) * Normal.below((centimetres / 100.0 - mean_m) / sd_m);
    return Math.pow(one, attemptsLeft);
  }
}
