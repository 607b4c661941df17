package boundwright.approach.run;

import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;

/**
 * How widely the foot falls at each step along the runway, and where the athlete starts to steer. Before that, errors
 * add up from step to step and the spread grows; from then on part of the present error is taken back with every step
 * and it shrinks: the change point in the spread. Both are held against the runs step by step: {@code change of error =
 * -k x error + noise}, k = 0 before, k learned after, so every possible onset has a closed-form likelihood (worked).
 *
 * @param steps of the runs
 * @param each spread at each step, first step first, the board last
 * @param runs that were used
 * @param onsetChance chance that steering starts so many steps out, index 0 = never
 */
public record RunwaySpread(int steps, List<StepSpread> each, int runs, List<Double> onsetChance) {
  /** Fewest runs from which a spread is told. */
  public static final int FEWEST = 4;
  /** Furthest out that steering is looked for. */
  private static final int MOST_OUT = 10;
  private static final double STEP_SD = 0.07;

  /**
   * One step.
   *
   * @param stepsOut 0 is the board
   * @param mean_m mean toe to take-off line [m]
   * @param sd_m spread from run to run [m]
   * @param seen runs in which it was seen
   */
  public record StepSpread(int stepsOut, double mean_m, Estimate sd_m, int seen) {}

  /** Takes copies. */
  public RunwaySpread {
    each = List.copyOf(each);
    onsetChance = List.copyOf(onsetChance);
  }

  /**
   * From run-throughs; those with the most common number of steps are used, with their start mark taken as given.
   *
   * @throws RefusedException with fewer than {@value #FEWEST} such runs with steps seen
   */
  public static RunwaySpread of(List<RunThrough> all) {
    int steps = commonest(all);
    List<RunThrough> runs =
        all.stream().filter(r -> r.steps() == steps && r.toBoard_m().stream().filter(p -> !Double.isNaN(p)).count() >= 2).toList();
    if (runs.size() < FEWEST) {
      throw new RefusedException(
          "The spread along the runway needs at least " + FEWEST + " run-throughs of as many steps with their steps measured; there are "
              + runs.size() + ". Measure more, or only the last six steps.");
    }
    List<StepSpread> each = new ArrayList<>();
    double[] mean = new double[steps];
    for (int out = steps - 1; out >= 0; out--) {
      int o = out;
      double[] seen = runs.stream().mapToDouble(r -> r.out_m(o)).filter(p -> !Double.isNaN(p)).toArray();
      for (double p : seen) {
        mean[out] += p / seen.length;
      }
      if (seen.length >= FEWEST) {
        LinearBelief b = new LinearBelief(new double[] {mean[out]}, new double[] {100}, 0.15, 2);
        for (double p : seen) {
          b.tell(new double[] {1}, p, 1);
        }
        each.add(new StepSpread(out, mean[out], b.noise(), seen.length));
      }
    }
    return new RunwaySpread(steps, each, runs.size(), onset(runs, mean, steps));
  }

  private static int commonest(List<RunThrough> all) {
    int best = 0;
    long most = 0;
    for (int n = 1; n <= 26; n++) {
      int steps = n;
      long count = all.stream().filter(r -> r.steps() == steps).count();
      if (count > most) {
        most = count;
        best = n;
      }
    }
    return best;
  }

  private static List<Double> onset(List<RunThrough> runs, double[] mean, int steps) {
    int furthest = Math.min(MOST_OUT, steps - 1);
    double[] log = new double[furthest + 1];
    double top = Double.NEGATIVE_INFINITY;
    for (int c = 0; c <= furthest; c++) {
      LinearBelief b = new LinearBelief(new double[] {0.3}, new double[] {0.25}, STEP_SD, 4);
      for (RunThrough r : runs) {
        for (int out = steps - 1; out >= 1; out--) {
          double now = r.out_m(out) - mean[out];
          double next = r.out_m(out - 1) - mean[out - 1];
          if (!Double.isNaN(now) && !Double.isNaN(next)) {
            double[] x = {out <= c ? -now : 0};
            log[c] += b.logPredictive(x, next - now, 1);
            b.tell(x, next - now, 1);
          }
        }
      }
      top = Math.max(top, log[c]);
    }
    double sum = 0;
    for (int c = 0; c <= furthest; c++) {
      log[c] = Math.exp(log[c] - top);
      sum += log[c];
    }
    List<Double> out = new ArrayList<>();
    for (double l : log) {
      out.add(l / sum);
    }
    return out;
  }

  /** Steps out with the largest spread. */
  public int widest() {
    StepSpread best = each.get(0);
    for (StepSpread s : each) {
      best = s.sd_m().p50() > best.sd_m().p50() ? s : best;
    }
    return best.stepsOut();
  }

  /** Chance that the athlete steers at all. */
  public double steers() {
    return 1 - onsetChance.get(0);
  }

  /** Steps out at which steering starts, 5-50-95 %, given that there is any. */
  public Estimate onset() {
    return new Estimate(quantile(0.05), quantile(0.5), quantile(0.95));
  }

  private double quantile(double p) {
    double sum = 0;
    for (int c = 1; c < onsetChance.size(); c++) {
      sum += onsetChance.get(c) / steers();
      if (sum >= p - 1e-12) {
        return c;
      }
    }
    return onsetChance.size() - 1.0;
  }

  /** Whether the data tell that the athlete steers. */
  public boolean told() {
    return steers() >= 0.9;
  }

  /** The sentence for the coach. */
  public String words() {
    if (!told()) {
      return "The data cannot tell whether and where steering starts.";
    }
    Estimate o = onset();
    return o.p05() == o.p95()
        ? "Steering starts " + (int) o.p50() + " steps out."
        : "Steering starts about " + (int) o.p50() + " steps out (between " + (int) o.p05() + " and " + (int) o.p95() + ").";
  }
}
