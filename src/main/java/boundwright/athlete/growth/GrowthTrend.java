package boundwright.athlete.growth;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Height and its speed as a local linear trend: the speed wanders as a Wiener process, the height is its integral, and a height is read with a
 * normal error. Between two days {@code t} years apart the state (height, speed) goes by {@code [1 t; 0 1]} with the noise {@code q [t^3/3 t^2/2;
 * t^2/2 t]}, both exact for any {@code t} (Durbin and Koopman, Time Series Analysis by State Space Methods, 2nd ed. 2012, ch. 3.8; memory). Days
 * up to now are answered by the Kalman filter, days looked back on by the Rauch-Tung-Striebel smoother. Heights [cm], time [years of
 * {@value #YEAR_DAYS} days], speed [cm/y].
 *
 * <p>The model knows nothing of how people grow; simulated growth that it was not made from is what it was held against ({@code docs/growth.md}).
 */
public final class GrowthTrend {
  /** Days in a year. */
  public static final double YEAR_DAYS = 365.25;
  /** Standard deviation of one reading of a height [cm]: asked for by those who ordered the program, and common practice. */
  public static final double READING_SD_CM = 0.4;
  /**
   * How fast the speed wanders, {@code q} [cm2/y3], the same for everybody: on simulated heights, of seeds that nothing else is checked on, its 90 %
   * interval of the speed has the best interval score of a grid (Gneiting and Raftery 2007). A judgement: no real growth was there to learn it from.
   */
  public static final double WANDER = 2.25;
  /** Speed before any height [cm/y]: mean and standard deviation (judgement). */
  public static final double SPEED_MEAN = 5;
  static final double SPEED_SD = 4;
  /** Height before any height [cm]; so unsure that it says nothing. */
  static final double HEIGHT_MEAN = 150;
  static final double HEIGHT_SD = 100;

  /** What is believed on a day: mean and covariance of height and speed. */
  record State(double h, double v, double hh, double hv, double vv) {
    State after(double t, double q) {
      return new State(
          h + t * v,
          v,
          hh + 2 * t * hv + t * t * vv + q * t * t * t / 3,
          hv + t * vv + q * t * t / 2,
          vv + q * t);
    }

    State reading(double height, double variance) {
      double s = hh + variance;
      double kh = hh / s;
      double kv = hv / s;
      double off = height - h;
      return new State(h + kh * off, v + kv * off, variance * kh, hv * variance / s, vv - kv * hv);
    }

    /** This state, filtered, once the state {@code t} years later is known to be {@code later} instead of {@code predicted}. */
    State knowing(State predicted, State later, double t) {
      double det = predicted.hh * predicted.vv - predicted.hv * predicted.hv;
      double a = hh + t * hv;
      double b = hv + t * vv;
      double g11 = (a * predicted.vv - hv * predicted.hv) / det;
      double g12 = (hv * predicted.hh - a * predicted.hv) / det;
      double g21 = (b * predicted.vv - vv * predicted.hv) / det;
      double g22 = (vv * predicted.hh - b * predicted.hv) / det;
      double dh = later.h - predicted.h;
      double dv = later.v - predicted.v;
      double d11 = later.hh - predicted.hh;
      double d12 = later.hv - predicted.hv;
      double d22 = later.vv - predicted.vv;
      double m11 = g11 * d11 + g12 * d12;
      double m12 = g11 * d12 + g12 * d22;
      double m21 = g21 * d11 + g22 * d12;
      double m22 = g21 * d12 + g22 * d22;
      return new State(
          h + g11 * dh + g12 * dv,
          v + g21 * dh + g22 * dv,
          hh + m11 * g11 + m12 * g12,
          hv + m11 * g21 + m12 * g22,
          vv + m21 * g21 + m22 * g22);
    }
  }

  /**
   * A day of the curve.
   *
   * @param date the day
   * @param height_cm height [cm]
   * @param speed_cm_y speed [cm/y], not below 0: nobody shrinks
   */
  public record Point(LocalDate date, Estimate height_cm, Estimate speed_cm_y) {}

  private final double q;
  private final List<LocalDate> days;
  private final List<State> filtered;
  private final double logLikelihood;

  private GrowthTrend(double q, List<LocalDate> days, List<State> filtered, double logLikelihood) {
    this.q = q;
    this.days = days;
    this.filtered = filtered;
    this.logLikelihood = logLikelihood;
  }

  /**
   * Learned from heights.
   *
   * @param measured in any order, at least one; more than one of a day are each a reading
   */
  public static GrowthTrend of(List<Measurement> measured) {
    return of(measured, List.of(), WANDER);
  }

  static GrowthTrend of(List<Measurement> measured, Collection<LocalDate> between, double q) {
    TreeMap<LocalDate, List<Double>> byDay = new TreeMap<>();
    measured.stream().sorted(Comparator.comparing(Measurement::date)).forEach(
        m -> byDay.computeIfAbsent(m.date(), d -> new ArrayList<>()).add(100 * m.height_m()));
    LocalDate first = byDay.firstKey();
    between.stream().filter(d -> !d.isBefore(first)).forEach(d -> byDay.computeIfAbsent(d, day -> new ArrayList<>()));
    State now = new State(HEIGHT_MEAN, SPEED_MEAN, HEIGHT_SD * HEIGHT_SD, 0, SPEED_SD * SPEED_SD);
    List<State> filtered = new ArrayList<>();
    double variance = READING_SD_CM * READING_SD_CM;
    double log = 0;
    LocalDate last = first;
    for (LocalDate day : byDay.keySet()) {
      now = now.after(years(last, day), q);
      for (double height : byDay.get(day)) {
        double s = now.hh + variance;
        log -= 0.5 * (Math.log(2 * Math.PI * s) + (height - now.h) * (height - now.h) / s);
        now = now.reading(height, variance);
      }
      filtered.add(now);
      last = day;
    }
    return new GrowthTrend(q, List.copyOf(byDay.keySet()), List.copyOf(filtered), log);
  }

  /** Years from one day to another. */
  static double years(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to) / YEAR_DAYS;
  }

  /** Logarithm of the density of the heights. */
  double logLikelihood() {
    return logLikelihood;
  }

  List<State> filtered() {
    return filtered;
  }

  /** The filtered states once all heights are known, in the order of the days. */
  List<State> smoothed() {
    List<State> out = new ArrayList<>(filtered);
    for (int i = days.size() - 2; i >= 0; i--) {
      double t = years(days.get(i), days.get(i + 1));
      State f = filtered.get(i);
      out.set(i, f.knowing(f.after(t, q), out.get(i + 1), t));
    }
    return out;
  }

  /** The last day with a height. */
  public LocalDate last() {
    return days.get(days.size() - 1);
  }

  /**
   * What the heights up to the last one say of a day on or after it: nothing is known of what came since, so it grows less sure.
   *
   * @param day not before {@link #last}
   */
  public Point on(LocalDate day) {
    return point(day, filtered.get(filtered.size() - 1).after(years(last(), day), q));
  }

  /** Half the 90 % interval of the speed on a day not before {@link #last} [cm/y], as it will be without another height. */
  public double unsure_cm_y(LocalDate day) {
    return Estimate.Z95 * Math.sqrt(filtered.get(filtered.size() - 1).after(years(last(), day), q).vv());
  }

  /** The last day with a height, not before {@code from}, on which the speed was told to be above this [cm/y] as it was known then; or null. */
  @Nullable LocalDate lastAbove(double speed_cm_y, LocalDate from) {
    for (int i = days.size() - 1; i >= 0 && !days.get(i).isBefore(from); i--) {
      if (filtered.get(i).v > speed_cm_y) {
        return days.get(i);
      }
    }
    return null;
  }

  /** The heights [cm] on these days, not before the first measured one, by day; days with a height are there too. */
  static Map<LocalDate, Estimate> heights(List<Measurement> measured, Collection<LocalDate> on) {
    GrowthTrend trend = of(measured, on, WANDER);
    List<State> states = trend.smoothed();
    Map<LocalDate, Estimate> out = new HashMap<>();
    for (int i = 0; i < states.size(); i++) {
      out.put(trend.days.get(i), point(trend.days.get(i), states.get(i)).height_cm());
    }
    return out;
  }

  /**
   * The curve looked back on.
   *
   * @param measured at least one
   * @param every days between two points beside those with a height, at least 1
   */
  public static List<Point> curve(List<Measurement> measured, int every) {
    GrowthTrend bare = of(measured);
    List<LocalDate> between = bare.days.get(0).datesUntil(bare.last()).filter(d -> ChronoUnit.DAYS.between(bare.days.get(0), d) % every == 0).toList();
    GrowthTrend trend = of(measured, between, WANDER);
    List<State> states = trend.smoothed();
    List<Point> out = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      out.add(point(trend.days.get(i), states.get(i)));
    }
    return out;
  }

  private static Point point(LocalDate day, State s) {
    Estimate v = Estimate.normal(s.v, Math.sqrt(s.vv));
    return new Point(
        day, Estimate.normal(s.h, Math.sqrt(s.hh)), new Estimate(Math.max(0, v.p05()), Math.max(0, v.p50()), Math.max(0, v.p95())));
  }
}
