package boundwright.approach.aim;

import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;

/**
 * One aim kept for all attempts.
 *
 * @param aim_m where to aim, behind the take-off line [m]
 * @param worth expected worth of the best in the end: metres for {@link Goal.Longest}, points for {@link Goal.Points}, else a chance 0 to 1
 * @param foulChance of each attempt, 0 to 1
 */
public record FixedAim(double aim_m, double worth, double foulChance) {
  /**
   * The best fixed aim. For a target the aim does not depend on the attempts, since 1 - (1 - s)^n grows with s (worked).
   *
   * @param attempts 1 to 6
   * @throws RefusedException if the goal is out of reach
   */
  public static FixedAim best(JumpForm form, Goal goal, int attempts) {
    Limits.count("Attempts", attempts, 1, 6, "A meet has up to six.");
    int asked = goal instanceof Goal.Target ? 1 : attempts;
    Worths worths = new Worths(form, goal, 0, AimSearch.candidate(form, AimSearch.candidates()));
    double near = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < AimSearch.candidates(); i++) {
      double aim = AimSearch.candidate(form, i);
      double w = worths.of(asked, aim);
      if (w > most) {
        most = w;
        near = aim;
      }
    }
    if (!(goal instanceof Goal.Longest) && most < 1e-9) {
      throw new RefusedException("Out of reach: with this form the goal has no chance that can be told from 0. Choose a nearer goal.");
    }
    double aim = AimSearch.refine(form, near, m -> worths.of(asked, m));
    return new FixedAim(aim, worths.of(attempts, aim), form.foulChance(aim));
  }

  /** What a given aim is worth; aim up to 2 m behind the line, or up to 0.6 m past it (negative). */
  public static FixedAim at(JumpForm form, Goal goal, int attempts, double aim_m) {
    Limits.count("Attempts", attempts, 1, 6, "A meet has up to six.");
    JumpLimits.gap(aim_m);
    return new FixedAim(aim_m, new Worths(form, goal, aim_m, aim_m).of(attempts, aim_m), form.foulChance(aim_m));
  }

  /** The goal's worth of each centimetre that may come up; told once, since a place is slow to tell. */
  private static final class Worths {
    private final JumpForm form;
    private final double noMark;
    private final int first;
    private final double[] each;

    Worths(JumpForm form, Goal goal, double nearest, double furthest) {
      this.form = form;
      noMark = goal.noMark();
      first = AttemptOdds.lowest(form, furthest);
      each = new double[AttemptOdds.highest(form, nearest) - first + 1];
      for (int k = 0; k < each.length; k++) {
        each[k] = goal.worth(first + k);
      }
    }

    /** Expected worth of the best of so many attempts at one aim. */
    double of(int attempts, double aim) {
      AttemptOdds odds = AttemptOdds.of(form, aim, first, first + each.length - 1);
      double below = odds.foul();
      double reached = Math.pow(below, attempts);
      double sum = reached * noMark;
      for (int i = 0; i < each.length; i++) {
        if (odds.mass(i) > 0) {
          below += odds.mass(i);
          double now = Math.pow(below, attempts);
          sum += (now - reached) * each[i];
          reached = now;
        }
      }
      return sum;
    }
  }
}
