package boundwright.clip.contact;

import boundwright.quantity.Rows;
import java.util.Arrays;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * The time at which a foot point stops, from the samples themselves, never from smoothed ones: on the ground
 * the point stands still, in the air it moves along a low-order curve that leaves the standing place. Both directions
 * share the time. The sum of squares is laid over a fine grid of times; its posterior mean is the time, its spread the
 * error.
 *
 * <p>u = c + b s + d s^2/2 + j s^3/6 for s = t - t0 < 0. The coefficients carry normal priors wide enough for any athlete, else
 * they trade against the time (judgement). First over a wide window round the guess, then over one that sits right.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
final class CornerFit {
  /** The steps of the grid of times [s]. */
  private static final double GRID_S = 0.0005;
  /** How far from the guess the time may lie, first and second round [s]. */
  private static final double REACH_S = 0.032;
  private static final double REACH_AGAIN_S = 0.014;
  /** Standard deviation of the guess [s] (own output: about 8 ms at 240 and 10 ms at 60 frames a second). */
  static final double GUESS_SD_S = 0.012;
  /**
   * A sample's standard deviation is so many times what its path's residuals show, because a smoothed path follows some of
   * the lasting error (own output on made-up clips).
   */
  private static final double SMOOTHED_AWAY = 2;
  /** Fewest samples that can tell a time. */
  private static final int FEWEST = 5;

  private final FootPath path;
  private final double creep;

  /**
   * A point that tells the time.
   *
   * @param path its samples
   * @param creep how fast it may still move on the ground's side of the event, standard deviation [m/s]
   */
  CornerFit(FootPath path, double creep) {
    this.path = path;
    this.creep = creep;
  }

  /**
   * A normal prior of one coefficient.
   *
   * @param mean expected
   * @param sd standard deviation
   */
  record Prior(double mean, double sd) {}

  /** Priors of speed, acceleration and jerk at a landing, forward and up [m/s, m/s2, m/s3]. */
  record LandPriors(Prior vx, Prior vy, Prior ax, Prior ay, Prior jx, Prior jy) {
    private Prior[] forward() {
      return new Prior[] {vx, ax, jx};
    }

    private Prior[] up() {
      return new Prior[] {vy, ay, jy};
    }
  }

  /** When the point lands, or null where too little was seen. Times in seconds. */
  @Nullable EventFit landing(double guess, double before, double after, LandPriors p) {
    EventFit first = over(guess, guess, REACH_S, before + 0.02, after + 0.02, p);
    return first == null ? null : over(guess, first.time(), REACH_AGAIN_S, before, after, p);
  }

  private @Nullable EventFit over(double guess, double centre, double reach, double before, double after, LandPriors p) {
    Window w = window(centre - before, centre + after);
    if (w == null) {
      return null;
    }
    int n = (int) Math.round(2 * reach / GRID_S) + 1;
    double[] cost = new double[n];
    double least = Double.POSITIVE_INFINITY;
    Prior[] forward = p.forward();
    Prior[] up = p.up();
    for (int k = 0; k < n; k++) {
      double t0 = centre - reach + k * GRID_S;
      double[][] out = columns(w.t, t0);
      double off = (t0 - guess) / GUESS_SD_S;
      cost[k] = fit(whitened(out, w.forward), w.x, forward).cost + fit(whitened(out, w.up), w.y, up).cost + 0.5 * off * off;
      least = Math.min(least, cost[k]);
    }
    double sum = 0;
    double one = 0;
    double two = 0;
    for (int k = 0; k < n; k++) {
      double chance = Math.exp(least - cost[k]);
      double s = k * GRID_S - reach;
      sum += chance;
      one += chance * s;
      two += chance * s * s;
    }
    double mean = one / sum;
    return new EventFit(centre + mean, Math.sqrt(Math.max(GRID_S * GRID_S / 12, two / sum - mean * mean)));
  }

  /** Speed, acceleration and jerk (forward, up, in turn) with which the point lands at a known time, or null. */
  double @Nullable [] land(double t0, double before, double after, LandPriors p) {
    Window w = window(t0 - before, t0 + after);
    if (w == null) {
      return null;
    }
    double[][] out = columns(w.t, t0);
    double[] kx = fit(whitened(out, w.forward), w.x, p.forward()).k;
    double[] ky = fit(whitened(out, w.up), w.y, p.up()).k;
    return new double[] {kx[2], ky[2], kx[3], ky[3], kx[4], ky[4]};
  }

  /**
   * Samples round an event.
   *
   * @param t times [s]
   * @param forward errors of the samples in this direction
   * @param up the same up
   * @param x samples forward from the middle one, whitened
   * @param y the same up
   */
  private record Window(double[] t, LastingErrors forward, LastingErrors up, double[] x, double[] y) {}

  /** The model at some times: standing place, creep on the ground's side, then the curve on the flight's side. */
  static double[][] columns(double[] t, double t0) {
    double[][] out = new double[5][t.length];
    for (int i = 0; i < t.length; i++) {
      double ground = Math.max(0, t[i] - t0);
      double air = t[i] - t0 - ground;
      out[0][i] = 1;
      out[1][i] = ground;
      out[2][i] = air;
      out[3][i] = air * air / 2;
      out[4][i] = air * air * air / 6;
    }
    return out;
  }

  private static double[][] whitened(double[][] columns, LastingErrors by) {
    return Arrays.stream(columns).map(by::whitened).toArray(double[][]::new);
  }

  private @Nullable Window window(double from, double to) {
    int[] use = path.between(from, to);
    if (use.length < FEWEST) {
      return null;
    }
    LastingErrors forward = path.forwardErrors(use, SMOOTHED_AWAY);
    LastingErrors up = path.upErrors(use, SMOOTHED_AWAY);
    return new Window(
        FootPath.at(use, path.times()), forward, up, forward.whitened(fromMiddle(FootPath.at(use, path.x()))),
        up.whitened(fromMiddle(FootPath.at(use, path.y()))));
  }

  private static double[] fromMiddle(double[] u) {
    double base = u[u.length / 2];
    return Arrays.stream(u).map(v -> v - base).toArray();
  }

  private record Fit(double[] k, double cost) {}

  /** Least squares of the whitened samples with the priors as further rows; the standing place has none. */
  private Fit fit(double[][] column, double[] right, Prior[] priors) {
    int m = column.length;
    double[] mean = new double[m];
    double[] weight = new double[m];
    weight[0] = 1;
    weight[1] = 1 / (creep * creep);
    for (int a = 2; a < m; a++) {
      mean[a] = priors[a - 2].mean;
      weight[a] = 1 / (priors[a - 2].sd * priors[a - 2].sd);
    }
    double[][] normal = new double[m][m];
    double[] pull = new double[m];
    for (int a = 0; a < m; a++) {
      pull[a] = mean[a] * weight[a] + Rows.dot(column[a], right);
      for (int b = 0; b < m; b++) {
        normal[a][b] = Rows.dot(column[a], column[b]) + (a == b ? weight[a] : 0);
      }
    }
    CholeskyDecomposition solved = new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0);
    double[] k = solved.getSolver().solve(new ArrayRealVector(pull, false)).toArray();
    double cost = 0;
    for (int i = 0; i < right.length; i++) {
      double e = right[i];
      for (int a = 0; a < m; a++) {
        e -= column[a][i] * k[a];
      }
      cost += 0.5 * e * e;
    }
    for (int a = 1; a < m; a++) {
      cost += 0.5 * weight[a] * (k[a] - mean[a]) * (k[a] - mean[a]);
    }
    // the coefficients are integrated out, not set to their best: a time that needs finely tuned ones must pay for it
    cost += 0.5 * Math.log(solved.getDeterminant());
    return new Fit(k, cost);
  }
}
