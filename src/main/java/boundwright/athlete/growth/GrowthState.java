package boundwright.athlete.growth;

/**
 * What one course believes on a day: height [cm] and speed [cm/y], jointly normal.
 *
 * @param h height, mean
 * @param v speed, mean
 * @param hh variance of the height
 * @param hv covariance
 * @param vv variance of the speed
 */
record GrowthState(double h, double v, double hh, double hv, double vv) {
  /** Some time later, where the speed keeps {@code e} of what it is off the course and the height gains {@code g} times that; without noise. */
  GrowthState moved(double g, double e) {
    return new GrowthState(h + g * v, e * v, hh + 2 * g * hv + g * g * vv, e * (hv + g * vv), e * e * vv);
  }

  GrowthState plus(double height, double speed) {
    return new GrowthState(h + height, v + speed, hh, hv, vv);
  }

  GrowthState lessSure(double addHh, double addHv, double addVv) {
    return new GrowthState(h, v, hh + addHh, hv + addHv, vv + addVv);
  }

  /** Once a height was read with an error of this variance (Kalman). */
  GrowthState reading(double height, double variance) {
    double s = hh + variance;
    double kh = hh / s;
    double kv = hv / s;
    double off = height - h;
    return new GrowthState(h + kh * off, v + kv * off, variance * kh, hv * variance / s, vv - kv * hv);
  }

  /**
   * This state, filtered, once the state some time later is known to be {@code later} instead of {@code predicted} (Rauch, Tung and Striebel).
   *
   * @param g height that an excess of speed has brought by then, as in {@link #moved}
   * @param e what is left of that excess
   */
  GrowthState knowing(GrowthState predicted, GrowthState later, double g, double e) {
    double det = predicted.hh * predicted.vv - predicted.hv * predicted.hv;
    double c11 = hh + g * hv;
    double c12 = e * hv;
    double c21 = hv + g * vv;
    double c22 = e * vv;
    double g11 = (c11 * predicted.vv - c12 * predicted.hv) / det;
    double g12 = (c12 * predicted.hh - c11 * predicted.hv) / det;
    double g21 = (c21 * predicted.vv - c22 * predicted.hv) / det;
    double g22 = (c22 * predicted.hh - c21 * predicted.hv) / det;
    double dh = later.h - predicted.h;
    double dv = later.v - predicted.v;
    double d11 = later.hh - predicted.hh;
    double d12 = later.hv - predicted.hv;
    double d22 = later.vv - predicted.vv;
    double m11 = g11 * d11 + g12 * d12;
    double m12 = g11 * d12 + g12 * d22;
    double m21 = g21 * d11 + g22 * d12;
    double m22 = g21 * d12 + g22 * d22;
    return new GrowthState(
        h + g11 * dh + g12 * dv,
        v + g21 * dh + g22 * dv,
        hh + m11 * g11 + m12 * g12,
        hv + m11 * g21 + m12 * g22,
        vv + m21 * g21 + m22 * g22);
  }
}
