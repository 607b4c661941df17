package boundwright.takeoffs;

import boundwright.footfall.RunJumps;
import boundwright.inference.GroupedNormal;
import boundwright.inference.Mixture;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Where this athlete's repeated take-offs fall, learned from their own reps: a normal linear model whose days are groups, closed form
 * ({@link GroupedNormal}). An older day tells less of today: besides a trend, its level may have moved by chance, each day by its own. How
 * widely they scatter is one factor on the usual variances with nine values, weighed by Bayes' rule. Learned afresh from the newest
 * {@value #MOST_REPS} measured reps on each question; nothing is random, nothing is kept beside the reps.
 */
final class RunJumpModel {
  /** Newest measured reps that are learned from (judgement: some years of it). */
  static final int MOST_REPS = 120;
  /** Error variance of a tape laid to a footprint [m2], 2.5 cm (judgement). */
  private static final double TAPE = 0.025 * 0.025;
  /** Logarithms of the factor and its standard deviation before anything is seen (judgement). */
  private static final double[] FACTORS = {-1.6, -1.2, -0.8, -0.4, 0, 0.4, 0.8, 1.2, 1.6};
  private static final double FACTOR_SD = 0.8;

  private final Lengths lengths;
  private final LocalDate date;
  private final List<Part> parts = new ArrayList<>();
  private final int measured;
  /** Group of the day asked about, the last, and what was seen on it. */
  private final int today;
  private final List<Seen> seenToday;

  /** What is believed with one factor of scatter. */
  private record Part(double factor, double weight, GroupedNormal belief) {}

  /** One measured place. */
  private record Seen(RunJumpShape shape, int place, int rep, double at) {}

  /**
   * Learns.
   *
   * @param reps of the athlete, oldest first
   * @param date the day asked about; reps after it are left out
   */
  RunJumpModel(Lengths lengths, List<RunJumpRep> reps, LocalDate date) {
    this.lengths = lengths;
    this.date = date;
    List<RunJumpRep> all = reps.stream().filter(r -> r.measured() && !r.date().isAfter(date)).toList();
    List<RunJumpRep> told = all.subList(Math.max(0, all.size() - MOST_REPS), all.size());
    measured = told.size();
    Map<LocalDate, List<Seen>> days = new TreeMap<>();
    int number = 0;
    for (RunJumpRep r : told) {
      RunJumpShape shape = shape(r.pattern(), r.steps(), r.inSand(), r.date());
      List<Seen> day = days.computeIfAbsent(r.date(), d -> new ArrayList<>());
      double[] places = r.places();
      for (int c = 0; c < places.length; c++) {
        if (!Double.isNaN(places[c])) {
          day.add(new Seen(shape, c, number, places[c]));
        }
      }
      number++;
    }
    seenToday = days.computeIfAbsent(date, d -> new ArrayList<>());
    today = days.size() - 1;
    learn(days.values());
  }

  private RunJumpShape shape(RunJumps pattern, int steps, boolean inSand, LocalDate on) {
    return new RunJumpShape(lengths, pattern, steps, inSand, ChronoUnit.DAYS.between(on, date) / 30.0);
  }

  private void learn(Collection<List<Seen>> days) {
    double[] logs = new double[FACTORS.length];
    List<GroupedNormal> beliefs = new ArrayList<>();
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < FACTORS.length; i++) {
      GroupedNormal b = prior();
      double factor = Math.exp(FACTORS[i]);
      days.forEach(seen -> add(b, seen, factor));
      logs[i] = b.logLikelihood() - FACTORS[i] * FACTORS[i] / (2 * FACTOR_SD * FACTOR_SD);
      most = Math.max(most, logs[i]);
      beliefs.add(b);
    }
    double sum = 0;
    for (double l : logs) {
      sum += Math.exp(l - most);
    }
    for (int i = 0; i < FACTORS.length; i++) {
      parts.add(new Part(Math.exp(FACTORS[i]), Math.exp(logs[i] - most) / sum, beliefs.get(i)));
    }
  }

  private GroupedNormal prior() {
    double[][] precision = new double[RunJumpShape.COUNT][RunJumpShape.COUNT];
    for (int i = 0; i < RunJumpShape.COUNT; i++) {
      double variance = RunJumpShape.SD[i] * RunJumpShape.SD[i] + (i == RunJumpShape.FLIGHT ? lengths.sandSd() * lengths.sandSd() : 0);
      precision[i][i] = 1 / variance;
    }
    return new GroupedNormal(new double[RunJumpShape.COUNT], precision);
  }

  private static void add(GroupedNormal b, List<Seen> seen, double factor) {
    int n = seen.size();
    double[] y = new double[n];
    double[][] x = new double[n][];
    double[][] v = new double[n][n];
    for (int i = 0; i < n; i++) {
      Seen s = seen.get(i);
      y[i] = s.at - s.shape.base[s.place];
      x[i] = s.shape.where[s.place];
      for (int j = 0; j < n; j++) {
        Seen o = seen.get(j);
        double own = s.rep == o.rep ? s.shape.own(s.place, o.place, factor) : 0;
        v[i][j] = (day(factor) + s.shape.walked) * s.shape.base[s.place] * o.shape.base[o.place] + own;
      }
      v[i][i] += TAPE;
    }
    b.add(y, x, v);
  }

  private static double day(double factor) {
    return factor * RunJumpShape.DAY * RunJumpShape.DAY;
  }

  /** Reps with a measured place that it rests on. */
  int measured() {
    return measured;
  }

  /**
   * Where the places of a rep on the day fall, take-off 2 to the landing, from the mark.
   *
   * @param places each with its 90 % interval [m]; the last is the landing
   * @param lastTakeOff mean and standard deviation of the last take-off [m]
   * @param landing of the landing [m]
   * @param together covariance of the two [m2]
   * @param mark standard deviation of the first contact against its mark [m]
   */
  record Told(List<Estimate> places, Normal lastTakeOff, Normal landing, double together, double mark) {
    Told {
      places = List.copyOf(places);
    }
  }

  /** A normal quantity [m]. */
  record Normal(double mean, double sd) {}

  /** Asks about a rep on the day. */
  Told told(RunJumps pattern, int steps, boolean inSand) {
    RunJumpShape shape = shape(pattern, steps, inSand, date);
    int n = shape.n;
    List<Mixture> places = new ArrayList<>();
    for (int c = 0; c < n; c++) {
      places.add(mixture(shape, unit(n, c)));
    }
    Mixture last = places.get(n - 2);
    Mixture landing = places.get(n - 1);
    double[] between = unit(n, n - 1);
    between[n - 2] = -1;
    double together = (last.variance() + landing.variance() - mixture(shape, between).variance()) / 2;
    return new Told(places.stream().map(Mixture::estimate).toList(), normal(last), normal(landing), together, Math.sqrt(shape.placement));
  }

  private static double[] unit(int n, int c) {
    double[] out = new double[n];
    out[c] = 1;
    return out;
  }

  /** What is believed of a sum of the places. */
  private Mixture mixture(RunJumpShape shape, double[] of) {
    double base = 0;
    double[] row = new double[RunJumpShape.COUNT];
    for (int c = 0; c < of.length; c++) {
      base += of[c] * shape.base[c];
      for (int i = 0; i < row.length; i++) {
        row[i] += of[c] * shape.where[c][i];
      }
    }
    List<Mixture.Part> out = new ArrayList<>();
    for (Part p : parts) {
      double variance = day(p.factor) * base * base;
      for (int c = 0; c < of.length; c++) {
        for (int d = 0; d < of.length; d++) {
          variance += of[c] * of[d] * shape.own(c, d, p.factor);
        }
      }
      double[] with = new double[seenToday.size()];
      for (int i = 0; i < with.length; i++) {
        Seen s = seenToday.get(i);
        with[i] = day(p.factor) * base * s.shape.base[s.place];
      }
      GroupedNormal.Told t = p.belief.value(today, row, with, variance);
      out.add(new Mixture.Part(base + t.mean(), Math.sqrt(t.variance()), p.weight));
    }
    return new Mixture(out);
  }

  private static Normal normal(Mixture m) {
    return new Normal(m.mean(), Math.sqrt(m.variance()));
  }
}
