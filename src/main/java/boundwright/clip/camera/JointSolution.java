package boundwright.clip.camera;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One solution over the whole clip: a rotation and a focal length for every followed picture, so that every corner that was
 * found again lies where a turning pinhole camera would show it. Robust least squares by Gauss and Newton; the time that the
 * shutter takes from the first row to the last is scanned by the residual.
 */
final class JointSolution {
  /** Corners used of one link. */
  private static final int PER_LINK = 60;
  private static final int ROUNDS = 14;
  private static final int SCAN_ROUNDS = 6;
  /** Before anything is known: the focal length over the long side, and how far it may be off (phones: 0.7 to 2; judgement). */
  private static final double FOCAL = 0.95;
  private static final double FOCAL_SD = 0.35;
  /** A zoom changes the focal length by less than this a second, as a share (judgement: a pinch over a second). */
  private static final double ZOOM_SD = 0.3;
  /** Shutter times that are tried [s]; phones take 5 to 30 ms from the first row to the last (judgement). */
  private static final double[] SHUTTER = {0, 0.01, 0.02, 0.03};
  /** The shutter counts as found when it takes this share off the residual (judgement). */
  private static final double FOUND = 0.02;

  private final double[] times;
  private final double wide;
  private final double high;
  private final double long1;
  private final Pairs pairs;
  private final int[] from;
  private final int[] to;
  private final int[] first;
  private final double[] a;
  private final double[] b;
  private final int[] place;
  private double[][] turn;
  private double[] focal;
  private double shutter;
  private boolean shutterFound;
  private double spread = 0.3;
  private double residual;
  private BlockSystem system;

  /**
   * Solves.
   *
   * @param times of the followed pictures [s], growing
   * @param width of the small picture [px]
   * @param height of it [px]
   * @param links every picture but the first is the later one of at least one
   * @param keys which pictures others were linked to beyond their neighbours
   */
  JointSolution(double[] times, int width, int height, List<Link> links, boolean[] keys) {
    this.times = times.clone();
    wide = width;
    high = height;
    long1 = Math.max(width, height);
    int n = times.length;
    pairs = new Pairs(links, width, height, PER_LINK);
    from = pairs.from;
    to = pairs.to;
    first = pairs.first;
    a = pairs.a;
    b = pairs.b;
    // pictures between keys first, in the order of time: each then knows only its neighbour and its key
    place = new int[n];
    int p = 0;
    for (int i = 0; i < n; i++) {
      if (!keys[i] && i > 0) {
        place[i] = p++;
      }
    }
    for (int i = 0; i < n; i++) {
      if (keys[i] || i == 0) {
        place[i] = p++;
      }
    }
    turn = new double[n][];
    focal = new double[n];
    Arrays.fill(focal, FOCAL * long1);
    begin();
    system = new BlockSystem(place);
    solve(ROUNDS);
    scanShutter();
  }

  /** Rotations from the middle shift of each link alone. */
  private void begin() {
    turn[0] = Turning.none();
    for (int k = 0; k < from.length; k++) {
      if (turn[to[k]] != null || turn[from[k]] == null) {
        continue;
      }
      double f = focal[0];
      double dx = pairs.middleShift(k, 0);
      double dy = pairs.middleShift(k, 1);
      turn[to[k]] = Turning.times(turn[from[k]], Turning.of(dy / f, -dx / f, 0));
    }
    for (int i = 1; i < turn.length; i++) {
      if (turn[i] == null) {
        turn[i] = turn[i - 1].clone();
      }
    }
  }

  private void solve(int rounds) {
    double was = Double.POSITIVE_INFINITY;
    for (int round = 0; round < rounds; round++) {
      step(round < 3 && rounds > SCAN_ROUNDS ? 1e-3 : 0);
      if (round > 3 && Math.abs(was - residual) < 1e-4 * residual) {
        return;
      }
      was = residual;
    }
  }

  /** How fast each picture turns in its own axes [rad/s], towards the one before and the one after. */
  private double[][] speeds(boolean after) {
    int n = turn.length;
    double[][] out = new double[n][];
    for (int i = 0; i + 1 < n; i++) {
      double dt = times[i + 1] - times[i];
      double[] v = Turning.vector(Turning.backTimes(turn[i], turn[i + 1]));
      double[] w = {v[0] / dt, v[1] / dt, v[2] / dt};
      if (after) {
        out[i] = w;
      } else {
        out[i + 1] = w;
      }
    }
    if (n == 1) {
      out[0] = new double[3];
    } else if (after) {
      out[n - 1] = out[n - 2];
    } else {
      out[0] = out[1];
    }
    return out;
  }

  /** One step of Gauss and Newton; {@code damping} as a share of the diagonal. */
  private void step(double damping) {
    int n = turn.length;
    system = new BlockSystem(place);
    double[] right = new double[4 * n];
    double[] sizes = new double[a.length / 2];
    double[][] before = speeds(false);
    double[][] after = speeds(true);
    double w = 1 / (spread * spread);
    double cut = 9 * spread * spread;
    double sum = 0;
    double weights = 0;
    double[] ja = new double[8];
    double[] jb = new double[8];
    double[][] own = new double[n][16];
    for (int k = 0; k < from.length; k++) {
      double[] across = new double[16];
      int p = from[k];
      int q = to[k];
      double[] m = Turning.backTimes(turn[q], turn[p]);
      for (int i = first[k]; i < first[k + 1]; i++) {
        double x = a[2 * i] / focal[p];
        double y = a[2 * i + 1] / focal[p];
        double z = 1;
        if (shutter > 0) {
          // the row's own time turns the ray a little: to the first order, 0.03 px at most
          double t = a[2 * i + 1] / high * shutter;
          double[] v = t > 0 ? after[p] : before[p];
          double x0 = x;
          double y0 = y;
          x += t * (v[1] - v[2] * y0);
          y += t * (v[2] * x0 - v[0]);
          z += t * (v[0] * y0 - v[1] * x0);
          x /= z;
          y /= z;
        }
        double qx = m[0] * x + m[1] * y + m[2];
        double qy = m[3] * x + m[4] * y + m[5];
        double qz = m[6] * x + m[7] * y + m[8];
        if (shutter > 0) {
          double t = -b[2 * i + 1] / high * shutter;
          double[] v = t < 0 ? after[q] : before[q];
          double x0 = qx;
          double y0 = qy;
          double z0 = qz;
          qx += t * (v[1] * z0 - v[2] * y0);
          qy += t * (v[2] * x0 - v[0] * z0);
          qz += t * (v[0] * y0 - v[1] * x0);
        }
        if (!(qz > 0.05)) {
          continue;
        }
        double px = focal[q] * qx / qz;
        double py = focal[q] * qy / qz;
        double ex = b[2 * i] - px;
        double ey = b[2 * i + 1] - py;
        double e2 = ex * ex + ey * ey;
        sizes[i] = Math.abs(i % 2 == 0 ? ex : ey);
        double weight = w / (1 + e2 / cut);
        sum += weight * e2;
        weights += weight;
        // (1 / z) of the projection's slope on the ray
        double fz = focal[q] / qz;
        double ux = qx / qz;
        double uy = qy / qz;
        // small turns of the earlier picture: m (delta x ray); ray = (x, y, 1)
        slope(ja, 0, fz, ux, uy, m[2] * y * -1 + m[1], m[5] * y * -1 + m[4], m[8] * y * -1 + m[7], -1);
        slope(ja, 1, fz, ux, uy, m[0] - m[2] * x, m[3] - m[5] * x, m[6] - m[8] * x, 1);
        slope(ja, 2, fz, ux, uy, m[1] * x - m[0] * y, m[4] * x - m[3] * y, m[7] * x - m[6] * y, 1);
        slope(ja, 3, fz, ux, uy, -(m[0] * x + m[1] * y), -(m[3] * x + m[4] * y), -(m[6] * x + m[7] * y), 1);
        // of the later one: ray x delta
        slope(jb, 0, fz, ux, uy, 0, qz, -qy, 1);
        slope(jb, 1, fz, ux, uy, -qz, 0, qx, 1);
        slope(jb, 2, fz, ux, uy, qy, -qx, 0, 1);
        jb[3] = px;
        jb[7] = py;
        for (int r = 0; r < 4; r++) {
          right[4 * p + r] += weight * (ja[r] * ex + ja[4 + r] * ey);
          right[4 * q + r] += weight * (jb[r] * ex + jb[4 + r] * ey);
          for (int c = 0; c < 4; c++) {
            own[p][4 * r + c] += weight * (ja[r] * ja[c] + ja[4 + r] * ja[4 + c]);
            own[q][4 * r + c] += weight * (jb[r] * jb[c] + jb[4 + r] * jb[4 + c]);
            across[4 * r + c] += weight * (jb[r] * ja[c] + jb[4 + r] * ja[4 + c]);
          }
        }
      }
      system.add(q, p, across);
    }
    priors(own, right, damping);
    for (int i = 0; i < n; i++) {
      system.add(i, own[i]);
    }
    system.factor();
    double[] d = system.solve(right);
    for (int i = 0; i < n; i++) {
      turn[i] = Turning.times(turn[i], Turning.of(d[4 * i], d[4 * i + 1], d[4 * i + 2]));
      focal[i] *= Math.exp(Math.max(-0.2, Math.min(0.2, d[4 * i + 3])));
    }
    residual = Math.sqrt(sum / weights / 2);
    spread = Math.max(0.02, 1.4826 * Pairs.median(sizes));
  }

  private static void slope(double[] j, int column, double fz, double ux, double uy, double dx, double dy, double dz, double sign) {
    j[column] = sign * fz * (dx - ux * dz);
    j[4 + column] = sign * fz * (dy - uy * dz);
  }

  private void priors(double[][] own, double[] right, double damping) {
    int n = turn.length;
    double scale = 0;
    for (double[] o : own) {
      scale += (o[0] + o[5] + o[10]) / (3 * n);
    }
    for (int r = 0; r < 3; r++) {
      own[0][5 * r] += 1e6 * scale;
    }
    double wf = 1 / (FOCAL_SD * FOCAL_SD);
    own[0][15] += wf;
    right[3] += wf * (Math.log(FOCAL * long1) - Math.log(focal[0]));
    for (int i = 1; i < n; i++) {
      double sd = ZOOM_SD * (times[i] - times[i - 1]);
      double wz = 1 / (sd * sd);
      double off = Math.log(focal[i]) - Math.log(focal[i - 1]);
      own[i][15] += wz;
      own[i - 1][15] += wz;
      right[4 * i + 3] -= wz * off;
      right[4 * (i - 1) + 3] += wz * off;
      double[] across = new double[16];
      across[15] = -wz;
      system.add(i, i - 1, across);
    }
    for (double[] o : own) {
      for (int r = 0; r < 4; r++) {
        o[5 * r] += 1e-9 * scale + damping * o[5 * r];
      }
    }
  }

  private void scanShutter() {
    double[][] turn0 = turn;
    double[] focal0 = focal;
    double none = residual;
    double best = none;
    double next = none;
    double at = 0;
    double[][] bestTurn = turn;
    double[] bestFocal = focal;
    double bestSpread = spread;
    double step = SHUTTER[1] / 2;
    List<Double> tries = new ArrayList<>();
    for (double s : SHUTTER) {
      tries.add(s);
    }
    for (int k = 1; k < tries.size(); k++) {
      double s = tries.get(k);
      turn = turn0.clone();
      focal = focal0.clone();
      shutter = s;
      solve(SCAN_ROUNDS);
      next = k == 1 ? residual : next;
      if (residual < best) {
        best = residual;
        at = s;
        bestTurn = turn;
        bestFocal = focal;
        bestSpread = spread;
      }
      if (k == SHUTTER.length - 1 && at > 0) {
        tries.add(at - step);
        tries.add(at + step);
      }
    }
    boolean better = best < (1 - FOUND) * none;
    // an open shutter that fits worse than none by as much says that there is none
    shutterFound = better || next > (1 + FOUND) * none;
    shutter = better ? at : 0;
    turn = better ? bestTurn : turn0;
    focal = better ? bestFocal : focal0;
    spread = bestSpread;
    solve(1);
  }

  /**
   * How far the ground moved against what stands behind it, beyond what turning explains: the phone itself moved. A plane's map
   * cannot tell, because ground and horizon move as one plane.
   *
   * @param all every corner that was found again between two pictures, whether it fits a map or not
   * @param rim rows of the later picture below it are ground [small px]
   * @param far rows above it are far behind the athlete [small px]
   * @return [small px], NaN where too few corners tell
   */
  double parallax(Link all, double rim, double far) {
    int p = all.from();
    int q = all.to();
    double[] m = Turning.backTimes(turn[q], turn[p]);
    double[] low = new double[all.size()];
    double[] up = new double[all.size()];
    int nl = 0;
    int nu = 0;
    for (int i = 0; i < all.size(); i++) {
      double x = (all.a()[2 * i] - (wide - 1) / 2) / focal[p];
      double y = (all.a()[2 * i + 1] - (high - 1) / 2) / focal[p];
      double e = all.b()[2 * i] - (wide - 1) / 2 - focal[q] * (m[0] * x + m[1] * y + m[2]) / (m[6] * x + m[7] * y + m[8]);
      if (all.b()[2 * i + 1] > rim) {
        low[nl++] = e;
      } else if (all.b()[2 * i + 1] < far) {
        up[nu++] = e;
      }
    }
    return nl < 5 || nu < 5 ? Double.NaN : Pairs.median(Arrays.copyOf(low, nl)) - Pairs.median(Arrays.copyOf(up, nu));
  }

  /** Rotation of a picture's camera, from its rays to the first picture's. */
  double[] turn(int picture) {
    return turn[picture].clone();
  }

  /** Focal length [small px]. */
  double focal(int picture) {
    return focal[picture];
  }

  /** How long the shutter takes from the first row to the last [s]; 0 where it was not found. */
  double shutter_s() {
    return shutter;
  }

  boolean shutterFound() {
    return shutterFound;
  }

  /** Root mean square distance of the corners from where the solution shows them, in one direction [small px]. */
  double residual() {
    return residual;
  }

  /**
   * Variance of where a place of a picture is shown, across the picture, by the covariance of the solution [small px squared].
   *
   * @param x from the middle [small px]
   * @param y from the middle [small px]
   */
  double variance(int picture, double x, double y) {
    double[] s = {-x * y / focal[picture], focal[picture] + x * x / focal[picture], -y, -x};
    return form(system.covariance(picture), s, s);
  }

  /** The same of the shift between a picture and the one before it. */
  double varianceOfStep(int picture, double x, double y) {
    if (picture == 0) {
      return 0;
    }
    double[] s = {-x * y / focal[picture], focal[picture] + x * x / focal[picture], -y, -x};
    double both = form(system.covariance(picture, picture - 1), s, s);
    return Math.max(0, form(system.covariance(picture), s, s) + form(system.covariance(picture - 1), s, s) - 2 * both);
  }

  private static double form(double[] c, double[] u, double[] v) {
    double sum = 0;
    for (int i = 0; i < 4; i++) {
      for (int j = 0; j < 4; j++) {
        sum += u[i] * c[4 * i + j] * v[j];
      }
    }
    return sum;
  }
}
