package boundwright.flight;

import org.hipparchus.util.FastMath;
import org.jspecify.annotations.Nullable;

/**
 * How an athlete may change while nobody looks. Between days the level moves with a speed of its own, which is learned and
 * dies away ({@value #MEMORY_DAYS} days), and by a little chance; so does the difference between the legs. Days without
 * any log may have been a rest, an illness or a hurt leg: after {@value #USUAL_GAP} days the level, its speed and the
 * legs' difference are each less sure, the level is taken to have fallen a little, and things move faster for some weeks. So
 * they do while somebody grows fast.
 * All standing: judgement, settled on simulated seasons (decisions 0044, 0045); how much less sure is learned from breaks seen ({@link Breaks}).
 */
final class Wander {
  static final double MEMORY_DAYS = 60;
  static final int USUAL_GAP = 10;
  private static final int MOST_DAYS = 365;
  /** Relative standard deviation of the speed of change, a 30 days. */
  static final double SPEED_SD = 0.045;
  /** Variance that chance adds in 30 days: of the level, of the legs' difference. */
  private static final double LEVEL_30 = square(0.015);
  private static final double SIDE_30 = square(0.015);
  /** After a break: the level's likely fall, and how unsure level, speed and legs are (relative). */
  private static final double FALL = 0.058;
  private static final double BREAK_LEVEL = 0.034;
  private static final double BREAK_SPEED = 0.01;
  private static final double BREAK_SIDE = 0.13;
  private static final double BREAK_DAYS = 14;
  /** What an unsettled athlete adds in 30 days: level, legs; and how fast that dies away. */
  private static final double UNSETTLED_LEVEL_30 = square(0.015);
  private static final double UNSETTLED_SIDE_30 = square(0.03);
  private static final double SETTLING_DAYS = 28;

  /** What somebody adds in 30 days at least while they grow fast: level, legs (decision 0044). */
  private static final double GROWING_LEVEL_30 = square(0.03);
  private static final double GROWING_SIDE_30 = square(0.08);

  private Wander() {}

  /**
   * Lets days pass.
   *
   * @param b changed
   * @param days since the last day logged, above 0
   * @param unsettled 0 to 1, as it was on the last day
   * @param growing whether they grow fast
   * @param breaks seen before
   */
  static Passed pass(Belief b, long days, double unsettled, boolean growing, Breaks breaks) {
    double d = Math.min(days, MOST_DAYS);
    double months = d / 30;
    double kept = FastMath.exp(-d / MEMORY_DAYS);
    b.flow(Traits.LEVEL, Traits.SPEED, MEMORY_DAYS / 30 * (1 - kept), kept);
    b.diffuse(Traits.SPEED, square(SPEED_SD) * (1 - kept * kept));
    double size = d <= USUAL_GAP ? 0 : 1 - FastMath.exp(-(d - USUAL_GAP) / BREAK_DAYS);
    b.diffuse(Traits.LEVEL, months * (LEVEL_30 + Math.max(UNSETTLED_LEVEL_30 * unsettled, growing ? GROWING_LEVEL_30 : 0)));
    b.diffuse(Traits.SIDE, months * (SIDE_30 + Math.max(UNSETTLED_SIDE_30 * unsettled, growing ? GROWING_SIDE_30 : 0)));
    double now = Math.max(unsettled * FastMath.exp(-d / SETTLING_DAYS), size);
    if (size <= 0) {
      return new Passed(now, null);
    }
    b.setMean(Traits.LEVEL, b.mean(Traits.LEVEL) - FALL * size);
    Breaks.Expected level = expected(b, Traits.LEVEL, BREAK_LEVEL * size, breaks.levelFactor());
    Breaks.Expected side = expected(b, Traits.SIDE, BREAK_SIDE * size, breaks.sideFactor());
    b.diffuse(Traits.LEVEL, level.added());
    b.diffuse(Traits.SPEED, square(BREAK_SPEED * size));
    b.diffuse(Traits.SIDE, side.added());
    return new Passed(now, new Breaks.Open(0, level, side));
  }

  /**
   * What the days made of it.
   *
   * @param unsettled how unsettled the athlete is now
   * @param open the break that they were, or null
   */
  record Passed(double unsettled, Breaks.@Nullable Open open) {}

  private static Breaks.Expected expected(Belief b, int which, double sd, double factor) {
    return new Breaks.Expected(b.mean(which), b.variance(which), factor * square(sd), factor);
  }

  private static double square(double x) {
    return x * x;
  }
}
