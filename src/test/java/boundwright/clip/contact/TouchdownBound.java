package boundwright.clip.contact;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.truth.Noise;
import boundwright.quantity.Rows;
import java.util.Arrays;
import java.util.Locale;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;

/**
 * How exactly a touchdown can be told from the made-up finder's points at all: the Cramér-Rao bound of the time at which a
 * foot point stops, with its standing place, creep and the course of its swing unknown within the priors that the reading
 * has (worked; the bound is the inverse of Fisher's information, any textbook of estimation). Own output.
 */
final class TouchdownBound {
  /** Half of a foot point's error is white, half lasts [m], see {@link Noise}. */
  private static final double SIGMA_M = Noise.metres(BodyPoint.LEFT_TOE) / Math.sqrt(2);
  /** Speed of the landing point forward and up [m/s]: the middle of the made-up athletes. */
  private static final double[] SPEED = {1.0, -1.9};
  /**
   * Share of one point's error that is left in the stiff foot's heel or toe: forward the mean of three points; up the turn adds
   * its own, 1/3 + 0.47 (lever squared over the sum of the three points' squares: worked).
   */
  private static final double[] LEFT = {Math.sqrt(1 / 3.0), Math.sqrt(1 / 3.0 + 0.47)};
  private static final int COLUMNS = 5;

  private TouchdownBound() {}

  /** The bound [s]. */
  static double bound(double fps) {
    double information = 1 / (CornerFit.GUESS_SD_S * CornerFit.GUESS_SD_S);
    for (int direction = 0; direction < 2; direction++) {
      information += information(times(fps), direction);
    }
    return 1 / Math.sqrt(information);
  }

  /** Frames of the window that the reading looks at, from the touchdown [s]. */
  private static double[] times(double fps) {
    double[] out = new double[(int) Math.floor((Landings.BEFORE_S + Landings.AFTER_S) * fps)];
    Arrays.setAll(out, i -> -Landings.BEFORE_S + (i + 0.3) / fps);
    return out;
  }

  /** What one direction tells of the time, less what its unknowns take away [1/s2]. */
  private static double information(double[] t, int direction) {
    double[] sigma = new double[t.length];
    Arrays.fill(sigma, LEFT[direction] * SIGMA_M);
    LastingErrors errors = new LastingErrors(t, sigma);
    double[][] column = Arrays.stream(CornerFit.columns(t, 0)).map(errors::whitened).toArray(double[][]::new);
    double[] late = errors.whitened(Arrays.stream(t).map(s -> s < 0 ? -SPEED[direction] : 0).toArray());
    double[][] normal = new double[COLUMNS][COLUMNS];
    for (int a = 0; a < COLUMNS; a++) {
      for (int b = 0; b < COLUMNS; b++) {
        normal[a][b] = Rows.dot(column[a], column[b]);
      }
      // the standing place is free; speed, acceleration and jerk stand in pairs, forward and up
      double sd = a == 0 ? Double.POSITIVE_INFINITY : a == 1 ? Landings.CREEP : Landings.LEAST[2 * (a - 2) + direction];
      normal[a][a] += 1 / (sd * sd);
    }
    double[] shared = Arrays.stream(column).mapToDouble(c -> Rows.dot(c, late)).toArray();
    CholeskyDecomposition solved = new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0);
    return Rows.dot(late, late) - Rows.dot(shared, solved.getSolver().solve(new ArrayRealVector(shared, false)).toArray());
  }

  public static void main(String[] args) {
    for (double fps : new double[] {240, 120, 60}) {
      double bound = bound(fps);
      System.out.printf(
          Locale.ROOT, "touchdown at %.0f frames a second, from the 95 ms round it: about %.1f ms; at 6.6 m/s that is %.1f cm%n", fps, 1000 * bound,
          660 * bound);
    }
  }
}
