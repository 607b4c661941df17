package boundwright.clip.contact;

import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * The errors of a body point's samples: white, plus as much again that lasts over frames. {@link #whitened} turns samples and
 * the columns of a model into ones whose errors are independent with a standard deviation of 1 (generalised least squares).
 */
final class LastingErrors {
  /** The lasting part fades to 1/e in this time [s] (judgement, see docs/clip-accuracy.md for how much hangs on it). */
  private static final double LASTING_S = 0.04;
  /** No sample is trusted more than this, standard deviation [m]: neither foot nor ground is that stiff (judgement). */
  private static final double LEAST_SIGMA_M = 0.005;

  private final double[][] lower;

  /**
   * The errors of samples at these times.
   *
   * @param t times [s]
   * @param sigma standard deviation of either part of each sample [m]; at least 5 mm is taken
   */
  LastingErrors(double[] t, double[] sigma) {
    double[] s = Arrays.stream(sigma).map(v -> Math.max(v, LEAST_SIGMA_M)).toArray();
    double[][] c = new double[t.length][t.length];
    for (int i = 0; i < t.length; i++) {
      for (int j = 0; j < t.length; j++) {
        c[i][j] = (i == j ? s[i] * s[i] : 0) + s[i] * s[j] * Math.exp(-Math.abs(t[i] - t[j]) / LASTING_S);
      }
    }
    lower = new CholeskyDecomposition(new Array2DRowRealMatrix(c, false), 1e-9, 0).getL().getData();
  }

  /** The samples, or a model's column of them, with independent errors of standard deviation 1. */
  double[] whitened(double[] u) {
    double[] out = new double[u.length];
    for (int i = 0; i < u.length; i++) {
      double sum = u[i];
      for (int j = 0; j < i; j++) {
        sum -= lower[i][j] * out[j];
      }
      out[i] = sum / lower[i][i];
    }
    return out;
  }
}
