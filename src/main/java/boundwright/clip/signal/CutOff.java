package boundwright.clip.signal;

import java.util.ArrayList;
import java.util.List;

/**
 * Chooses a cut-off by its residual: what a low-pass removes is noise alone above some frequency, where the residual
 * falls along a straight line; that line carried back to 0 Hz is the noise, and the cut-off is where the residual equals
 * it (Winter's residual analysis; common practice).
 */
public final class CutOff {
  private CutOff() {}

  /**
   * The cut-off [Hz], between {@code lowest} and {@code highest}.
   *
   * @param series evenly spaced
   * @param lowest first frequency tried [Hz]
   * @param highest last frequency tried [Hz], below 0.4 of the rate
   */
  public static double byResidual(EvenSeries series, double lowest, double highest) {
    List<double[]> curve = new ArrayList<>();
    for (double f = lowest; f <= highest + 1e-9; f += 0.25) {
      curve.add(new double[] {f, residual(series, f)});
    }
    // the straight part: the upper half of the frequencies tried
    double noise = intercept(curve.stream().filter(c -> c[0] >= (lowest + highest) / 2).toList());
    for (double[] c : curve) {
      if (c[1] <= noise) {
        return c[0];
      }
    }
    return highest;
  }

  /** Root mean square of what a zero-lag low-pass at this cut-off removes. */
  static double residual(EvenSeries series, double cutOff) {
    double[] smooth = series.smoothed(cutOff).values();
    double sum = 0;
    for (int i = 0; i < smooth.length; i++) {
      double d = series.values()[i] - smooth[i];
      sum += d * d;
    }
    return Math.sqrt(sum / smooth.length);
  }

  /** Where the least-squares line through the points meets 0. */
  private static double intercept(List<double[]> points) {
    double mx = points.stream().mapToDouble(c -> c[0]).average().orElseThrow();
    double my = points.stream().mapToDouble(c -> c[1]).average().orElseThrow();
    double xy = points.stream().mapToDouble(c -> (c[0] - mx) * (c[1] - my)).sum();
    double xx = points.stream().mapToDouble(c -> (c[0] - mx) * (c[0] - mx)).sum();
    return my - mx * xy / xx;
  }
}
