package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.quantity.Estimate;
import org.hipparchus.util.FastMath;

/**
 * Length and speed of an athlete's run-up by its steps.
 *
 * <p>Step k is about {@code A - B r^(k-1)} long, r = 0.776: with A = 2.12 m and B = 0.97 m the first step is 1.15 m and
 * 18 steps are 33.8 m (a high-school run-up of 18 steps measured 33.83 m, first steps .82-1.37 m; read). A, B and a
 * deviation of each rung are learned from the athlete's own measured run-ups, in closed form. The exponential sprint
 * curve is not used for lengths, because it makes the first step far too short.
 */
final class RunUpBook {
  private static final double RATIO = 0.776;
  private static final int A = 0;
  private static final int B = 1;
  private static final int RUNG = 2;
  private static final int COUNT = RUNG + Athlete.MAX_STEPS + 1;
  private static final Estimate NONE = new Estimate(0, 0, 0);

  private final Belief lengths;
  private final Belief speeds;
  private final double quick;
  private final int[] measured;

  private RunUpBook(Belief lengths, Belief speeds, double quick, int[] measured) {
    this.lengths = lengths;
    this.speeds = speeds;
    this.quick = quick;
    this.measured = measured;
  }

  /** What the athlete's run-ups say, with the level where they are silent. */
  static RunUpBook of(Profile profile) {
    double quick = NominalFlights.speedOf(profile.athlete().level());
    Belief lengths = new Belief(COUNT);
    lengths.setMean(A, 2.12 * (0.5 + quick / 2));
    lengths.setMean(B, 0.97);
    lengths.setCovariance(A, A, 0.15 * 0.15);
    lengths.setCovariance(B, B, 0.20 * 0.20);
    Belief speeds = new Belief(COUNT);
    speeds.setCovariance(A, A, 0.08 * 0.08);
    for (int s = 1; s <= Athlete.MAX_STEPS; s++) {
      lengths.setCovariance(RUNG + s, RUNG + s, 0.02 * 0.02 * s);
      speeds.setCovariance(RUNG + s, RUNG + s, 0.03 * 0.03);
    }
    int[] measured = new int[Athlete.MAX_STEPS + 1];
    for (MeasuredRunUp r : profile.runUps()) {
      int s = r.steps();
      double noise = runToRunSd(s);
      lengths.measure(lengthTraits(s), r.length_m(), noise * noise);
      if (r.speed_mps() != null) {
        speeds.measure(speedTraits(s), r.speed_mps() / (quick * NominalFlights.entrySpeed(s)) - 1, 0.03 * 0.03);
      }
      measured[s]++;
    }
    return new RunUpBook(lengths, speeds, quick, measured);
  }

  /** How much the same run-up varies from run to run [m] (judgement). */
  static double runToRunSd(int steps) {
    return 0.06 + 0.012 * steps;
  }

  private static double[] lengthTraits(int steps) {
    double[] h = new double[COUNT];
    h[A] = steps;
    h[B] = -(1 - FastMath.pow(RATIO, steps)) / (1 - RATIO);
    h[RUNG + steps] = 1;
    return h;
  }

  private static double[] speedTraits(int steps) {
    double[] h = new double[COUNT];
    h[A] = 1;
    h[RUNG + steps] = 1;
    return h;
  }

  /** The run-up for these steps, 0 to 26; all zero from standing. */
  RunUp runUp(int steps) {
    return new RunUp(length(steps), speed(steps), measured[steps]);
  }

  /** Start mark to first contact [m], how well the mean is known. */
  Estimate length(int steps) {
    double[] h = lengthTraits(steps);
    return steps == 0 ? NONE : Estimate.normal(lengths.meanOf(h), Math.sqrt(lengths.varianceOf(h)));
  }

  /** Speed into the first contact [m/s]. */
  Estimate speed(int steps) {
    double nominal = quick * NominalFlights.entrySpeed(steps);
    double[] h = speedTraits(steps);
    return steps == 0 ? NONE : Estimate.normal(nominal * (1 + speeds.meanOf(h)), nominal * Math.sqrt(speeds.varianceOf(h)));
  }

  /** How many run-ups of this many steps were measured. */
  int measured(int steps) {
    return measured[steps];
  }
}
