package boundwright.approach.aim;

import boundwright.quantity.Limits;
import org.jspecify.annotations.Nullable;

/**
 * Where to aim at each attempt, given the best so far and the attempts left: dynamic programming on whole centimetres
 * (worked; the question is that of Ladany, Humes and Sphicas 1975, memory). Immutable.
 */
public final class AimPolicy {
  private final JumpForm form;
  private final Goal goal;
  private final int attempts;
  private final int first;
  private final AttemptOdds[] odds;
  /** Worth with so many attempts left: [left][centimetre - first]. */
  private final double[][] worth;
  private final double[] noMark;

  /**
   * What to do at one attempt.
   *
   * @param attemptsLeft including this one
   * @param best_m best so far [m], or null without a mark
   * @param aim_m where to aim, behind the line [m]
   * @param foulChance of this attempt, 0 to 1
   * @param worth expected worth in the end when the policy is followed from here
   * @param gain of that, what these attempts add to stopping here: next to 0 when there is nothing left to win
   */
  public record Advice(int attemptsLeft, @Nullable Double best_m, double aim_m, double foulChance, double worth, double gain) {
    /** Whether an attempt can still change anything that can be told from 0. */
    public boolean worthwhile() {
      return gain > 1e-6;
    }
  }

  private AimPolicy(
      JumpForm form, Goal goal, int attempts, int first, AttemptOdds[] odds, double[][] worth, double[] noMark) {
    this.form = form;
    this.goal = goal;
    this.attempts = attempts;
    this.first = first;
    this.odds = odds;
    this.worth = worth;
    this.noMark = noMark;
  }

  /**
   * Works the policy out.
   *
   * @param attempts 1 to 6
   */
  public static AimPolicy of(JumpForm form, Goal goal, int attempts) {
    Limits.count("Attempts", attempts, 1, 6, "A meet has up to six.");
    int n = AimSearch.candidates();
    int first = AttemptOdds.lowest(form, AimSearch.candidate(form, n - 1));
    int last = AttemptOdds.highest(form, 0);
    AttemptOdds[] odds = new AttemptOdds[n];
    for (int i = 0; i < n; i++) {
      odds[i] = AttemptOdds.of(form, AimSearch.candidate(form, i), first, last);
    }
    int cells = last - first + 1;
    double[][] worth = new double[attempts + 1][cells];
    double[] noMark = new double[attempts + 1];
    noMark[0] = goal.noMark();
    for (int k = 0; k < cells; k++) {
      worth[0][k] = goal.worth(first + k);
    }
    double[] q = new double[n];
    for (int left = 1; left <= attempts; left++) {
      double[] next = worth[left - 1];
      double[][] better = new double[n][];
      double[][] chance = new double[n][];
      for (int i = 0; i < n; i++) {
        better[i] = new double[cells + 1];
        chance[i] = new double[cells + 1];
        for (int k = cells - 1; k >= 0; k--) {
          double p = odds[i].mass(k);
          chance[i][k] = chance[i][k + 1] + p;
          better[i][k] = better[i][k + 1] + p * next[k];
        }
      }
      for (int k = 0; k < cells; k++) {
        for (int i = 0; i < n; i++) {
          q[i] = next[k] * (1 - chance[i][k + 1]) + better[i][k + 1];
        }
        worth[left][k] = top(q);
      }
      for (int i = 0; i < n; i++) {
        q[i] = noMark[left - 1] * (1 - chance[i][0]) + better[i][0];
      }
      noMark[left] = top(q);
    }
    return new AimPolicy(form, goal, attempts, first, odds, worth, noMark);
  }

  /** The largest of smooth values on an even grid, a parabola laid through its neighbours. */
  private static double top(double[] q) {
    int best = 0;
    for (int i = 1; i < q.length; i++) {
      if (q[i] > q[best]) {
        best = i;
      }
    }
    if (best == 0 || best == q.length - 1) {
      return q[best];
    }
    double rise = (q[best + 1] - q[best - 1]) / 2;
    double bend = q[best + 1] - 2 * q[best] + q[best - 1];
    return bend < 0 ? q[best] - rise * rise / (2 * bend) : q[best];
  }

  /** Attempts it was worked out for. */
  public int attempts() {
    return attempts;
  }

  /** Expected worth at the start, no mark yet. */
  public double worth() {
    return noMark[attempts];
  }

  /**
   * What the policy is worth over the best aim that never changes: metres for {@link Goal.Longest}, points for {@link Goal.Points}, else chance.
   */
  public double overFixedAim() {
    return advise(attempts, null).worth() - FixedAim.best(form, goal, attempts).worth();
  }

  /**
   * Where to aim now.
   *
   * @param attemptsLeft including this one, 1 to {@link #attempts()}
   * @param best_m best official mark so far [m], or null without one
   */
  public Advice advise(int attemptsLeft, @Nullable Double best_m) {
    Limits.count("Attempts left", attemptsLeft, 1, attempts, "The policy was worked out for " + attempts + ".");
    if (best_m == null) {
      return choose(attemptsLeft, null, goal.noMark(), noMark[attemptsLeft - 1], -1);
    }
    form.event().jump("best so far", best_m);
    int cm = (int) Math.floor(best_m * 100 + 1e-6);
    int cell = Math.max(-1, cm - first);
    double stop = goal.worth(cm);
    if (cell >= worth[0].length) {
      return new Advice(attemptsLeft, best_m, 0, form.foulChance(0), stop, 0);
    }
    return choose(attemptsLeft, best_m, stop, cell >= 0 ? worth[attemptsLeft - 1][cell] : shorter(attemptsLeft - 1, stop), cell);
  }

  /** Worth when the best so far is shorter than anything in the table: every legal jump improves it. */
  private double shorter(int left, double stop) {
    double now = stop;
    double[] q = new double[odds.length];
    for (int l = 1; l <= left; l++) {
      for (int i = 0; i < odds.length; i++) {
        q[i] = value(odds[i], now, worth[l - 1], -1);
      }
      now = top(q);
    }
    return now;
  }

  private Advice choose(int left, @Nullable Double best, double stop, double stay, int cell) {
    double[] next = worth[left - 1];
    int near = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < odds.length; i++) {
      double v = value(odds[i], stay, next, cell);
      if (v > most) {
        most = v;
        near = i;
      }
    }
    int last = first + next.length - 1;
    double aim =
        AimSearch.refine(
            form,
            AimSearch.candidate(form, near),
            m -> value(AttemptOdds.of(form, m, first, last), stay, next, cell));
    double value = value(AttemptOdds.of(form, aim, first, last), stay, next, cell);
    return new Advice(left, best, aim, form.foulChance(aim), value, value - stop);
  }

  private static double value(AttemptOdds o, double stay, double[] next, int cell) {
    double better = 0;
    double chance = 0;
    for (int k = cell + 1; k < next.length; k++) {
      double p = o.mass(k);
      chance += p;
      better += p * next[k];
    }
    return stay * (1 - chance) + better;
  }
}
