package boundwright.athlete.growth;

import boundwright.inference.Mixture;
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
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Height and its speed as local linear trends ({@link GrowthCourse}), one for each time at which the peak of the height spurt may lie, before the
 * first height or after it, on a boy's course or on a girl's. All are alike before the first height; what the heights say weighs them (a static
 * mixture of Kalman filters; Durbin and Koopman, Time Series Analysis by State Space Methods, 2nd ed. 2012, ch. 4; memory). Days up to now are
 * answered by the filters, days looked back on by the Rauch-Tung-Striebel smoothers. Heights [cm], time [years of {@value #YEAR_DAYS} days], speed
 * [cm/y].
 *
 * <p>Birth date and sex are not asked, so whoever is early or late is told as well as others, and who is of no known age too.
 */
public final class GrowthTrend {
  /** Days in a year. */
  public static final double YEAR_DAYS = 365.25;
  /** Standard deviation of one reading of a height [cm]: asked for by those who ordered the program, and common practice. */
  public static final double READING_SD_CM = 0.4;
  /** Standard deviation of the speed about its course before any height [cm/y]; learned as the courses are. */
  static final double SPEED_SD = 0.85;
  /** Height before any height [cm]; so unsure that it says nothing. */
  static final double HEIGHT_MEAN = 150;
  static final double HEIGHT_SD = 100;
  /** Years from the first height at which the peak may lie: from, to, and every so many (judgement). */
  static final double PEAK_FROM = -6;
  static final double PEAK_TO = 6;
  static final double PEAK_STEP = 0.5;
  /** Trends that weigh less change no figure that is shown. */
  private static final double LEAST_WEIGHT = 1e-8;

  /** One trend: the peak's years from the first height, the states day by day, and the logarithm of its weight after each day, not yet summed to 1. */
  private static final class Member {
    private final GrowthCourse course;
    private final double peak_y;
    private final List<GrowthState> filtered;
    private final double[] log;

    Member(GrowthCourse course, double peak_y, List<GrowthState> filtered, double[] log) {
      this.course = course;
      this.peak_y = peak_y;
      this.filtered = filtered;
      this.log = log;
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

  /** A state and its weight. */
  record Weighed(GrowthState state, double weight) {}

  private final double wander;
  private final List<LocalDate> days;
  private final List<Member> members;

  private GrowthTrend(double wander, List<LocalDate> days, List<Member> members) {
    this.wander = wander;
    this.days = days;
    this.members = members;
  }

  /**
   * Learned from heights.
   *
   * @param measured in any order, at least one; more than one of a day are each a reading
   */
  public static GrowthTrend of(List<Measurement> measured) {
    return of(measured, List.of(), 1);
  }

  /**
   * As {@link #of(List)}, with days between that are asked for.
   *
   * @param wander times the wander of the courses
   */
  static GrowthTrend of(List<Measurement> measured, Collection<LocalDate> between, double wander) {
    TreeMap<LocalDate, List<Double>> byDay = new TreeMap<>();
    measured.stream().sorted(Comparator.comparing(Measurement::date)).forEach(
        m -> byDay.computeIfAbsent(m.date(), d -> new ArrayList<>()).add(100 * m.height_m()));
    LocalDate first = byDay.firstKey();
    between.stream().filter(d -> !d.isBefore(first)).forEach(d -> byDay.computeIfAbsent(d, day -> new ArrayList<>()));
    List<LocalDate> days = List.copyOf(byDay.keySet());
    double[] at = days.stream().mapToDouble(d -> years(first, d)).toArray();
    List<List<Double>> readings = List.copyOf(byDay.values());
    List<Member> members = new ArrayList<>();
    for (GrowthCourse course : GrowthCourse.ALL) {
      for (double peak = PEAK_FROM; peak <= PEAK_TO; peak += PEAK_STEP) {
        members.add(member(course, peak, wander, at, readings));
      }
    }
    return new GrowthTrend(wander, days, members);
  }

  private static Member member(GrowthCourse course, double peak, double wander, double[] at, List<List<Double>> readings) {
    GrowthState now = new GrowthState(HEIGHT_MEAN, course.speed(-peak), HEIGHT_SD * HEIGHT_SD, 0, SPEED_SD * SPEED_SD);
    double variance = READING_SD_CM * READING_SD_CM;
    List<GrowthState> filtered = new ArrayList<>(at.length);
    double[] log = new double[at.length];
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      now = i == 0 ? now : course.after(now, at[i - 1] - peak, at[i] - at[i - 1], wander);
      for (double height : readings.get(i)) {
        double s = now.hh() + variance;
        sum -= 0.5 * (Math.log(2 * Math.PI * s) + (height - now.h()) * (height - now.h()) / s);
        now = now.reading(height, variance);
      }
      filtered.add(now);
      log[i] = sum;
    }
    return new Member(course, peak, filtered, log);
  }

  /** Years from one day to another. */
  static double years(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to) / YEAR_DAYS;
  }

  /** Weights of the trends, in their order, by the heights up to a day; they add up to 1. */
  private double[] weights(int day) {
    double most = members.stream().mapToDouble(m -> m.log[day]).max().orElseThrow();
    double[] w = members.stream().mapToDouble(m -> Math.exp(m.log[day] - most)).toArray();
    double sum = 0;
    for (double x : w) {
      sum += x;
    }
    double least = LEAST_WEIGHT * sum;
    double kept = 0;
    for (int i = 0; i < w.length; i++) {
      w[i] = w[i] < least ? 0 : w[i];
      kept += w[i];
    }
    for (int i = 0; i < w.length; i++) {
      w[i] /= kept;
    }
    return w;
  }

  /** What the heights up to one of the days say of that day. */
  List<Weighed> filtered(int day) {
    return weighed(day, m -> m.filtered.get(day));
  }

  private List<Weighed> weighed(int day, Function<Member, GrowthState> state) {
    double[] w = weights(day);
    List<Weighed> out = new ArrayList<>();
    for (int i = 0; i < w.length; i++) {
      if (w[i] > 0) {
        out.add(new Weighed(state.apply(members.get(i)), w[i]));
      }
    }
    return out;
  }

  /** What all heights say of each of the days, in their order. */
  List<List<Weighed>> smoothed() {
    double[] w = weights(days.size() - 1);
    List<List<Weighed>> out = new ArrayList<>();
    days.forEach(d -> out.add(new ArrayList<>()));
    for (int i = 0; i < w.length; i++) {
      if (w[i] > 0) {
        List<GrowthState> states = smoothed(members.get(i));
        for (int d = 0; d < states.size(); d++) {
          out.get(d).add(new Weighed(states.get(d), w[i]));
        }
      }
    }
    return out;
  }

  private List<GrowthState> smoothed(Member m) {
    List<GrowthState> out = new ArrayList<>(m.filtered);
    for (int i = days.size() - 2; i >= 0; i--) {
      double t = years(days.get(i), days.get(i + 1));
      GrowthState f = m.filtered.get(i);
      GrowthState predicted = m.course.after(f, years(days.get(0), days.get(i)) - m.peak_y, t, wander);
      out.set(i, f.knowing(predicted, out.get(i + 1), GrowthCourse.gained(t), GrowthCourse.left(t)));
    }
    return out;
  }

  /** The last day with a height. */
  public LocalDate last() {
    return days.get(days.size() - 1);
  }

  private List<Weighed> ahead(LocalDate day) {
    double from = years(days.get(0), last());
    double t = years(last(), day);
    int at = days.size() - 1;
    return weighed(at, m -> m.course.after(m.filtered.get(at), from - m.peak_y, t, wander));
  }

  /**
   * What the heights up to the last one say of a day on or after it: nothing is known of what came since, so it grows less sure.
   *
   * @param day not before {@link #last}
   */
  public Point on(LocalDate day) {
    return point(day, ahead(day));
  }

  /** Half the 90 % interval of the speed on a day not before {@link #last} [cm/y], as it will be without another height. */
  public double unsure_cm_y(LocalDate day) {
    Mixture speed = speed(ahead(day));
    return (speed.quantile(0.95) - speed.quantile(0.05)) / 2;
  }

  /** The chance that the speed lies below this [cm/y], on the last day with a height. */
  double below(double speed_cm_y) {
    return below(speed_cm_y, days.size() - 1);
  }

  private double below(double speed_cm_y, int day) {
    return speed(filtered(day)).below(speed_cm_y);
  }

  /** Whether the speed believed most lies above this [cm/y], on the last day with a height. */
  boolean isAbove(double speed_cm_y) {
    return below(speed_cm_y) < 0.5;
  }

  /** The last day with a height, not before {@code from}, on which the speed was told to be above this [cm/y] as it was known then; or null. */
  @Nullable LocalDate lastAbove(double speed_cm_y, LocalDate from) {
    for (int i = days.size() - 1; i >= 0 && !days.get(i).isBefore(from); i--) {
      if (below(speed_cm_y, i) < 0.5) {
        return days.get(i);
      }
    }
    return null;
  }

  /** The heights [cm] on these days, not before the first measured one, by day; days with a height are there too. */
  static Map<LocalDate, Estimate> heights(List<Measurement> measured, Collection<LocalDate> on) {
    GrowthTrend trend = of(measured, on, 1);
    List<List<Weighed>> states = trend.smoothed();
    Map<LocalDate, Estimate> out = new HashMap<>();
    for (int i = 0; i < states.size(); i++) {
      out.put(trend.days.get(i), height(states.get(i)));
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
    LocalDate first = measured.stream().map(Measurement::date).min(Comparator.naturalOrder()).orElseThrow();
    LocalDate last = measured.stream().map(Measurement::date).max(Comparator.naturalOrder()).orElseThrow();
    GrowthTrend trend = of(measured, first.datesUntil(last).filter(d -> ChronoUnit.DAYS.between(first, d) % every == 0).toList(), 1);
    List<List<Weighed>> states = trend.smoothed();
    List<Point> out = new ArrayList<>();
    for (int i = 0; i < states.size(); i++) {
      out.add(point(trend.days.get(i), states.get(i)));
    }
    return out;
  }

  private static Point point(LocalDate day, List<Weighed> states) {
    Estimate v = speed(states).estimate();
    return new Point(day, height(states), new Estimate(Math.max(0, v.p05()), Math.max(0, v.p50()), Math.max(0, v.p95())));
  }

  private static Mixture speed(List<Weighed> states) {
    return new Mixture(states.stream().map(s -> new Mixture.Part(s.state.v(), Math.sqrt(s.state.vv()), s.weight)).toList());
  }

  /** Trends hardly differ in the height, so its points are those of one normal with their mean and variance. */
  private static Estimate height(List<Weighed> states) {
    double mean = sum(states, GrowthState::h);
    double variance = sum(states, s -> s.hh() + (s.h() - mean) * (s.h() - mean));
    return Estimate.normal(mean, Math.sqrt(variance));
  }

  private static double sum(List<Weighed> states, ToDoubleFunction<GrowthState> of) {
    return states.stream().mapToDouble(s -> s.weight * of.applyAsDouble(s.state)).sum();
  }
}
