package boundwright.clip.body;

import boundwright.flight.Projectile;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;

/**
 * The centre of mass in the air: x = x0 + vx t, y = y0 + vy t - g t^2/2 with g held at 9.81 m/s2, least squares over the
 * frames of one flight, times counted from {@link #origin}.
 *
 * @param origin time from which t counts [s]
 * @param x0 place forward at the origin [m]
 * @param vx speed forward [m/s]
 * @param y0 height at the origin [m]
 * @param vy speed upward at the origin [m/s]
 * @param spread root mean square distance of the samples from the curve [m]
 * @param freeG downward acceleration if it is left free [m/s2]: with a true scale and true times it is g
 */
public record FreeFlight(double origin, double x0, double vx, double y0, double vy, double spread, double freeG) {

  /**
   * Fits at least four samples.
   *
   * @param t times [s]
   * @param x forward [m]
   * @param y up [m]
   */
  public static FreeFlight fit(double[] t, double[] x, double[] y) {
    if (t.length < 4) {
      throw new IllegalArgumentException("a flight needs 4 samples, there are " + t.length);
    }
    double origin = (t[0] + t[t.length - 1]) / 2;
    int n = t.length;
    double[][] line = new double[n][2];
    double[][] bow = new double[n][3];
    double[] lifted = new double[n];
    for (int i = 0; i < n; i++) {
      double s = t[i] - origin;
      line[i] = new double[] {1, s};
      bow[i] = new double[] {1, s, -0.5 * s * s};
      lifted[i] = y[i] + 0.5 * Projectile.G * s * s;
    }
    double[] fx = solve(line, x);
    double[] fy = solve(line, lifted);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double s = t[i] - origin;
      sum += sq(x[i] - fx[0] - fx[1] * s) + sq(lifted[i] - fy[0] - fy[1] * s);
    }
    return new FreeFlight(origin, fx[0], fx[1], fy[0], fy[1], Math.sqrt(sum / (2 * n)), solve(bow, y)[2]);
  }

  private static double[] solve(double[][] rows, double[] right) {
    return new QRDecomposition(new Array2DRowRealMatrix(rows)).getSolver().solve(new ArrayRealVector(right)).toArray();
  }

  private static double sq(double v) {
    return v * v;
  }

  /** Upward speed at a time [m/s]. */
  public double vyAt(double time) {
    return vy - Projectile.G * (time - origin);
  }

  /** Height at a time [m]. */
  public double yAt(double time) {
    double s = time - origin;
    return y0 + vy * s - 0.5 * Projectile.G * s * s;
  }

  /** Forward place at a time [m]. */
  public double xAt(double time) {
    return x0 + vx * (time - origin);
  }
}
