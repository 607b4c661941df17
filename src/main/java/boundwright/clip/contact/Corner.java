package boundwright.clip.contact;

import boundwright.quantity.Rows;
import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * When a foot point leaves the ground, from the samples themselves, never from smoothed ones: on the ground a foot point stands still,
 * in the air it moves along a low-order curve that leaves the standing place. Both directions share the time. What the
 * samples say is laid over a grid of times, so that other knowledge can be added before a time is read off.
 *
 * <p>u = c + a s^2/2 + j s^3/6 for s = t - t0 > 0, because a foot leaves from rest; before that it may creep. The
 * coefficients have normal priors (see {@link Alike}) and are integrated out, not set to their best: a time that needs finely
 * tuned ones pays for it.
 */
final class Corner {
  /** The steps of the grid of times [s]. */
  static final double GRID_S = 0.001;
  /**
   * Either share of a sample's error is so many times what its path's residuals show, because a smoothed path follows some of
   * the lasting error (own output on made-up clips).
   */
  private static final double SMOOTHED_AWAY = 1.2;
  /** Fewest samples that can tell a time. */
  private static final int FEWEST = 5;

  private final double from;
  private final Axis[][] axis;

  private Corner(double from, Axis[][] axis) {
    this.from = from;
    this.axis = axis;
  }

  /** Normal equations of one direction at one time, without priors: matrix, right side, square of the right side. */
  @SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
  private record Axis(double[][] normal, double[] pull, double square, double base) {}

  /**
   * What is seen round an event.
   *
   * @param path samples of the point
   * @param creep how fast it may still move on the ground's side, standard deviation [m/s]
   * @param guess the middle of the times considered [s]
   * @param reach how far from the guess the event may lie [s]
   * @param before samples are taken from this long before the guess [s]
   * @param after to this long after it [s]
   * @return null where too little was seen
   */
  static @Nullable Corner of(
      FootPath path, double creep, double guess, double reach, double before, double after) {
    int[] use = path.between(guess - before, guess + after);
    if (use.length < FEWEST) {
      return null;
    }
    double[] t = FootPath.at(use, path.times());
    // a point by itself errs alike in both directions
    LastingErrors errors = path.forwardErrors(use, SMOOTHED_AWAY);
    double[][] u = {FootPath.at(use, path.x()), FootPath.at(use, path.y())};
    double[] base = {u[0][t.length / 2], u[1][t.length / 2]};
    double[][] right = new double[2][];
    for (int d = 0; d < 2; d++) {
      double from = base[d];
      right[d] = errors.whitened(Arrays.stream(u[d]).map(v -> v - from).toArray());
    }
    int n = (int) Math.round(2 * reach / GRID_S) + 1;
    Axis[][] out = new Axis[n][2];
    for (int k = 0; k < n; k++) {
      double[][] column = columns(t, guess - reach + k * GRID_S, errors);
      double[][] normal = new double[column.length][column.length];
      for (int a = 0; a < column.length; a++) {
        for (int b = 0; b < column.length; b++) {
          normal[a][b] = Rows.dot(column[a], column[b]) + (a == 1 && b == 1 ? 1 / (creep * creep) : 0);
        }
      }
      for (int d = 0; d < 2; d++) {
        double[] seen = right[d];
        double[] pull = Arrays.stream(column).mapToDouble(c -> Rows.dot(c, seen)).toArray();
        out[k][d] = new Axis(normal, pull, Rows.dot(seen, seen), base[d]);
      }
    }
    return new Corner(guess - reach, out);
  }

  /** Standing place, creep on the ground's side, then the curve on the flight's side; whitened. */
  private static double[][] columns(double[] t, double t0, LastingErrors errors) {
    double[][] out = new double[4][t.length];
    for (int i = 0; i < t.length; i++) {
      double s = t[i] - t0;
      double air = Math.max(0, s);
      out[0][i] = 1;
      out[1][i] = s - air;
      out[2][i] = air * air / 2;
      out[3][i] = air * air * air / 6;
    }
    return Arrays.stream(out).map(errors::whitened).toArray(double[][]::new);
  }

  /** How many times are considered. */
  int size() {
    return axis.length;
  }

  /** The time at a place of the grid [s]. */
  double time(int k) {
    return from + k * GRID_S;
  }

  /**
   * What holds if the event was at one time of the grid.
   *
   * @param cost minus the log-likelihood, up to a constant
   * @param place where the point stands, forward [m]
   * @param mean of the coefficients, forward and up in turn, lowest order first
   * @param variance of them
   */
  @SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
  record At(double cost, double place, double[] mean, double[] variance) {}

  /** The same for given normal priors of the coefficients, forward and up in turn, lowest order first. */
  At at(int k, double[] mean, double[] sd) {
    double[] outMean = new double[mean.length];
    double[] outVariance = new double[mean.length];
    double cost = 0;
    double place = 0;
    for (int d = 0; d < 2; d++) {
      Axis one = axis[k][d];
      int m = one.pull.length;
      double[][] a = new double[m][];
      double[] right = one.pull.clone();
      double square = one.square;
      for (int i = 0; i < m; i++) {
        a[i] = one.normal[i].clone();
        if (i >= 2) {
          int c = 2 * (i - 2) + d;
          double w = 1 / (sd[c] * sd[c]);
          a[i][i] += w;
          right[i] += w * mean[c];
          square += w * mean[c] * mean[c];
          cost += Math.log(sd[c]);
        }
      }
      CholeskyDecomposition solved = new CholeskyDecomposition(new Array2DRowRealMatrix(a, false), 1e-6, 0);
      double[][] inverse = solved.getSolver().getInverse().getData();
      double[] value = Arrays.stream(inverse).mapToDouble(row -> Rows.dot(row, right)).toArray();
      cost += 0.5 * (square - Rows.dot(right, value)) + 0.5 * Math.log(solved.getDeterminant());
      if (d == 0) {
        place = value[0] + one.base;
      }
      for (int i = 2; i < m; i++) {
        outMean[2 * (i - 2) + d] = value[i];
        outVariance[2 * (i - 2) + d] = inverse[i][i];
      }
    }
    return new At(cost, place, outMean, outVariance);
  }
}
