package boundwright.clip.contact;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.jspecify.annotations.Nullable;

/**
 * The time at which a foot point stops or starts, from the samples themselves, never from smoothed ones: on the ground
 * the point stands still, in the air it moves along a low-order curve that leaves the standing place. Both directions
 * share the time. The sum of squares is laid over a fine grid of times; its posterior mean is the time, its spread the
 * error.
 *
 * <p>Landing: u = c + b s + d s^2/2 + j s^3/6 for s = t - t0 < 0. Leaving: u = c + d s^2/2 + j s^3/6 for s > 0, because a
 * foot leaves from rest. The coefficients carry normal priors wide enough for any athlete, else they trade against the
 * time (judgement). First over a wide window round the guess, then over one that sits right.
 */
final class CornerFit {
  /** The steps of the grid of times [s]. */
  private static final double GRID_S = 0.0005;
  /** How far from the guess the time may lie, first and second round [s]. */
  private static final double REACH_S = 0.032;
  private static final double REACH_AGAIN_S = 0.014;
  /** Standard deviation of the guess [s] (own output: about 8 ms at 240 and 10 ms at 60 frames a second). */
  private static final double GUESS_SD_S = 0.012;
  /** Noise of body points lasts over frames: samples tell less than their number says. */
  private static final double CORRELATED = 2.0;
  /** Fewest samples that can tell a time. */
  private static final int FEWEST = 5;

  /**
   * A point that tells the time.
   *
   * @param path its samples
   * @param creep how fast it may still move on the ground's side of the event, standard deviation [m/s]
   */
  record Witness(FootPath path, double creep) {
    double sigma() {
      return Math.max(path.noise(), 0.002);
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

  /** Priors of the acceleration and the jerk with which a foot leaves the ground, forward and up [m/s2, m/s3]. */
  record LeavePriors(Prior ax, Prior ay, Prior jx, Prior jy) {}

  /** Priors of speed, acceleration and jerk at a landing, forward and up [m/s, m/s2, m/s3]. */
  record LandPriors(Prior vx, Prior vy, Prior ax, Prior ay, Prior jx, Prior jy) {}

  /** When the point lands, or null where too little was seen. Times in seconds. */
  @Nullable EventFit landing(double guess, double before, double after, LandPriors p) {
    return search(guess, before, after, true, new Prior[] {p.vx, p.ax, p.jx}, new Prior[] {p.vy, p.ay, p.jy});
  }

  /** When the point leaves, or null where too little was seen. */
  @Nullable EventFit leaving(double guess, double before, double after, LeavePriors p) {
    return search(guess, before, after, false, new Prior[] {p.ax, p.jx}, new Prior[] {p.ay, p.jy});
  }

  private @Nullable EventFit search(double guess, double before, double after, boolean landing, Prior[] px, Prior[] py) {
    Posterior first = over(guess, guess, REACH_S, before + 0.02, after + 0.02, landing, px, py);
    if (first == null) {
      return null;
    }
    Posterior second = over(guess, first.mean, REACH_AGAIN_S, before, after, landing, px, py);
    if (second == null) {
      return null;
    }
    Witness w = witnesses.get(0);
    int[] use = window(w, first.mean - before, first.mean + after);
    if (use.length < 3) {
      return null;
    }
    Fit fx = fit(w, use, w.path.x(), second.mean, landing, px);
    Fit fy = fit(w, use, w.path.y(), second.mean, landing, py);
    return new EventFit(second.mean, second.sd, fx.k[0], fy.k[0], landing ? fx.k[2] : 0, landing ? fy.k[2] : 0);
  }

  private record Posterior(double mean, double sd) {}

  private @Nullable Posterior over(
      double guess, double centre, double reach, double before, double after, boolean landing, Prior[] px, Prior[] py) {
    int n = (int) Math.round(2 * reach / GRID_S) + 1;
    double[] cost = new double[n];
    int samples = 0;
    for (Witness w : witnesses) {
      int[] use = window(w, centre - before, centre + after);
      if (use.length < 3) {
        continue;
      }
      samples += use.length;
      for (int k = 0; k < n; k++) {
        double t0 = centre - reach + k * GRID_S;
        cost[k] +=
            (fit(w, use, w.path.x(), t0, landing, px).cost + fit(w, use, w.path.y(), t0, landing, py).cost)
                / (CORRELATED * CORRELATED);
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
    Witness w = witnesses.get(0);
    int[] use = window(w, t0 - before, t0 + after);
    if (use.length < FEWEST) {
      return null;
    }
    double[] kx = fit(w, use, w.path.x(), t0, true, new Prior[] {p.vx, p.ax, p.jx}).k;
    double[] ky = fit(w, use, w.path.y(), t0, true, new Prior[] {p.vy, p.ay, p.jy}).k;
    return new double[] {kx[2], ky[2], kx[3], ky[3], kx[4], ky[4]};
  }

  /** Acceleration and jerk (forward, up) with which the first witness leaves at a known time, or null. */
  double @Nullable [] leave(double t0, double before, double after, LeavePriors p) {
    Witness w = witnesses.get(0);
    int[] use = window(w, t0 - before, t0 + after);
    if (use.length < FEWEST) {
      return null;
    }
    double[] kx = fit(w, use, w.path.x(), t0, false, new Prior[] {p.ax, p.jx}).k;
    double[] ky = fit(w, use, w.path.y(), t0, false, new Prior[] {p.ay, p.jy}).k;
    return new double[] {kx[2], ky[2], kx[3], ky[3]};
  }

  private static int[] window(Witness w, double from, double to) {
    double[] t = w.path.times();
    int[] out = new int[t.length];
    int n = 0;
    for (int i = 0; i < t.length; i++) {
      if (t[i] >= from && t[i] <= to && !Double.isNaN(w.path.x()[i])) {
        out[n++] = i;
      }
    }
    return Arrays.copyOf(out, n);
  }

  private record Fit(double[] k, double cost) {}

  /** Least squares with the priors as further rows; the standing place has none. */
  private static Fit fit(Witness witness, int[] use, double[] u, double t0, boolean landing, Prior[] priors) {
    int m = priors.length + 2;
    double[][] normal = new double[m][m];
    double[] right = new double[m];
    double sigma = witness.sigma();
    double w = 1 / (sigma * sigma);
    double base = u[use[use.length / 2]];
    double[] mean = new double[m];
    double[] weight = new double[m];
    weight[1] = 1 / (witness.creep * witness.creep);
    for (int a = 2; a < m; a++) {
      mean[a] = priors[a - 2].mean;
      weight[a] = 1 / (priors[a - 2].sd * priors[a - 2].sd);
    }
    double[][] rows = new double[use.length][];
    for (int i = 0; i < use.length; i++) {
      double[] r = row(witness.path.times()[use[i]] - t0, landing);
      rows[i] = r;
      for (int a = 0; a < m; a++) {
        right[a] += w * r[a] * (u[use[i]] - base);
        for (int b = 0; b < m; b++) {
          normal[a][b] += w * r[a] * r[b];
        }
      }
    }
    normal[0][0] += 1;
    for (int a = 1; a < m; a++) {
      normal[a][a] += weight[a];
      right[a] += mean[a] * weight[a];
    }
    double[] k =
        new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false), 1e-6, 0)
            .getSolver().solve(new ArrayRealVector(right, false)).toArray();
    double cost = 0;
    for (int i = 0; i < use.length; i++) {
      double e = u[use[i]] - base;
      for (int a = 0; a < m; a++) {
        e -= rows[i][a] * k[a];
      }
      e = Math.abs(e) / sigma;
      // beyond three standard deviations a sample pulls no harder
      cost += e < 3 ? 0.5 * e * e : 3 * e - 4.5;
    }
    for (int a = 1; a < m; a++) {
      double e = k[a] - mean[a];
      cost += 0.5 * weight[a] * e * e;
    }
    k[0] += base;
    return new Fit(k, cost);
  }

  /** Standing place, creep on the ground's side, then the curve on the flight's side. */
  private static double[] row(double s, boolean landing) {
    double ground = landing ? Math.max(0, s) : Math.min(0, s);
    double air = s - ground;
    return landing
        ? new double[] {1, ground, air, air * air / 2, air * air * air / 6}
        : new double[] {1, ground, air * air / 2, air * air * air / 6};
  }
}
