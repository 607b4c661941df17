package boundwright.clip;

import java.util.Locale;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * How exactly a touchdown can be told from the made-up finder's points at all: the Cramér-Rao bound of the time at which a
 * foot point stops, with its standing place, creep and the course of its swing unknown within the priors that the reading
 * has (worked; the bound is the inverse of Fisher's information, any textbook of estimation). Own output.
 */
final class TouchdownBound {
  /** Half of a foot point's error is white, half lasts [m], see {@code Noise}. */
  private static final double SIGMA_M = 0.018 / Math.sqrt(2);
  private static final double LASTING_S = 0.04;
  private static final double BEFORE_S = 0.045;
  private static final double AFTER_S = 0.05;
  /** Speed of the landing point forward and up [m/s]: the middle of the made-up athletes. */
  private static final double[] SPEED = {1.0, -1.9};
  /**
   * Share of one point's error that is left in the stiff foot's heel or toe: forward the mean of three points; up the turn adds
   * its own, 1/3 + 0.47 (lever squared over the sum of the three points' squares: worked).
   */
  private static final double[] LEFT = {Math.sqrt(1 / 3.0), Math.sqrt(1 / 3.0 + 0.47)};
  /** Standard deviations: creep [m/s]; speed, acceleration, jerk of the swing forward, then up, as pooled over a rep. */
  private static final double[][] PRIOR = {{0.1, 0.9, 18, 600}, {0.1, 0.45, 18, 600}};
  private static final double GUESS_SD_S = 0.012;

  private TouchdownBound() {}

  /** The bound [s]. */
  static double bound(double fps) {
    int n = (int) Math.floor((BEFORE_S + AFTER_S) * fps);
    double[] t = new double[n];
    for (int i = 0; i < n; i++) {
      t[i] = -BEFORE_S + (i + 0.3) / fps;
    }
    double information = 1 / (GUESS_SD_S * GUESS_SD_S);
    for (int d = 0; d < 2; d++) {
      double v = Math.pow(LEFT[d] * SIGMA_M, 2);
      double[][] c = new double[n][n];
      double[][] x = new double[n][5];
      double[] late = new double[n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          c[i][j] = (i == j ? v : 0) + v * Math.exp(-Math.abs(t[i] - t[j]) / LASTING_S);
        }
        double air = Math.min(0, t[i]);
        x[i] = new double[] {1, t[i] - air, air, air * air / 2, air * air * air / 6};
        late[i] = air < 0 ? -SPEED[d] : 0;
      }
      RealMatrix inverse = new CholeskyDecomposition(new Array2DRowRealMatrix(c, false)).getSolver().getInverse();
      RealMatrix columns = new Array2DRowRealMatrix(x, false);
      RealMatrix normal = columns.transpose().multiply(inverse).multiply(columns);
      for (int k = 1; k < 5; k++) {
        normal.addToEntry(k, k, 1 / (PRIOR[d][k - 1] * PRIOR[d][k - 1]));
      }
      double[] seen = inverse.operate(late);
      double[] shared = columns.transpose().operate(seen);
      double[] lost = new LUDecomposition(normal).getSolver().solve(MatrixUtils.createRealVector(shared)).toArray();
      for (int i = 0; i < n; i++) {
        information += late[i] * seen[i];
      }
      for (int k = 0; k < 5; k++) {
        information -= shared[k] * lost[k];
      }
    }
    return 1 / Math.sqrt(information);
  }

  public static void main(String[] args) {
    for (double fps : new double[] {240, 120, 60}) {
      System.out.printf(
          Locale.ROOT, "touchdown at %.0f frames a second, from the 95 ms round it: about %.1f ms; at 6.6 m/s that is %.1f cm%n", fps, 1000 * bound(fps),
          660 * bound(fps));
    }
  }
}
