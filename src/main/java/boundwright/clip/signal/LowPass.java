package boundwright.clip.signal;

import boundwright.quantity.RefusedException;
import java.util.Locale;

/**
 * Second-order Butterworth low-pass run forward and back, so that nothing is shifted in time.
 *
 * <p>{@code y[i] = a0 x[i] + a1 x[i-1] + a0 x[i-2] + b1 y[i-1] + b2 y[i-2]}; two passes lower the cut-off, so each pass is
 * designed for fc / 0.8022432629, where 0.8022... = (sqrt 2 - 1)^(1/4) (Winter's form; check values in the tests: worked).
 * The ends are continued by point reflection, so a straight line passes unchanged.
 *
 * @param a0 weight of the newest and the oldest input
 * @param a1 weight of the middle input
 * @param b1 weight of the last output
 * @param b2 weight of the output before
 */
public record LowPass(double a0, double a1, double b1, double b2) {
  /** Correction of the cut-off for two passes of second order: (sqrt 2 - 1)^(1/4) (worked). */
  public static final double TWO_PASS = Math.pow(Math.sqrt(2) - 1, 0.25);

  /**
   * The filter whose forward and backward run together have this cut-off.
   *
   * @param rate samples per second [Hz]
   * @param cutOff where the amplitude has fallen to 1/sqrt 2 [Hz], below 0.4 of the rate
   * @throws RefusedException if the cut-off is not above 0 and below 0.4 of the rate
   */
  public static LowPass zeroLag(double rate, double cutOff) {
    if (!(cutOff > 0 && cutOff < 0.4 * rate)) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "A cut-off of %.1f Hz does not fit %.1f frames a second: above 0 and below %.1f Hz.", cutOff, rate, 0.4 * rate));
    }
    return design(Math.tan(Math.PI * cutOff / rate) / TWO_PASS);
  }

  /** One pass without the correction; {@code share} is the cut-off as a share of half the rate, 0 to 1. */
  public static LowPass onePass(double share) {
    return design(Math.tan(Math.PI * share / 2));
  }

  private static LowPass design(double w) {
    double k1 = Math.sqrt(2) * w;
    double k2 = w * w;
    double a0 = k2 / (1 + k1 + k2);
    double k3 = 2 * a0 / k2;
    return new LowPass(a0, 2 * a0, k3 - 2 * a0, 1 - 2 * a0 - k3);
  }

  /** Forward and back over evenly spaced samples; at least 3 of them, none missing. */
  public double[] smooth(double[] in) {
    int n = in.length;
    int pad = Math.min(n - 1, (int) Math.ceil(6 / Math.max(1e-3, Math.sqrt(a0))));
    double[] wide = new double[n + 2 * pad];
    for (int i = 0; i < wide.length; i++) {
      int k = i - pad;
      wide[i] = k < 0 ? 2 * in[0] - in[-k] : k >= n ? 2 * in[n - 1] - in[2 * (n - 1) - k] : in[k];
    }
    double[] back = reversed(pass(reversed(pass(wide))));
    double[] out = new double[n];
    System.arraycopy(back, pad, out, 0, n);
    return out;
  }

  /** One forward pass that starts settled at the first value. */
  double[] pass(double[] in) {
    double[] out = new double[in.length];
    double x1 = in[0];
    double x2 = in[0];
    double y1 = in[0];
    double y2 = in[0];
    for (int i = 0; i < in.length; i++) {
      double y = a0 * in[i] + a1 * x1 + a0 * x2 + b1 * y1 + b2 * y2;
      x2 = x1;
      x1 = in[i];
      y2 = y1;
      y1 = y;
      out[i] = y;
    }
    return out;
  }

  private static double[] reversed(double[] in) {
    double[] out = new double[in.length];
    for (int i = 0; i < in.length; i++) {
      out[i] = in[in.length - 1 - i];
    }
    return out;
  }
}
