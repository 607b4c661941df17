package boundwright.clip.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Kalman filter forward, Rauch-Tung-Striebel smoother back, on a body point with white jerk (state: place, speed, acceleration;
 * metres). Takes irregular times and missing samples as they are, and says how sure each place is.
 *
 * <p>The strength is given as the cut-off frequency of the equivalent low-pass: the smoother's corner lies at
 * omega^6 = q / (sigma^2 dt), so q = (2 pi fc)^6 sigma^2 dt (asymptotic form for even sampling; worked). The samples'
 * spread sigma is measured from the residuals in a second run.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
public final class Smoother {
  /**
   * A residual of so many metres halves a sample's weight (Cauchy weights), or three standard deviations where that is
   * more: a body turns faster at a contact than white jerk of this strength expects, and that is no error (judgement).
   */
  private static final double HALF_WEIGHT_M = 0.06;
  /** A sample whose variance had to be raised so many times is wild. */
  private static final double WILD = 10;
  private static final int ROUNDS = 5;

  private Smoother() {}

  /**
   * A smoothed point.
   *
   * @param x place, one per time
   * @param y place
   * @param vx speed [unit/s]
   * @param vy speed
   * @param ax acceleration [unit/s2]
   * @param ay acceleration
   * @param sd standard deviation of the place in each direction
   * @param wild samples that were left out
   * @param noise measured standard deviation of a single sample
   */
  public record Path(
      double[] x, double[] y, double[] vx, double[] vy, double[] ax, double[] ay, double[] sd, boolean[] wild, double noise) {}

  /**
   * Smooths a point. Wild samples lose their weight over a few rounds, by how far they lie from the smoothed path; no
   * sample is judged before what came after it is known.
   *
   * @param t times [s], growing
   * @param x samples [m]; NaN is missing
   * @param y samples [m]; NaN is missing
   * @param sigma first guess of a sample's standard deviation [m], above 0
   * @param cutOff [Hz]
   */
  public static Path run(double[] t, double[] x, double[] y, double sigma, double cutOff) {
    double[] raised = new double[t.length];
    Arrays.fill(raised, 1);
    double noise = sigma;
    Path path = once(t, x, y, noise, cutOff, raised);
    for (int round = 0; round < ROUNDS; round++) {
      noise = Math.max(0.1 * sigma, Math.min(5 * sigma, spread(path, x, y)));
      double half = Math.max(HALF_WEIGHT_M, 3 * noise);
      for (int i = 0; i < t.length; i++) {
        double r = Math.hypot(x[i] - path.x[i], y[i] - path.y[i]) / half;
        raised[i] = Double.isNaN(r) ? 1 : 1 + r * r;
      }
      path = once(t, x, y, noise, cutOff, raised);
    }
    double measured = path.noise * followed(path, x);
    return new Path(path.x, path.y, path.vx, path.vy, path.ax, path.ay, path.sd, path.wild, measured);
  }

  private static double spread(Path p, double[] x, double[] y) {
    double[] r = new double[2 * x.length];
    int n = 0;
    for (int i = 0; i < x.length; i++) {
      if (!Double.isNaN(x[i]) && !p.wild[i]) {
        r[n++] = Math.abs(x[i] - p.x[i]);
        r[n++] = Math.abs(y[i] - p.y[i]);
      }
    }
    if (n < 20) {
      return p.noise;
    }
    Arrays.sort(r, 0, n);
    return 1.4826 * r[n / 2];
  }

  /**
   * By what a spread is too small because the path goes through its own samples, at few frames a second nearly through each. The share
   * that a sample has in its own place is the path's variance over the sample's; below a half, 60 frames a second, nothing is done.
   * Between the forms for errors that are independent (power 0.5) and for least squares of known ones (1; both worked).
   */
  private static double followed(Path p, double[] x) {
    double[] sd = IntStream.range(0, x.length).filter(i -> !Double.isNaN(x[i])).mapToDouble(i -> p.sd[i]).sorted().toArray();
    double own = sd.length == 0 ? 0 : Math.pow(sd[sd.length / 2] / p.noise, 2);
    return Math.pow(0.5 / (1 - Math.max(0.5, Math.min(0.97, own))), 0.7);
  }

  private static Path once(double[] t, double[] x, double[] y, double sigma, double cutOff, double[] raised) {
    int n = t.length;
    double step = (t[n - 1] - t[0]) / (n - 1);
    double q = Math.pow(2 * Math.PI * cutOff, 6) * sigma * sigma * step;
    double[][] px = new double[n][];
    double[][] py = new double[n][];
    double[][][] pc = new double[n][][];
    double[][] fx = new double[n][];
    double[][] fy = new double[n][];
    double[][][] fc = new double[n][][];
    boolean[] wild = new boolean[n];
    double[] mx = start(x);
    double[] my = start(y);
    double[][] c = unknown();
    for (int i = 0; i < n; i++) {
      double dt = i == 0 ? 0 : t[i] - t[i - 1];
      mx = Step3.move(mx, dt);
      my = Step3.move(my, dt);
      c = Step3.grow(c, dt, q);
      px[i] = mx;
      py[i] = my;
      pc[i] = c;
      if (!Double.isNaN(x[i])) {
        wild[i] = raised[i] > WILD;
        double s = c[0][0] + sigma * sigma * raised[i];
        double ex = x[i] - mx[0];
        double ey = y[i] - my[0];
        mx = Step3.pull(mx, c, ex / s);
        my = Step3.pull(my, c, ey / s);
        c = Step3.shrink(c, s);
      }
      fx[i] = mx;
      fy[i] = my;
      fc[i] = c;
    }
    double[][] sx = new double[n][];
    double[][] sy = new double[n][];
    double[] sd = new double[n];
    sx[n - 1] = fx[n - 1];
    sy[n - 1] = fy[n - 1];
    double[][] sc = fc[n - 1];
    sd[n - 1] = Math.sqrt(sc[0][0]);
    for (int i = n - 2; i >= 0; i--) {
      double[][] gain = Step3.backGain(fc[i], t[i + 1] - t[i], pc[i + 1]);
      sx[i] = Step3.back(fx[i], gain, sx[i + 1], px[i + 1]);
      sy[i] = Step3.back(fy[i], gain, sy[i + 1], py[i + 1]);
      sc = Step3.backCovariance(fc[i], gain, sc, pc[i + 1]);
      sd[i] = Math.sqrt(Math.max(0, sc[0][0]));
    }
    return new Path(
        column(sx, 0), column(sy, 0), column(sx, 1), column(sy, 1), column(sx, 2), column(sy, 2), sd, wild, sigma);
  }

  /** Starts at the median of the first samples: a single wild one must not set the course. */
  private static double[] start(double[] v) {
    double[] first = Arrays.stream(v).filter(a -> !Double.isNaN(a)).limit(5).sorted().toArray();
    return new double[] {first.length == 0 ? 0 : first[first.length / 2], 0, 0};
  }

  /** What is known of a body point before it is seen: within some 20 m, slower than a sprinter's foot. */
  private static double[][] unknown() {
    return new double[][] {{400, 0, 0}, {0, 100, 0}, {0, 0, 1e4}};
  }

  private static double[] column(double[][] m, int k) {
    double[] out = new double[m.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = m[i][k];
    }
    return out;
  }
}
