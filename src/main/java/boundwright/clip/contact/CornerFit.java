package boundwright.clip.contact;

import java.util.Arrays;
import java.util.List;
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
 * <p>u = c + b s + d s^2/2 + j s^3/6 for s = t - t0 < 0. The coefficients carry normal priors wide enough for any athlete, else they trade against the
 * time (judgement). First over a wide window round the guess, then over one that sits right.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
final class CornerFit {
  /** The steps of the grid of times [s]. */
  private static final double GRID_S = 0.0005;
  /** How far from the guess the time may lie, first and second round [s]. */
  private static final double REACH_S = 0.032;
  private static final double REACH_AGAIN_S = 0.014;
  /** Standard deviation of the guess [s] (own output: about 8 ms at 240 and 10 ms at 60 frames a second). */
  private static final double GUESS_SD_S = 0.012;
  /**
   * Errors of body points last over frames. The fit takes them as white noise plus as much again that fades to 1/e in this
   * time [s] (generalised least squares; judgement, see the docs for how much hangs on it).
   */
  private static final double LASTING_S = 0.04;
  /**
   * A sample's standard deviation is so many times what its path's residuals show, because a smoothed path follows some of
   * the lasting error (own output on made-up clips).
   */
  private static final double SMOOTHED_AWAY = 2;
  /** No sample is trusted more than this, standard deviation [m]: neither foot nor ground is that stiff (judgement). */
  private static final double LEAST_SIGMA_M = 0.005;
  /** Fewest samples that can tell a time. */
  private static final int FEWEST = 5;

  /**
   * A point that tells the time.
   *
   * @param path its samples
   * @param creep how fast it may still move on the ground's side of the event, standard deviation [m/s]
   * @param lasting share of the lasting error, 0 (all errors white) to 1 (as much lasting as white)
   */
  record Witness(FootPath path, double creep, double lasting) {
    double sigma() {
      return Math.max(SMOOTHED_AWAY * path.noise(), LEAST_SIGMA_M);
    }
  }

  private final List<Witness> witnesses;

  /** The first witness is the one whose place and speed are reported. */
  CornerFit(List<Witness> witnesses) {
    this.witnesses = List.copyOf(witnesses);
  }

  /**
   * A normal prior of one coefficient.
   *
   * @param mean expected
   * @param sd standard deviation
   */
  record Prior(double mean, double sd) {}

  /** Priors of speed, acceleration and jerk at a landing, forward and up [m/s, m/s2, m/s3]. */
  record LandPriors(Prior vx, Prior vy, Prior ax, Prior ay, Prior jx, Prior jy) {}

  /** When the point lands, or null where too little was seen. Times in seconds. */
  @Nullable EventFit landing(double guess, double before, double after, LandPriors p) {
    return search(guess, before, after, new Prior[] {p.vx, p.ax, p.jx}, new Prior[] {p.vy, p.ay, p.jy});
  }

  private @Nullable EventFit search(double guess, double before, double after, Prior[] px, Prior[] py) {
    Posterior first = over(guess, guess, REACH_S, before + 0.02, after + 0.02, px, py);
    if (first == null) {
      return null;
    }
    Posterior second = over(guess, first.mean, REACH_AGAIN_S, before, after, px, py);
    if (second == null) {
      return null;
    }
    Window w = Window.of(witnesses.get(0), first.mean - before, first.mean + after);
    if (w == null) {
      return null;
    }
    Fit fx = w.fit(w.x, second.mean, px);
    Fit fy = w.fit(w.y, second.mean, py);
    return new EventFit(second.mean, second.sd, fx.k[0], fy.k[0], fx.k[2], fy.k[2]);
  }

  private record Posterior(double mean, double sd) {}

  private @Nullable Posterior over(
      double guess, double centre, double reach, double before, double after, Prior[] px, Prior[] py) {
    int n = (int) Math.round(2 * reach / GRID_S) + 1;
    double[] cost = new double[n];
    int samples = 0;
    for (Witness witness : witnesses) {
      Window w = Window.of(witness, centre - before, centre + after);
      if (w == null) {
        continue;
      }
      samples += w.t.length;
      for (int k = 0; k < n; k++) {
        double t0 = centre - reach + k * GRID_S;
        cost[k] += w.fit(w.x, t0, px).cost + w.fit(w.y, t0, py).cost;
      }
    }
    if (samples < FEWEST) {
      return null;
    }
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < n; k++) {
      double off = (centre - reach + k * GRID_S - guess) / GUESS_SD_S;
      cost[k] += 0.5 * off * off;
      least = Math.min(least, cost[k]);
    }
    double sum = 0;
    double one = 0;
    double two = 0;
    for (int k = 0; k < n; k++) {
      double p = Math.exp(least - cost[k]);
      double s = k * GRID_S - reach;
      sum += p;
      one += p * s;
      two += p * s * s;
    }
    double mean = one / sum;
    return new Posterior(centre + mean, Math.sqrt(Math.max(GRID_S * GRID_S / 12, two / sum - mean * mean)));
  }

  /** Speed, acceleration and jerk (forward, up, in turn) with which the first witness lands at a known time, or null. */
  double @Nullable [] land(double t0, double before, double after, LandPriors p) {
    Window w = Window.of(witnesses.get(0), t0 - before, t0 + after);
    if (w == null || w.t.length < FEWEST) {
      return null;
    }
    double[] kx = w.fit(w.x, t0, new Prior[] {p.vx, p.ax, p.jx}).k;
    double[] ky = w.fit(w.y, t0, new Prior[] {p.vy, p.ay, p.jy}).k;
    return new double[] {kx[2], ky[2], kx[3], ky[3], kx[4], ky[4]};
  }

  private record Fit(double[] k, double cost) {}

  /** Samples round an event, with the noise's covariance taken apart so that they can be whitened. */
  private static final class Window {
    private final double[] t;
    private final double[] x;
    private final double[] y;
    private final double creep;
    private final double[][] lower;

    private Window(double[] t, double[] x, double[] y, double creep, double[][] lower) {
      this.t = t;
      this.x = x;
      this.y = y;
      this.creep = creep;
      this.lower = lower;
    }

    static @Nullable Window of(Witness w, double from, double to) {
      double[] all = w.path.times();
      int[] use = new int[all.length];
      int n = 0;
      for (int i = 0; i < all.length; i++) {
        if (all[i] >= from && all[i] <= to && !Double.isNaN(w.path.x()[i])) {
          use[n++] = i;
        }
      }
      if (n < 3) {
        return null;
      }
      int[] at = Arrays.copyOf(use, n);
      double[] t = Arrays.stream(at).mapToDouble(i -> all[i]).toArray();
      double v = w.sigma() * w.sigma();
      double[][] c = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j < n; j++) {
          double white = i == j ? v * (2 - w.lasting) : 0;
          c[i][j] = white + w.lasting * v * Math.exp(-Math.abs(t[i] - t[j]) / LASTING_S);
        }
      }
      double[][] lower = new CholeskyDecomposition(new Array2DRowRealMatrix(c, false), 1e-6, 0).getL().getData();
      double[] x = Arrays.stream(at).mapToDouble(i -> w.path.x()[i]).toArray();
      double[] y = Arrays.stream(at).mapToDouble(i -> w.path.y()[i]).toArray();
      return new Window(t, x, y, w.creep, lower);
    }

    private double[] whitened(double[] u) {
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

    /** Least squares of the whitened samples with the priors as further rows; the standing place has none. */
    Fit fit(double[] u, double t0, Prior[] priors) {
      int m = priors.length + 2;
      int n = t.length;
      double base = u[n / 2];
      double[][] column = new double[m][n];
      double[] right = new double[n];
      for (int i = 0; i < n; i++) {
        double[] r = row(t[i] - t0);
        for (int a = 0; a < m; a++) {
          column[a][i] = r[a];
        }
        right[i] = u[i] - base;
      }
      for (int a = 0; a < m; a++) {
        column[a] = whitened(column[a]);
      }
      right = whitened(right);
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
        pull[a] = mean[a] * weight[a] + dot(column[a], right);
        for (int b = 0; b < m; b++) {
          normal[a][b] = dot(column[a], column[b]) + (a == b ? weight[a] : 0);
        }
      }
      CholeskyDecomposition solved = new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0);
      double[] k = solved.getSolver().solve(new ArrayRealVector(pull, false)).toArray();
      double cost = 0;
      for (int i = 0; i < n; i++) {
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
      k[0] += base;
      return new Fit(k, cost);
    }

    private static double dot(double[] a, double[] b) {
      double sum = 0;
      for (int i = 0; i < a.length; i++) {
        sum += a[i] * b[i];
      }
      return sum;
    }
  }

  /** Standing place, creep on the ground's side, then the curve on the flight's side. */
  private static double[] row(double s) {
    double ground = Math.max(0, s);
    double air = s - ground;
    return new double[] {1, ground, air, air * air / 2, air * air * air / 6};
  }
}
