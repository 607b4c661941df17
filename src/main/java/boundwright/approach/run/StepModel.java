package boundwright.approach.run;

import boundwright.athlete.Athlete;
import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import java.util.Collections;
import java.util.List;

/**
 * The length of each step of this athlete's run-up, learned from run-throughs of any number of steps, whether every
 * step was measured or only where the last one fell. A step grows towards a full one ({@code A - B r^(i-1)}), has its own
 * deviation, and so have the last two before the board; all linear, so learning is closed form ({@link LinearBelief}).
 * The first guess is judgement; its first steps are those measured from blocks and rolling starts, not the sprint
 * curve's, which are far too short. Immutable.
 */
public final class StepModel {
  /** How fast steps grow, per step: fits 1.15 m at first, 18 steps = 33.8 m (read: 33.83 m). */
  private static final double RATIO = 0.776;
  private static final double FULL = 2.12;
  private static final double FULL_SD = 0.22;
  private static final double SHORTER = 0.97;
  private static final double SHORTER_SD = 0.25;
  private static final double OWN_SD = 0.06;
  private static final double LAST_SD = 0.08;
  /** How much one step varies from run to run [m], and what that guess is worth in points (judgement). */
  private static final double STEP_SD = 0.07;
  private static final double STEP_WORTH = 10;
  /** Errors of the foot do not pile up over more steps than this: steering holds them (judgement). */
  private static final double MOST_PILED = 6;
  /** Tape error of two positions, in step variances. */
  private static final double TAPE = 0.1;

  private static final int OWN = 2;
  private static final int LAST = OWN + Athlete.MAX_STEPS;
  private static final int COUNT = LAST + 2;

  private final LinearBelief belief;
  private final int[] runs;
  private final double unsure;

  private StepModel(LinearBelief belief, int[] runs, double unsure) {
    this.belief = belief;
    this.runs = runs;
    this.unsure = unsure;
  }

  /** Learned from run-throughs in any order; with none it is the first guess. */
  public static StepModel of(List<RunThrough> runs) {
    return of(runs, Collections.nCopies(runs.size(), 1.0), 0);
  }

  /**
   * As {@link #of(List)}, of somebody who has grown since.
   *
   * @param longer for each run how many times longer its steps would be now
   * @param unsure standard deviation that growth adds to a length, as a part of it
   */
  public static StepModel of(List<RunThrough> runs, List<Double> longer, double unsure) {
    double[] mean = new double[COUNT];
    double[] sd = new double[COUNT];
    mean[0] = FULL;
    mean[1] = SHORTER;
    sd[0] = FULL_SD;
    sd[1] = SHORTER_SD;
    for (int i = OWN; i < LAST; i++) {
      sd[i] = OWN_SD;
    }
    sd[LAST] = LAST_SD;
    sd[LAST + 1] = LAST_SD;
    LinearBelief b = new LinearBelief(mean, sd, STEP_SD, STEP_WORTH);
    int[] count = new int[Athlete.MAX_STEPS + 1];
    for (int k = 0; k < runs.size(); k++) {
      RunThrough r = runs.get(k);
      double before = r.startMark_m();
      int from = 0;
      for (int i = 1; i <= r.steps(); i++) {
        double at = r.toBoard_m().get(i - 1);
        if (!Double.isNaN(at)) {
          b.tell(span(from, i, r.steps()), longer.get(k) * (before - at), Math.min(i - from, MOST_PILED) + TAPE);
          before = at;
          from = i;
        }
      }
      count[r.steps()] += from > 0 ? 1 : 0;
    }
    return new StepModel(b, count, unsure);
  }

  /** Steps {@code from + 1} to {@code to} of a run of {@code steps}. */
  private static double[] span(int from, int to, int steps) {
    double[] x = new double[COUNT];
    for (int i = from + 1; i <= to; i++) {
      x[0] += 1;
      x[1] -= Math.pow(RATIO, i - 1);
      x[OWN + i - 1] += 1;
      if (i >= steps - 1) {
        x[LAST + steps - i] += 1;
      }
    }
    return x;
  }

  /** Start to last contact of a run of so many steps [m], 1 to 26: how well the mean is known. */
  public Estimate length(int steps) {
    return between(0, steps, steps);
  }

  /** From contact {@code from} (0 is the start) to contact {@code to} in a run of {@code steps} [m]. */
  public Estimate between(int from, int to, int steps) {
    Athlete.checkSteps(steps);
    Estimate known = belief.estimate(span(from, to, steps));
    double half = Math.hypot(known.halfWidth(), Estimate.Z95 * unsure * known.p50());
    return new Estimate(known.p50() - half, known.p50(), known.p50() + half);
  }

  /** Run-throughs of exactly so many steps that told anything. */
  public int runs(int steps) {
    return runs[Athlete.checkSteps(steps)];
  }
}
