package boundwright.flight;

import boundwright.quantity.RefusedException;
import java.util.Arrays;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.util.FastMath;

/**
 * Speed of an all-out start against time: {@code v(t) = vmax (1 - exp(-t/tau))},
 * {@code x(t) = vmax (t - tau (1 - exp(-t/tau)))} (Furusawa, Hill and Parkinson 1927; read). The curve makes the first
 * step far too short (0.30 m, measured .82-1.37 m), so it serves for speeds, never for run-up lengths.
 *
 * @param vmax speed it tends to [m/s], above 0
 * @param tau time constant [s], above 0
 */
public record SprintCurve(double vmax, double tau) {
  /** Refuses values that are no sprint. */
  public SprintCurve {
    if (!(vmax > 0 && vmax < 15 && tau > 0 && tau < 10)) {
      throw new RefusedException(
          "A sprint with vmax " + vmax + " m/s and tau " + tau + " s is out of range: 0 to 15 m/s and 0 to 10 s. Check the splits.");
    }
  }

  /** Speed at {@code t} seconds [m/s]. */
  public double speed(double t) {
    return vmax * -FastMath.expm1(-t / tau);
  }

  /** Distance at {@code t} seconds [m]. */
  public double distance(double t) {
    return vmax * (t + tau * FastMath.expm1(-t / tau));
  }

  /** Time at which {@code x} metres are reached [s]; by Newton's method on a convex curve, so it cannot miss. */
  public double time(double x) {
    double t = x / vmax + tau;
    for (int i = 0; i < 60; i++) {
      double step = (distance(t) - x) / Math.max(speed(t), 1e-9);
      t -= step;
      if (Math.abs(step) < 1e-12) {
        break;
      }
    }
    return t;
  }

  /** Speed at {@code x} metres [m/s]. */
  public double speedAt(double x) {
    return speed(time(x));
  }

  /**
   * Fits the curve to splits by least squares in distance (Gauss-Newton from vmax 10, tau 1.2).
   *
   * @param times when each distance was reached, from the first movement [s]; reaction time taken off by the caller
   * @param distances [m], same length, at least two
   * @throws RefusedException if the splits do not describe a start
   */
  public static SprintCurve fit(double[] times, double[] distances) {
    if (times.length != distances.length || times.length < 2) {
      throw new RefusedException(
          "A sprint needs at least two splits with a time and a distance each; got " + times.length + " times and "
              + distances.length + " distances.");
    }
    double v = 10;
    double tau = 1.2;
    for (int i = 0; i < 100; i++) {
      double[][] normal = new double[2][2];
      double[] right = new double[2];
      for (int k = 0; k < times.length; k++) {
        double e = FastMath.exp(-times[k] / tau);
        double residual = distances[k] - v * (times[k] - tau * (1 - e));
        double[] slope = {times[k] - tau * (1 - e), -v * (1 - e - times[k] / tau * e)};
        for (int a = 0; a < 2; a++) {
          right[a] += slope[a] * residual;
          for (int b = 0; b < 2; b++) {
            normal[a][b] += slope[a] * slope[b];
          }
        }
      }
      double det = normal[0][0] * normal[1][1] - normal[0][1] * normal[1][0];
      if (!(Math.abs(det) > 1e-12)) {
        break;
      }
      double[] step =
          MatrixUtils.inverse(MatrixUtils.createRealMatrix(normal)).operate(right);
      v += step[0];
      tau += step[1];
      if (!(v > 0 && v < 15 && tau > 0.05 && tau < 10)) {
        throw new RefusedException("No sprint fits the splits " + Arrays.toString(times) + " s at "
            + Arrays.toString(distances) + " m. Times must grow and start from the first movement.");
      }
      if (Math.abs(step[0]) + Math.abs(step[1]) < 1e-12) {
        break;
      }
    }
    return new SprintCurve(v, tau);
  }
}
