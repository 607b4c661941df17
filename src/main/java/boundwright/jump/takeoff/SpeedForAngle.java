package boundwright.jump.takeoff;

import boundwright.inference.LinearBelief;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * An athlete's own trade of speed for angle: take-off speed as a straight line of the take-off angle, from their measured take-offs
 * whatever the run-up (Linthorne, Guzman and Bridgett 2005; abstract read: the speed falls as the angle rises). Bayesian with a wide
 * first guess of no slope either way, so that few take-offs give a wide answer. Immutable.
 */
public final class SpeedForAngle {
  /** First guess of the slope's standard deviation [m/s a degree], and of the noise [m/s] with its worth in take-offs (judgement). */
  private static final double SLOPE_SD = 0.5;
  private static final double NOISE = 0.15;
  private static final double NOISE_WORTH = 3;

  private final LinearBelief belief;
  private final double middle_deg;
  private final double least_deg;
  private final double most_deg;
  private final double sd_deg;
  private final int takeOffs;

  private SpeedForAngle(LinearBelief belief, double middle_deg, double least_deg, double most_deg, double sd_deg, int takeOffs) {
    this.belief = belief;
    this.middle_deg = middle_deg;
    this.least_deg = least_deg;
    this.most_deg = most_deg;
    this.sd_deg = sd_deg;
    this.takeOffs = takeOffs;
  }

  /**
   * Learns the line.
   *
   * @param all at least one
   */
  public static SpeedForAngle of(List<TakeOff> all) {
    if (all.isEmpty()) {
      throw new RefusedException("No take-off was measured. Measure some from a clip, or enter their speeds.");
    }
    double middle = all.stream().mapToDouble(TakeOff::angle_deg).average().orElseThrow();
    double speed = all.stream().mapToDouble(TakeOff::speed).average().orElseThrow();
    LinearBelief b = new LinearBelief(new double[] {speed, 0}, new double[] {3, SLOPE_SD}, NOISE, NOISE_WORTH);
    double ss = 0;
    for (TakeOff t : all) {
      double off = t.angle_deg() - middle;
      b.tell(new double[] {1, off}, t.speed(), 1);
      ss += off * off;
    }
    return new SpeedForAngle(
        b,
        middle,
        all.stream().mapToDouble(TakeOff::angle_deg).min().orElseThrow(),
        all.stream().mapToDouble(TakeOff::angle_deg).max().orElseThrow(),
        all.size() < 2 ? 0 : Math.sqrt(ss / (all.size() - 1)),
        all.size());
  }

  /** Take-offs it was learned from. */
  public int takeOffs() {
    return takeOffs;
  }

  /** Usual take-off angle [degrees]. */
  public double middle_deg() {
    return middle_deg;
  }

  /** Flattest take-off shown [degrees]. */
  public double least_deg() {
    return least_deg;
  }

  /** Steepest take-off shown [degrees]. */
  public double most_deg() {
    return most_deg;
  }

  /** Spread of the angles [degrees]. */
  public double sd_deg() {
    return sd_deg;
  }

  /** Speed won with one degree more [m/s], negative is speed lost. */
  public Estimate slope() {
    return belief.estimate(new double[] {0, 1});
  }

  /** Take-off speed at an angle [m/s]: how well the line is known. */
  public Estimate at(double angle_deg) {
    return belief.estimate(new double[] {1, angle_deg - middle_deg});
  }

  /** One line that is believed possible. */
  Line draw(RandomGenerator random) {
    double[] d = belief.draw(random);
    return new Line(d[0] - d[1] * middle_deg, d[1]);
  }

  /**
   * A line of speed by angle.
   *
   * @param speed at angle 0 [m/s]
   * @param slope [m/s a degree]
   */
  record Line(double speed, double slope) {
    double at(double angle_deg) {
      return speed + slope * angle_deg;
    }
  }
}
