package boundwright.clip.camera;

/** Projective maps between two pictures, nine numbers row by row. */
final class Maps {
  private Maps() {}

  /** First b, then a. */
  static double[] times(double[] a, double[] b) {
    double[] out = Turning.times(a, b);
    double s = out[8];
    for (int i = 0; i < 9; i++) {
      out[i] /= s;
    }
    return out;
  }

  static double[] apply(double[] m, double x, double y) {
    double w = m[6] * x + m[7] * y + m[8];
    return new double[] {(m[0] * x + m[1] * y + m[2]) / w, (m[3] * x + m[4] * y + m[5]) / w};
  }
}
