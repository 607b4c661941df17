package boundwright.clip.signal;

import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * A series put on an even grid of times by a natural cubic spline, because a digital filter and a difference quotient
 * need even spacing and phones do not give it.
 *
 * @param start time of the first sample [s]
 * @param rate samples per second [Hz]
 * @param values the samples
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
public record EvenSeries(double start, double rate, double[] values) {

  /**
   * Resamples.
   *
   * @param times growing [s]
   * @param values at these times; NaN is left out and bridged by the spline
   * @param rate wanted [Hz]
   * @throws IllegalArgumentException if fewer than 3 values are known
   */
  public static EvenSeries of(double[] times, double[] values, double rate) {
    int n = 0;
    double[] t = new double[times.length];
    double[] v = new double[times.length];
    for (int i = 0; i < times.length; i++) {
      if (!Double.isNaN(values[i])) {
        t[n] = times[i];
        v[n++] = values[i];
      }
    }
    if (n < 3) {
      throw new IllegalArgumentException("a spline needs 3 known values, there are " + n);
    }
    t = java.util.Arrays.copyOf(t, n);
    PolynomialSplineFunction spline = new SplineInterpolator().interpolate(t, java.util.Arrays.copyOf(v, n));
    int count = (int) Math.floor((t[n - 1] - t[0]) * rate + 1e-9) + 1;
    double[] out = new double[count];
    for (int i = 0; i < count; i++) {
      out[i] = spline.value(Math.min(t[n - 1], t[0] + i / rate));
    }
    return new EvenSeries(t[0], rate, out);
  }

  /** Time of a sample [s]. */
  public double time(int i) {
    return start + i / rate;
  }

  /** The same series after a zero-lag low-pass. */
  public EvenSeries smoothed(double cutOff) {
    return new EvenSeries(start, rate, LowPass.zeroLag(rate, cutOff).smooth(values));
  }

  /** First derivative by central differences; one-sided at the ends. */
  public EvenSeries derivative() {
    int n = values.length;
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      int a = Math.max(0, i - 1);
      int b = Math.min(n - 1, i + 1);
      out[i] = (values[b] - values[a]) * rate / (b - a);
    }
    return new EvenSeries(start, rate, out);
  }

  /** Value at a time by straight interpolation; the end values outside. */
  public double at(double time) {
    double u = Math.max(0, Math.min(values.length - 1.0, (time - start) * rate));
    int i = Math.min(values.length - 2, (int) u);
    return values[i] + (u - i) * (values[i + 1] - values[i]);
  }

  /** The time of the largest value between two times, to a part of a sample by a parabola [s]; NaN where none lies between. */
  public double peakTime(double from, double to) {
    int a = Math.max(1, (int) Math.ceil((from - start) * rate));
    int b = Math.min(values.length - 2, (int) Math.floor((to - start) * rate));
    if (b < a) {
      return Double.NaN;
    }
    int best = a;
    for (int i = a; i <= b; i++) {
      best = values[i] > values[best] ? i : best;
    }
    double bend = values[best - 1] - 2 * values[best] + values[best + 1];
    double shift = bend < 0 ? 0.5 * (values[best - 1] - values[best + 1]) / bend : 0;
    return time(best) + Math.max(-0.5, Math.min(0.5, shift)) / rate;
  }
}
