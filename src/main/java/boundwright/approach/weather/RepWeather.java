package boundwright.approach.weather;

import boundwright.inference.GroupedNormal;
import boundwright.inference.Mixture;
import boundwright.inference.SpreadSearch;
import boundwright.quantity.Decimals;
import boundwright.quantity.Estimate;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;

/**
 * What wind, warmth and wet do to the length of a bounding rep, as shares of it: a regression of the logarithm of the length on the weather,
 * with a level of each athlete in each drill, a form that wanders, and days that are better and worse, for one and for all: a day's weather is the
 * same for all its reps, and so is the error of its wind. The wind starts from the triple jump's 7.6 cm per m/s on 13 m (read; wide), warmth and wet from nothing (spreads: judgement). What was
 * never noted is left out; a wind that was estimated tells less.
 *
 * @param wind won per m/s of tail wind, or null when none was noted
 * @param warmth won per degree Celsius, or null
 * @param wet won on a wet runway, or null
 * @param reps that were used
 * @param days of them that have a weather
 */
public record RepWeather(@Nullable Estimate wind, @Nullable Estimate warmth, @Nullable Estimate wet, int reps, int days) {
  /** Only so many of an athlete's newest reps count (judgement). */
  public static final int NEWEST = 60;

  private static final double[] MEAN = {2.3, 0.0058, 0, 0};
  private static final double[] SD = {1, 0.004, 0.0008, 0.012};
  private static final double SLOT_SD = 0.6;
  /** Newest days with a weather that count; older reps tell of levels only (judgement). */
  private static final int DAYS = 30;

  /** First guesses: an athlete's day, rep, wander in a year, a day of everybody. */
  private static final double[] SPREAD = {0.015, 0.03, 0.05, 0.008};
  private static final double SPREAD_LOG_SD = 0.6;
  private static final int POINTS = 24;

  /**
   * A rep with its length.
   *
   * @param athleteId whose
   * @param drill what makes reps comparable: sequence, approach steps, surface
   * @param date the day
   * @param length_m from the mark to the landing [m]
   * @param weather of it, or the day's
   */
  public record Seen(long athleteId, String drill, LocalDate date, double length_m, Weather weather) {
    private Seen without() {
      return new Seen(athleteId, drill, date, length_m, Weather.UNKNOWN);
    }
  }

  /** Learned from reps in any order; nothing of what none of them knows. */
  public static RepWeather of(List<Seen> all, LocalDate today, RandomGenerator random) {
    Map<Long, List<Seen>> by = new LinkedHashMap<>();
    all.stream().sorted(Comparator.comparing(Seen::date).reversed()).forEach(r -> by.computeIfAbsent(r.athleteId, id -> new ArrayList<>()).add(r));
    by.values().removeIf(list -> list.stream().allMatch(r -> r.weather.isUnknown()));
    by.replaceAll((id, list) -> list.subList(0, Math.min(NEWEST, list.size())));
    List<LocalDate> days =
        by.values().stream().flatMap(List::stream).filter(r -> !r.weather.isUnknown()).map(Seen::date).distinct().sorted(Comparator.reverseOrder()).limit(DAYS).toList();
    by.replaceAll((id, list) -> list.stream().map(r -> days.contains(r.date) ? r : r.without()).toList());
    List<Seen> used = by.values().stream().flatMap(List::stream).toList();
    boolean wind = used.stream().anyMatch(r -> r.weather.knowsWind());
    boolean warm = used.stream().anyMatch(r -> r.weather.temperature_c() != null);
    boolean wet = used.stream().anyMatch(r -> r.weather.wet() != null);
    if (!wind && !warm && !wet) {
      return new RepWeather(null, null, null, 0, 0);
    }
    List<Group> groups = by.values().stream().map(reps -> new Group(reps, days, wind, today)).toList();
    double[] windVariance = days.stream().mapToDouble(d -> wind ? windVariance(used, d) : 0).toArray();
    List<SpreadSearch.Weighed> points =
        SpreadSearch.near(SPREAD, SPREAD_LOG_SD, logs -> model(groups, windVariance, logs).logLikelihood(), POINTS, random);
    List<GroupedNormal> models = points.stream().map(p -> model(groups, windVariance, p.at())).toList();
    List<Mixture> effects = new ArrayList<>();
    for (int c = 1; c < MEAN.length; c++) {
      double[] unit = new double[MEAN.length + days.size()];
      unit[c] = 1;
      List<Mixture.Part> parts = new ArrayList<>();
      for (int i = 0; i < points.size(); i++) {
        GroupedNormal.Told told = models.get(i).coefficient(unit);
        parts.add(new Mixture.Part(told.mean(), Math.sqrt(told.variance()), points.get(i).weight()));
      }
      effects.add(new Mixture(parts));
    }
    return new RepWeather(
        wind ? effects.get(0).estimate() : null, warm ? effects.get(1).estimate() : null, wet ? effects.get(2).estimate() : null, used.size(), days.size());
  }

  /** An athlete's reps as the model takes them; only the covariance changes from one set of spreads to the next. */
  private static final class Group {
    private final double[] y;
    private final double[][] x;
    private final double[] ago;
    private final boolean[][] sameDrill;

    Group(List<Seen> reps, List<LocalDate> days, boolean wind, LocalDate today) {
      int n = reps.size();
      y = new double[n];
      x = new double[n][MEAN.length + days.size()];
      ago = new double[n];
      sameDrill = new boolean[n][n];
      for (int i = 0; i < n; i++) {
        Seen r = reps.get(i);
        y[i] = Math.log(r.length_m);
        ago[i] = Math.max(0, ChronoUnit.DAYS.between(r.date, today));
        x[i][0] = 1;
        x[i][1] = wind ? r.weather.believed().mean() : 0;
        Double warm = r.weather.temperature_c();
        x[i][2] = warm == null ? 0 : warm - Weather.USUAL_TEMPERATURE_C;
        x[i][3] = Boolean.TRUE.equals(r.weather.wet()) ? 1 : 0;
        int at = days.indexOf(r.date);
        if (at >= 0) {
          x[i][MEAN.length + at] = 1;
        }
        for (int j = 0; j <= i; j++) {
          sameDrill[i][j] = r.drill.equals(reps.get(j).drill);
        }
      }
    }

    /** Of the reps at these variances: an athlete's day, a rep, wander in a day. */
    double[][] covariance(double day, double rep, double wander) {
      int n = y.length;
      double[][] v = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          double together = ago[i] == ago[j] ? day : 0;
          v[i][j] = (sameDrill[i][j] ? SLOT_SD * SLOT_SD : 0) + together + wander * Math.min(ago[i], ago[j]);
          v[j][i] = v[i][j];
        }
        v[i][i] += rep;
      }
      return v;
    }
  }

  /** @param windVariance of the days, by the error of their wind */
  private static GroupedNormal model(List<Group> groups, double[] windVariance, double[] logs) {
    double day = Math.exp(2 * logs[0]);
    double rep = Math.exp(2 * logs[1]);
    double wander = Math.exp(2 * logs[2]) / 365.25;
    double shared = Math.exp(2 * logs[3]);
    int p = MEAN.length + windVariance.length;
    double[] mean = Arrays.copyOf(MEAN, p);
    double[][] precision = new double[p][p];
    for (int i = 0; i < p; i++) {
      precision[i][i] = i < MEAN.length ? 1 / (SD[i] * SD[i]) : 1 / (shared + windVariance[i - MEAN.length]);
    }
    GroupedNormal out = new GroupedNormal(mean, precision);
    groups.forEach(g -> out.add(g.y, g.x, g.covariance(day, rep, wander)));
    return out;
  }

  /** A day's wind is wrong by the same amount for everybody. */
  private static double windVariance(List<Seen> used, LocalDate day) {
    double sd = used.stream().filter(r -> r.date.equals(day)).mapToDouble(r -> r.weather.believed().sd()).findFirst().orElse(0);
    return (MEAN[1] * MEAN[1] + SD[1] * SD[1]) * sd * sd;
  }

  /** The sentence for the coach; empty when nothing was noted. */
  public String words() {
    StringBuilder out = new StringBuilder();
    effect(out, wind, "each m/s of tail wind", 1);
    effect(out, warmth, "ten degrees more", 10);
    effect(out, wet, "a wet runway", 1);
    return out.isEmpty()
        ? ""
        : "In " + Notes.counted(reps, "bounding rep") + " on " + Notes.counted(days, "day") + " with a weather: " + out + ". The marks are not moved for it.";
  }

  private static void effect(StringBuilder out, @Nullable Estimate e, String what, double times) {
    if (e != null) {
      out.append(out.isEmpty() ? "" : "; ").append(what).append(' ').append(percent(times * e.p50())).append(" (").append(percent(times * e.p05())).append(" to ")
          .append(percent(times * e.p95())).append(e.told() ? ")" : "), the data cannot tell which way");
    }
  }

  private static String percent(double share) {
    String size = Decimals.fixed(Math.abs(100 * share), 1);
    return (size.equals("0.0") ? "" : share < 0 ? "-" : "+") + size + " %";
  }
}
