package boundwright.athlete.growth;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.List;

/**
 * The local linear trend that knows nothing of growing: the speed is a Wiener process of 2.25 cm2/y3, 5 give or take 4 cm a year at first (textbook
 * Kalman filter). It was the program's own, and is what the other is measured by.
 */
final class PlainTrend {
  private static final double WANDER = 2.25;

  private PlainTrend() {}

  /** The speed on a day not before the last of these heights, which are in order. */
  static Estimate speed(List<Measurement> measured, LocalDate on) {
    double h = 150;
    double v = 5;
    double hh = 10_000;
    double hv = 0;
    double vv = 16;
    LocalDate last = measured.get(0).date();
    for (int i = 0; i <= measured.size(); i++) {
      LocalDate day = i < measured.size() ? measured.get(i).date() : on;
      double t = GrowthTrend.years(last, day);
      h += t * v;
      hh += 2 * t * hv + t * t * vv + WANDER * t * t * t / 3;
      hv += t * vv + WANDER * t * t / 2;
      vv += WANDER * t;
      last = day;
      if (i < measured.size()) {
        double s = hh + GrowthTrend.READING_SD_CM * GrowthTrend.READING_SD_CM;
        double off = 100 * measured.get(i).height_m() - h;
        double kh = hh / s;
        double kv = hv / s;
        h += kh * off;
        v += kv * off;
        vv -= kv * hv;
        hv -= kh * hv;
        hh -= kh * hh;
      }
    }
    double half = Estimate.Z95 * Math.sqrt(vv);
    return new Estimate(Math.max(0, v - half), Math.max(0, v), Math.max(0, v + half));
  }
}
