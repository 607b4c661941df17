package boundwright.clip.truth;

/** The fifth-degree curve with given place, speed and acceleration at both ends. */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
record Quintic(double t0, double t1, double[] k) {

  static Quintic of(double t0, double p0, double v0, double a0, double t1, double p1, double v1, double a1) {
    double h = t1 - t0;
    double q0 = p0;
    double q1 = v0 * h;
    double q2 = 0.5 * a0 * h * h;
    double dp = p1 - q0 - q1 - q2;
    double dv = v1 * h - q1 - 2 * q2;
    double da = a1 * h * h - 2 * q2;
    double q3 = 10 * dp - 4 * dv + 0.5 * da;
    double q4 = -15 * dp + 7 * dv - da;
    double q5 = 6 * dp - 3 * dv + 0.5 * da;
    return new Quintic(t0, t1, new double[] {q0, q1, q2, q3, q4, q5});
  }

  double at(double t) {
    double u = (t - t0) / (t1 - t0);
    return k[0] + u * (k[1] + u * (k[2] + u * (k[3] + u * (k[4] + u * k[5]))));
  }

  double speed(double t) {
    double h = t1 - t0;
    double u = (t - t0) / h;
    return (k[1] + u * (2 * k[2] + u * (3 * k[3] + u * (4 * k[4] + u * 5 * k[5])))) / h;
  }

  double acceleration(double t) {
    double h = t1 - t0;
    double u = (t - t0) / h;
    return (2 * k[2] + u * (6 * k[3] + u * (12 * k[4] + u * 20 * k[5]))) / (h * h);
  }
}
