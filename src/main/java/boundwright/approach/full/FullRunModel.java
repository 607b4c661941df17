package boundwright.approach.full;

import boundwright.approach.weather.Weather;
import boundwright.inference.GroupedNormal;
import boundwright.inference.Mixture;
import boundwright.inference.SpreadSearch;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.random.RandomGenerator;

/**
 * Distance by approach steps, pooled over the squad. With {@code z = (steps - 12) / 8} a jump is
 * {@code q0 + own offset + r (q1 z + q2 z2 + q3 z3 + own slope z + own bend z2 + form of the time + form of the day + wind, warmth and wet + scatter)}:
 * a quadratic of the squad (Beres et al. 2014: quadratic in steps; read in the abstract) with a cubic part kept near nothing, since no squad's law is a
 * quadratic; each athlete's own offset, slope and bend; a level that wanders from day to day as a random walk; and r, how far the athlete jumps over
 * 13 m, since longer jumps gain and scatter more. The first guesses below are judgement; wind starts from what was published ({@link WindEffect}). All
 * but the six spreads is closed form ({@link GroupedNormal}); the spreads are averaged over ({@link SpreadSearch}). Immutable.
 */
public final class FullRunModel {
  /** Only so many of an athlete's newest jumps count (judgement). */
  public static final int NEWEST = 60;
  /** Further than this beyond the steps that anybody has jumped from it is the first guess that answers, not the squad (judgement). */
  public static final int FURTHEST = 4;
  /** Between these steps the first guess alone is honest; outside it missed too often on simulated jumpers (own output; docs/full-run.md). */
  static final int GUESS_FROM = 6;
  static final int GUESS_TO = 20;

  static final int SPREADS = 6;
  private static final double DAYS_A_YEAR = 365.25;
  private static final int POINTS = 48;

  /** Prior means and spreads: level from 12 steps, gain from 8 to 16, bend, what is no quadratic, then the weather's [m], of a jumper of 13 m. */
  private static final double[] MEAN = {13, 1.2, -0.5, 0, WindEffect.PER_MPS, WindEffect.BEND, 0, 0};
  private static final double[] SD = {3, 0.60, 0.45, 0.25, WindEffect.PER_MPS_SD, WindEffect.BEND_SD, WindEffect.PER_DEGREE_SD, WindEffect.WET_SD};
  private static final int WIND = 4;

  /** First guesses of the spreads [m]: offset, slope (8 to 16), wander in a year, day, jump, bend; each known to a factor of about 1.8. */
  private static final double[] SPREAD = {1.2, 0.30, 0.35, 0.10, 0.25, 0.15};
  private static final double SPREAD_LOG_SD = 0.6;

  private final Map<Long, Integer> places = new HashMap<>();
  private final List<Own> athletes;
  private final Set<Integer> steps = new TreeSet<>();
  private final List<Fit> fits = new ArrayList<>();
  private final Knows knows;

  /** What is known of the weather anywhere; what is not is left out of the model. */
  record Knows(boolean wind, boolean temperature, boolean wet) {}

  /** An athlete's jumps as rows. */
  private static final class Own {
    private final long athlete;
    private final double scale;
    private final double[] y;
    private final double[][] x;
    private final double[] z;
    private final double[] daysAgo;
    private final double[] windVariance;
    private final int[] steps;

    Own(long athlete, double scale, int n) {
      this.athlete = athlete;
      this.scale = scale;
      this.y = new double[n];
      this.x = new double[n][];
      this.z = new double[n];
      this.daysAgo = new double[n];
      this.windVariance = new double[n];
      this.steps = new int[n];
    }
  }

  /** The model at one set of spreads. */
  private static final class Fit {
    private final double weight;
    private final double[] spread;
    private final GroupedNormal normal;

    Fit(double weight, double[] spread, GroupedNormal normal) {
      this.weight = weight;
      this.spread = spread;
      this.normal = normal;
    }
  }

  private FullRunModel(List<Own> athletes, Knows knows) {
    this.athletes = athletes;
    this.knows = knows;
    for (Own own : athletes) {
      places.put(own.athlete, places.size());
      for (int n : own.steps) {
        steps.add(n);
      }
    }
  }

  /**
   * Learned from a squad's jumps in any order.
   *
   * @param today jumps after it count as today's
   * @param random seed it to get the same answer twice
   */
  public static FullRunModel of(List<SeenDistance> jumps, LocalDate today, RandomGenerator random) {
    Map<Long, List<SeenDistance>> by = new LinkedHashMap<>();
    jumps.forEach(j -> by.computeIfAbsent(j.athleteId(), id -> new ArrayList<>()).add(j));
    Knows knows =
        new Knows(
            jumps.stream().anyMatch(j -> j.weather().knowsWind()),
            jumps.stream().anyMatch(j -> j.weather().temperature_c() != null),
            jumps.stream().anyMatch(j -> j.weather().wet() != null));
    List<Own> owns = new ArrayList<>();
    by.forEach((id, list) -> owns.add(own(id, list, today, knows)));
    FullRunModel model = new FullRunModel(owns, knows);
    for (SpreadSearch.Weighed w : SpreadSearch.near(SPREAD, SPREAD_LOG_SD, logs -> model.normal(spreads(logs)).logLikelihood(), POINTS, random)) {
      double[] spread = spreads(w.at());
      model.fits.add(new Fit(w.weight(), spread, model.normal(spread)));
    }
    return model;
  }

  private static Own own(long id, List<SeenDistance> all, LocalDate today, Knows knows) {
    List<SeenDistance> jumps = new ArrayList<>(all);
    jumps.sort(Comparator.comparing(SeenDistance::date));
    jumps = jumps.subList(Math.max(0, jumps.size() - NEWEST), jumps.size());
    int n = jumps.size();
    double scale = 0;
    for (SeenDistance j : jumps) {
      double z = z(j.steps());
      scale += j.distance_m() / (MEAN[0] + MEAN[1] * z + MEAN[2] * z * z) / n;
    }
    Own own = new Own(id, scale, n);
    for (int i = 0; i < n; i++) {
      SeenDistance j = jumps.get(i);
      own.y[i] = j.distance_m();
      own.z[i] = z(j.steps());
      own.steps[i] = j.steps();
      own.daysAgo[i] = Math.max(0, ChronoUnit.DAYS.between(j.date(), today));
      own.x[i] = row(scale, own.z[i], j.weather(), knows);
      double sd = knows.wind ? j.weather().believed().sd() : 0;
      own.windVariance[i] = (MEAN[WIND] * MEAN[WIND] + SD[WIND] * SD[WIND]) * sd * sd;
    }
    return own;
  }

  private static double z(int steps) {
    return (steps - 12) / 8.0;
  }

  private static double[] row(double scale, double z, Weather weather, Knows knows) {
    double[] x = new double[MEAN.length];
    x[0] = 1;
    x[1] = scale * z;
    x[2] = scale * z * z;
    x[3] = scale * z * z * z;
    if (knows.wind) {
      Weather.Believed wind = weather.believed();
      x[WIND] = scale * wind.mean();
      x[WIND + 1] = scale * wind.square();
    }
    Double warm = weather.temperature_c();
    x[WIND + 2] = warm == null ? 0 : scale * (warm - Weather.USUAL_TEMPERATURE_C);
    x[WIND + 3] = Boolean.TRUE.equals(weather.wet()) ? scale : 0;
    return x;
  }

  private static double[] spreads(double[] logs) {
    double[] out = new double[SPREADS];
    for (int i = 0; i < SPREADS; i++) {
      out[i] = Math.exp(logs[i]);
    }
    return out;
  }

  private GroupedNormal normal(double[] s) {
    double[][] precision = new double[MEAN.length][MEAN.length];
    for (int i = 0; i < MEAN.length; i++) {
      precision[i][i] = 1 / (SD[i] * SD[i]);
    }
    GroupedNormal out = new GroupedNormal(MEAN, precision);
    for (Own o : athletes) {
      int n = o.y.length;
      double r2 = o.scale * o.scale;
      double[][] v = new double[n][n];
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          double day = o.daysAgo[i] == o.daysAgo[j] ? s[3] * s[3] : 0;
          v[i][j] =
              s[0] * s[0]
                  + r2 * (own(s, o.z[i], o.z[j]) + s[2] * s[2] * Math.min(o.daysAgo[i], o.daysAgo[j]) / DAYS_A_YEAR + day);
          v[j][i] = v[i][j];
        }
        v[i][i] += r2 * (s[4] * s[4] + o.windVariance[i]);
      }
      out.add(o.y, o.x, v);
    }
    return out;
  }

  /** What own slope and bend have in common at two numbers of steps. */
  private static double own(double[] s, double z, double other) {
    return s[1] * s[1] * z * other + s[5] * s[5] * z * z * other * other;
  }

  /** Whether there is a jump of this athlete. */
  public boolean knows(long athlete) {
    return places.containsKey(athlete);
  }

  /** Steps that anybody has jumped from, fewest first. */
  public List<Integer> steps() {
    return List.copyOf(steps);
  }

  /** Steps that this athlete has jumped from, fewest first. */
  public List<Integer> steps(long athlete) {
    Set<Integer> out = new TreeSet<>();
    Integer place = places.get(athlete);
    if (place != null) {
      for (int n : athletes.get(place).steps) {
        out.add(n);
      }
    }
    return List.copyOf(out);
  }

  /** Jumps of this athlete that count. */
  public int jumps(long athlete) {
    Integer place = places.get(athlete);
    return place == null ? 0 : athletes.get(place).y.length;
  }

  /** Jumps that count, of everybody. */
  public int jumps() {
    return athletes.stream().mapToInt(o -> o.y.length).sum();
  }

  /** How many athletes have jumped from two different numbers of steps or more: they tell what more steps give. */
  public int tellGain() {
    int out = 0;
    for (Own o : athletes) {
      Set<Integer> own = new HashSet<>();
      for (int n : o.steps) {
        own.add(n);
      }
      out += own.size() > 1 ? 1 : 0;
    }
    return out;
  }

  /**
   * What is believed of an athlete's jumps today from so many steps, in still air.
   *
   * @throws IllegalArgumentException without a jump of this athlete
   */
  public FullRunForecast forecast(long athlete, int steps) {
    SeenDistance.steps(steps);
    Integer place = places.get(athlete);
    if (place == null) {
      throw new IllegalArgumentException("No jump of athlete " + athlete);
    }
    Own o = athletes.get(place);
    double z = z(steps);
    double[] x = row(o.scale, z, Weather.UNKNOWN, new Knows(false, false, false));
    double r = o.scale;
    List<FullRunForecast.Form> forms = new ArrayList<>();
    for (Fit f : fits) {
      double[] s = f.spread;
      double[] with = new double[o.y.length];
      for (int i = 0; i < with.length; i++) {
        with[i] = s[0] * s[0] + r * r * own(s, z, o.z[i]);
      }
      GroupedNormal.Told level = f.normal.value(place, x, with, s[0] * s[0] + r * r * own(s, z, z));
      GroupedNormal.Told wind = f.normal.coefficient(unit(WIND));
      GroupedNormal.Told bend = f.normal.coefficient(unit(WIND + 1));
      forms.add(
          new FullRunForecast.Form(
              f.weight, level.mean(), Math.sqrt(Math.max(level.variance(), 0)), r * s[3], r * s[4], r * s[2] / Math.sqrt(DAYS_A_YEAR),
              r * wind.mean(), r * Math.sqrt(wind.variance()), r * bend.mean()));
    }
    return new FullRunForecast(steps, forms);
  }

  /** What wind, warmth and a wet runway do to a jump of 13 m. */
  public WindEffect weather() {
    return new WindEffect(
        knows.wind ? coefficient(WIND).estimate() : null,
        knows.temperature ? coefficient(WIND + 2).estimate() : null,
        knows.wet ? coefficient(WIND + 3).estimate() : null,
        coefficient(WIND + 1).quantile(0.5));
  }

  /** The squad's gain from 8 to 16 steps of a jumper of 13 m [m]. */
  public Mixture gain() {
    return coefficient(1);
  }

  private Mixture coefficient(int which) {
    List<Mixture.Part> parts = new ArrayList<>();
    for (Fit f : fits) {
      GroupedNormal.Told told = f.normal.coefficient(unit(which));
      parts.add(new Mixture.Part(told.mean(), Math.sqrt(told.variance()), f.weight));
    }
    return new Mixture(parts);
  }

  private static double[] unit(int which) {
    double[] out = new double[MEAN.length];
    out[which] = 1;
    return out;
  }
}
