package boundwright.clip.signal;

/** The arithmetic of a place-speed-acceleration state under white jerk, one direction, scalar samples of the place. */
public final class Step3 {
  private Step3() {}

  /** The state after {@code dt} [s]. */
  public static double[] move(double[] m, double dt) {
    return new double[] {m[0] + dt * m[1] + 0.5 * dt * dt * m[2], m[1] + dt * m[2], m[2]};
  }

  /** The covariance after {@code dt} [s] of white jerk with spectral density {@code q}. */
  public static double[][] grow(double[][] c, double dt, double q) {
    double[][] f = {{1, dt, 0.5 * dt * dt}, {0, 1, dt}, {0, 0, 1}};
    double[][] out = times(times(f, c), transposed(f));
    double d2 = dt * dt;
    double d3 = d2 * dt;
    out[0][0] += q * d3 * d2 / 20;
    out[0][1] += q * d2 * d2 / 8;
    out[0][2] += q * d3 / 6;
    out[1][1] += q * d3 / 3;
    out[1][2] += q * d2 / 2;
    out[2][2] += q * dt;
    out[1][0] = out[0][1];
    out[2][0] = out[0][2];
    out[2][1] = out[1][2];
    return out;
  }

  /** The state pulled by a sample; {@code pull} is the innovation over its variance. */
  public static double[] pull(double[] m, double[][] c, double pull) {
    return new double[] {m[0] + c[0][0] * pull, m[1] + c[1][0] * pull, m[2] + c[2][0] * pull};
  }

  /** The covariance after a sample whose innovation has variance {@code s}. */
  public static double[][] shrink(double[][] c, double s) {
    double[][] out = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[i][j] = c[i][j] - c[i][0] * c[0][j] / s;
      }
    }
    return out;
  }

  static double[][] backGain(double[][] filtered, double dt, double[][] predictedNext) {
    double[][] f = {{1, dt, 0.5 * dt * dt}, {0, 1, dt}, {0, 0, 1}};
    return times(times(filtered, transposed(f)), inverse(predictedNext));
  }

  static double[] back(double[] filtered, double[][] gain, double[] smoothNext, double[] predictedNext) {
    double[] out = filtered.clone();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[i] += gain[i][j] * (smoothNext[j] - predictedNext[j]);
      }
    }
    return out;
  }

  static double[][] backCovariance(double[][] filtered, double[][] gain, double[][] smoothNext, double[][] predictedNext) {
    double[][] d = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        d[i][j] = smoothNext[i][j] - predictedNext[i][j];
      }
    }
    double[][] out = times(times(gain, d), transposed(gain));
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[i][j] += filtered[i][j];
      }
    }
    return out;
  }

  private static double[][] times(double[][] a, double[][] b) {
    double[][] out = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        out[i][j] = a[i][0] * b[0][j] + a[i][1] * b[1][j] + a[i][2] * b[2][j];
      }
    }
    return out;
  }

  private static double[][] transposed(double[][] a) {
    return new double[][] {{a[0][0], a[1][0], a[2][0]}, {a[0][1], a[1][1], a[2][1]}, {a[0][2], a[1][2], a[2][2]}};
  }

  /** Inverse of a symmetric positive matrix, scaled first because place, speed and acceleration differ by powers of ten. */
  private static double[][] inverse(double[][] c) {
    double[] s = {1 / Math.sqrt(c[0][0]), 1 / Math.sqrt(c[1][1]), 1 / Math.sqrt(c[2][2])};
    double[][] a = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        a[i][j] = c[i][j] * s[i] * s[j];
      }
    }
    double[][] k = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        int i1 = (i + 1) % 3;
        int i2 = (i + 2) % 3;
        int j1 = (j + 1) % 3;
        int j2 = (j + 2) % 3;
        k[j][i] = a[i1][j1] * a[i2][j2] - a[i1][j2] * a[i2][j1];
      }
    }
    double det = a[0][0] * k[0][0] + a[0][1] * k[1][0] + a[0][2] * k[2][0];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        k[i][j] *= s[i] * s[j] / det;
      }
    }
    return k;
  }
}
