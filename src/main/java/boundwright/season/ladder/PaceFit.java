package boundwright.season.ladder;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;

/**
 * The most likely pace of a squad for one shape and one spread of athletes, by Newton's method, and a normal distribution about it
 * (Laplace). The logarithm of the mean sessions of a stay is a sum of effects (squad, approach, family, athlete), each normal about 0
 * beforehand; the posterior is log-concave, see {@link GammaStay}, so there is one best fit and a step that is halved until it helps
 * reaches it.
 */
final class PaceFit {
  private static final int MOST_STEPS = 60;
  private static final double NEAR = 1e-9;

  /**
   * A stay as the fit sees it.
   *
   * @param effects numbers of its effects
   * @param needed what it tells
   */
  @SuppressWarnings("ArrayRecordComponent") // on its way from the squad to the fit, never compared
  record Datum(int[] effects, SessionsNeeded needed) {}

  private final double shape;
  private final double prior;
  private final double[] at;
  private final RealMatrix covariance;
  private final double evidence;

  /**
   * Fits.
   *
   * @param data stays
   * @param variances of the effects beforehand
   * @param prior logarithm of the mean sessions when all effects are 0
   */
  PaceFit(List<Datum> data, double[] variances, double prior, double shape) {
    this.shape = shape;
    this.prior = prior;
    int n = variances.length;
    double[] x = new double[n];
    double value = value(data, variances, x);
    double[][] h = new double[n][n];
    double[] slope = new double[n];
    CholeskyDecomposition factor = derive(data, variances, x, slope, h);
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] step = factor.getSolver().solve(new ArrayRealVector(slope, false)).toArray();
      double gain = 0;
      for (int j = 0; j < n; j++) {
        gain += step[j] * slope[j];
      }
      if (gain < NEAR) {
        break;
      }
      double[] tried = x;
      double next = Double.NEGATIVE_INFINITY;
      for (double length = 1; length > 1e-6 && !(next > value); length /= 2) {
        tried = moved(x, step, length);
        next = value(data, variances, tried);
      }
      if (!(next > value)) {
        break;
      }
      x = tried;
      value = next;
      factor = derive(data, variances, x, slope, h);
    }
    at = x;
    DecompositionSolver solver = factor.getSolver();
    covariance = solver.getInverse();
    double half = 0;
    for (int j = 0; j < n; j++) {
      half -= Math.log(factor.getL().getEntry(j, j)) + 0.5 * Math.log(variances[j]);
    }
    evidence = value + half;
  }

  private static double[] moved(double[] x, double[] step, double length) {
    double[] out = x.clone();
    for (int j = 0; j < out.length; j++) {
      out[j] += length * step[j];
    }
    return out;
  }

  private double eta(int[] effects, double[] x) {
    double eta = prior;
    for (int e : effects) {
      eta += x[e];
    }
    return eta;
  }

  private double value(List<Datum> data, double[] variances, double[] x) {
    double sum = 0;
    for (int j = 0; j < x.length; j++) {
      sum -= 0.5 * x[j] * x[j] / variances[j];
    }
    for (Datum d : data) {
      sum += GammaStay.told(d.needed(), shape, eta(d.effects(), x))[0];
    }
    return sum;
  }

  /** Fills in the slope, and factors the curvature turned positive. */
  private CholeskyDecomposition derive(List<Datum> data, double[] variances, double[] x, double[] slope, double[][] h) {
    for (int j = 0; j < x.length; j++) {
      Arrays.fill(h[j], 0);
      h[j][j] = 1 / variances[j];
      slope[j] = -x[j] / variances[j];
    }
    for (Datum d : data) {
      double[] t = GammaStay.told(d.needed(), shape, eta(d.effects(), x));
      for (int a : d.effects()) {
        slope[a] += t[1];
        for (int b : d.effects()) {
          h[a][b] -= t[2];
        }
      }
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(h, true), 1e-9, 0);
  }

  double shape() {
    return shape;
  }

  /** Logarithm of the chance of the data, but for a constant that all fits to the same data share. */
  double evidence() {
    return evidence;
  }

  /** Mean and variance of the logarithm of the mean sessions for a sum of effects. */
  double[] of(int[] effects) {
    double v = 0;
    for (int a : effects) {
      for (int b : effects) {
        v += covariance.getEntry(a, b);
      }
    }
    return new double[] {eta(effects, at), v};
  }

  /** The same as if one stay had not been told: its slope and curvature are taken back (exact for a quadratic). */
  double[] without(Datum d) {
    double[] mv = of(d.effects());
    double[] t = GammaStay.told(d.needed(), shape, mv[0]);
    double v = mv[1] / Math.max(1e-6, 1 + t[2] * mv[1]);
    return new double[] {mv[0] - v * t[1], v};
  }
}
