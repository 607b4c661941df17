package boundwright.takeoffs;

import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;

/**
 * Where the take-offs of one rep fall, as sums of unknowns: place c is {@code base[c] + where[c] . x} and the rep's own scatter. Place 0 is
 * take-off 2, the last is the landing. This class says which unknowns there are and how far each may be from 0 before anything is
 * logged (relative standard deviations; standing: judgement). Treat as immutable.
 */
final class RunJumpShape {
  /** Flights, those that land on one foot with them. */
  static final int FLIGHT = 0;
  private static final int STEP = 1;
  /** How much longer the flight into the sand is than its share. */
  private static final int SAND = 2;
  /** How much longer flights off the right are than off the left. */
  private static final int SIDE = 3;
  private static final int FADE = 4;
  private static final int FAST = 5;
  private static final int RHYTHM = 6;
  private static final int TREND = 7;
  static final int COUNT = 8;
  /** Of each unknown in their order; {@link #FLIGHT} comes on top of what is not known of the flight into the sand. */
  static final double[] SD = {0.13, 0.12, 0.08, 0.05, 0.08, 0.08, 0.06, 0.015};

  /** Steps of the usual run-up, from which a faster one is told (judgement). */
  static final int USUAL_STEPS = 4;
  /** Usual relative scatter of a day, of a rep and of single flights and running steps. */
  static final double DAY = 0.02;
  /** What chance adds to a day's deviation in 30 days, beside the trend. */
  static final double WALK_30 = 0.015;
  static final double REP = 0.022;
  private static final double FLIGHT_SCATTER = 0.05;
  private static final double STEP_SCATTER = 0.05;

  /** Places. */
  final int n;
  /** Nominal place [m]. */
  final double[] base;
  /** Unknowns of each place [m per relative unit]. */
  final double[][] where;
  /** Variance of single flights and steps up to each place [m2], at the usual scatter. */
  final double[] scatter;
  /** Variance of the first contact against its mark [m2]. */
  final double placement;
  /** Relative variance of the level on the day of the rep against the day asked about, that is no day's form. */
  final double walked;

  /** @param months from the day of the rep to the day that is asked about, each of 30 days */
  RunJumpShape(Lengths lengths, RunJumps pattern, int steps, boolean inSand, double months) {
    n = pattern.jumps();
    base = new double[n];
    where = new double[n][];
    scatter = new double[n];
    walked = WALK_30 * WALK_30 * months;
    placement = lengths.placement(steps) * lengths.placement(steps);
    double at = 0;
    double spread = 0;
    double[] h = new double[COUNT];
    for (int jump = 1; jump <= n; jump++) {
      boolean ends = jump == n;
      int running = pattern.running();
      double m = ends && inSand ? lengths.sand(steps, running, jump) : lengths.flight(steps, running, jump);
      add(h, m, FLIGHT, jump, steps, months);
      h[SIDE] += pattern.foot(jump) == Foot.RIGHT ? m / 2 : -m / 2;
      h[SAND] += ends && inSand ? m : 0;
      at += m;
      spread += square(FLIGHT_SCATTER * m);
      for (int place = 1; !ends && place <= running; place++) {
        double s = lengths.step(steps, running, jump, place);
        add(h, s, STEP, jump, steps, months);
        h[RHYTHM] += s * (running - RunJumps.USUAL_RUNNING) / 2.0;
        at += s;
        spread += square(STEP_SCATTER * s);
      }
      base[jump - 1] = at;
      where[jump - 1] = h.clone();
      scatter[jump - 1] = spread;
    }
  }

  private static void add(double[] h, double m, int unknown, int jump, int steps, double months) {
    h[unknown] += m;
    h[FADE] += m * (jump - 1) / 3.0;
    h[FAST] += m * (steps - USUAL_STEPS) / 8.0;
    h[TREND] -= m * months;
  }

  /** Covariance of two places of one rep that is not the athlete's usual way, without the day [m2]. */
  double own(int c, int d, double factor) {
    return factor * (REP * REP * base[c] * base[d] + scatter[Math.min(c, d)]) + placement;
  }

  private static double square(double x) {
    return x * x;
  }
}
