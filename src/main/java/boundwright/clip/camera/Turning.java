package boundwright.clip.camera;

/** Rotations as 3 x 3 matrices, row by row in nine numbers, and as rotation vectors [rad]. */
public final class Turning {
  private Turning() {}

  /** No rotation. */
  public static double[] none() {
    return new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1};
  }

  /** The rotation by a vector [rad] (formula of Rodrigues: worked). */
  public static double[] of(double x, double y, double z) {
    double t = Math.sqrt(x * x + y * y + z * z);
    double s = t < 1e-8 ? 1 - t * t / 6 : Math.sin(t) / t;
    double c = t < 1e-8 ? 0.5 : (1 - Math.cos(t)) / (t * t);
    return new double[] {
      1 - c * (y * y + z * z), c * x * y - s * z, c * x * z + s * y,
      c * x * y + s * z, 1 - c * (x * x + z * z), c * y * z - s * x,
      c * x * z - s * y, c * y * z + s * x, 1 - c * (x * x + y * y)
    };
  }

  /** The vector of a rotation by less than half a turn [rad]. */
  public static double[] vector(double[] r) {
    double cos = Math.max(-1, Math.min(1, (r[0] + r[4] + r[8] - 1) / 2));
    double t = Math.acos(cos);
    double k = t < 1e-6 ? 0.5 : t / (2 * Math.sin(t));
    return new double[] {k * (r[7] - r[5]), k * (r[2] - r[6]), k * (r[3] - r[1])};
  }

  /** First b, then a. */
  public static double[] times(double[] a, double[] b) {
    double[] out = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
      }
    }
    return out;
  }

  /** The turned-back a, times b. */
  public static double[] backTimes(double[] a, double[] b) {
    double[] out = new double[9];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[3 * i + j] = a[i] * b[j] + a[3 + i] * b[3 + j] + a[6 + i] * b[6 + j];
      }
    }
    return out;
  }

  /** A direction turned. */
  static double[] apply(double[] r, double x, double y, double z) {
    return new double[] {r[0] * x + r[1] * y + r[2] * z, r[3] * x + r[4] * y + r[5] * z, r[6] * x + r[7] * y + r[8] * z};
  }

  /** A direction turned back. */
  static double[] back(double[] r, double[] v) {
    return new double[] {
      r[0] * v[0] + r[3] * v[1] + r[6] * v[2], r[1] * v[0] + r[4] * v[1] + r[7] * v[2], r[2] * v[0] + r[5] * v[1] + r[8] * v[2]
    };
  }

  /** Part of the way from a to b, 0 to 1. */
  static double[] between(double[] a, double[] b, double share) {
    double[] v = vector(backTimes(a, b));
    return times(a, of(share * v[0], share * v[1], share * v[2]));
  }
}
