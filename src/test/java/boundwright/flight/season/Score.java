package boundwright.flight.season;

import boundwright.flight.Forecast;
import boundwright.quantity.Estimate;

/**
 * What is counted of forecasts made before a day's first rep, against reps of that athlete on a new day whose form nobody
 * knows. Interval score: Gneiting and Raftery 2007, J Am Stat Assoc 102:359-378 (memory, high), lower is better.
 */
final class Score {
  private static final double ALPHA = 0.1;

  int asked;
  int landingCovered;
  int lastCovered;
  double bias;
  double interval;
  double intervalTruth;
  double width;
  double widthRatio;
  double lastWidthRatio;
  int forecasts;
  int promised;
  int promisedCounted;
  int advisedCounted;

  /**
   * Adds one forecast.
   *
   * @param f made before the day
   * @param reps drawn on new days, positions as jumped [m]
   */
  void add(Forecast f, double[][] reps, int scored) {
    int n = f.sequence().size();
    Estimate landing = f.landing();
    Estimate last = f.position(n);
    Marks marks = Marks.of(f);
    double mark = marks.best();
    boolean promise = marks.promise(mark) >= 0.9;
    double sdLanding = sd(reps, n);
    double meanLanding = mean(reps, n);
    forecasts++;
    width += landing.p95() - landing.p05();
    widthRatio += landing.halfWidth() / (Estimate.Z95 * sdLanding);
    lastWidthRatio += n == 1 ? 1 : last.halfWidth() / (Estimate.Z95 * sd(reps, n - 1));
    for (int i = 0; i < scored; i++) {
      double[] p = reps[i];
      asked++;
      landingCovered += inside(landing, p[n]) ? 1 : 0;
      lastCovered += inside(last, p[n - 1]) ? 1 : 0;
      bias += p[n] - landing.p50();
      interval += score(landing.p05(), landing.p95(), p[n]);
      intervalTruth += score(meanLanding - Estimate.Z95 * sdLanding, meanLanding + Estimate.Z95 * sdLanding, p[n]);
      boolean good = Marks.counts(p, mark);
      advisedCounted += good ? 1 : 0;
      promised += promise ? 1 : 0;
      promisedCounted += promise && good ? 1 : 0;
    }
  }

  void add(Score s) {
    asked += s.asked;
    landingCovered += s.landingCovered;
    lastCovered += s.lastCovered;
    bias += s.bias;
    interval += s.interval;
    intervalTruth += s.intervalTruth;
    width += s.width;
    widthRatio += s.widthRatio;
    lastWidthRatio += s.lastWidthRatio;
    forecasts += s.forecasts;
    promised += s.promised;
    promisedCounted += s.promisedCounted;
    advisedCounted += s.advisedCounted;
  }

  static double score(double low, double high, double y) {
    return high - low + 2 / ALPHA * (Math.max(0, low - y) + Math.max(0, y - high));
  }

  private static boolean inside(Estimate e, double y) {
    return y >= e.p05() && y <= e.p95();
  }

  private static double mean(double[][] reps, int c) {
    double sum = 0;
    for (double[] p : reps) {
      sum += p[c];
    }
    return sum / reps.length;
  }

  private static double sd(double[][] reps, int c) {
    double mean = mean(reps, c);
    double sum = 0;
    for (double[] p : reps) {
      sum += (p[c] - mean) * (p[c] - mean);
    }
    return Math.sqrt(sum / (reps.length - 1));
  }

  double landing() {
    return landingCovered / (double) asked;
  }

  double last() {
    return lastCovered / (double) asked;
  }

  double meanBias() {
    return bias / asked;
  }

  double success() {
    return promised == 0 ? Double.NaN : promisedCounted / (double) promised;
  }

  double ratio() {
    return widthRatio / forecasts;
  }

  String line() {
    return String.format(
        java.util.Locale.ROOT,
        "landing %.3f  last %.3f  bias %+.2f m  width %.2f m = %.2fx (last %.2fx)  score %.2f (%.2f)  promised %.2f kept %.3f  all %.3f  n %d",
        landing(), last(), meanBias(), width / forecasts, ratio(), lastWidthRatio / forecasts, interval / asked, intervalTruth / asked,
        promised / (double) asked, success(), advisedCounted / (double) asked, asked);
  }
}
