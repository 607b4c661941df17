package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Interval;
import boundwright.quantity.RefusedException;
import boundwright.readiness.RemlDeviance.Solution;
import boundwright.readiness.RemlDeviance.Sym;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * The trend of a test in a squad: a line for the squad and, where the scores allow it, a line per athlete that is pooled in part
 * towards the squad's: the fewer scores an athlete has, the nearer theirs lies to it. A linear mixed model with level and
 * slope per athlete, correlated, fitted by REML (criterion: {@link RemlDeviance}). Standard errors are given for the fitted
 * variances, so with few athletes they are somewhat too small. Units: scores as given, time as given.
 *
 * @param structure which differences between athletes could be fitted
 * @param level the squad's line at time 0
 * @param slope the squad's change per unit of time
 * @param spread the variances
 * @param criterion minus twice the REML log-likelihood
 * @param athletes each athlete's line, by number
 * @param notes what a reader has to know, in sentences; empty when all is well
 */
public record TrendModel(
    Structure structure, Coefficient level, Coefficient slope, Spread spread, double criterion, List<TrendLine> athletes, List<String> notes) {
  /** Where the model comes from. */
  public static final Source SOURCE = Sources.MIXED_MODEL;
  /** Athletes with scores on two days or more from which slopes per athlete are fitted (judgement). */
  public static final int MIN_ATHLETES_FOR_SLOPES = 3;

  private static final double NOTHING = 1e-4;

  /** Which differences between athletes are in the model. */
  public enum Structure {
    /** One line for all. */
    ONE_LINE,
    /** Each athlete their own level, one slope for all. */
    OWN_LEVELS,
    /** Each athlete their own level and slope. */
    OWN_LINES
  }

  /**
   * One score.
   *
   * @param athlete number of the athlete
   * @param time in any unit, from any start
   * @param value the score
   */
  public record Observation(long athlete, double time, double value) {}

  /**
   * A fixed effect.
   *
   * @param value estimate
   * @param se standard error
   */
  public record Coefficient(double value, double se) {}

  /**
   * How athletes differ and how scores scatter.
   *
   * @param levelVariance variance of the athletes' levels at time 0
   * @param slopeVariance variance of their slopes
   * @param covariance of level and slope
   * @param residualVariance variance of a score about the athlete's own line
   */
  public record Spread(double levelVariance, double slopeVariance, double covariance, double residualVariance) {
    /** Correlation of level at time 0 and slope; empty when one of them does not vary. */
    public Optional<Double> correlation() {
      double product = levelVariance * slopeVariance;
      return product > 0 ? Optional.of(Math.max(-1, Math.min(1, covariance / Math.sqrt(product)))) : Optional.empty();
    }
  }

  /**
   * Fits the model.
   *
   * @throws RefusedException if the scores are too few, all of one day, not finite, or lie on lines without any scatter
   */
  public static TrendModel fit(List<Observation> observations) {
    check(observations);
    RemlDeviance deviance = new RemlDeviance(observations);
    List<String> notes = new ArrayList<>();
    Structure structure = structure(observations, notes);
    double[] l =
        switch (structure) {
          case ONE_LINE -> new double[0];
          case OWN_LEVELS -> minimise(deviance, new double[][] {{1}, {0.2}, {5}});
          case OWN_LINES -> minimise(deviance, new double[][] {{1, 0, 1}, {0.2, 0, 0.2}, {5, 0, 2}, {1, 0, 0.1}});
        };
    Solution at = deviance.solve(l);
    if (at.s2() <= 1e-12 * deviance.totalSquares()) {
      throw new RefusedException(
          "The scores lie on straight lines without any scatter, so the error of the test cannot be told. Check that they were measured, and add more.");
    }
    sayWhatIsSingular(structure, l, notes);
    return assemble(structure, deviance, l, at, notes);
  }

  private static void check(List<Observation> observations) {
    Set<Double> times = new HashSet<>();
    Set<Double> values = new HashSet<>();
    for (Observation o : observations) {
      if (!Double.isFinite(o.time()) || !Double.isFinite(o.value())) {
        throw new RefusedException("A score of " + o.value() + " at " + o.time() + " is no score. Leave it out.");
      }
      times.add(o.time());
      values.add(o.value());
    }
    if (observations.size() < 4 || times.size() < 2) {
      throw new RefusedException(
          "A trend needs at least 4 scores on 2 different days; there are " + observations.size() + " on " + times.size() + ". Test again later.");
    }
    if (values.size() < 2) {
      throw new RefusedException("All " + observations.size() + " scores are the same, so no trend and no error can be told. Measure more finely.");
    }
  }

  // What the scores can carry: own slopes need enough athletes on two days and scores left over to tell slope from error.
  private static Structure structure(List<Observation> observations, List<String> notes) {
    Map<Long, Integer> counts = new HashMap<>();
    Map<Long, Set<Double>> times = new HashMap<>();
    for (Observation o : observations) {
      counts.merge(o.athlete(), 1, Integer::sum);
      times.computeIfAbsent(o.athlete(), k -> new HashSet<>()).add(o.time());
    }
    int onTwoDays = (int) times.values().stream().filter(t -> t.size() >= 2).count();
    int spare = 0;
    for (Map.Entry<Long, Integer> e : counts.entrySet()) {
      spare += e.getValue() - Math.min(2, times.getOrDefault(e.getKey(), Set.of()).size());
    }
    int repeats = observations.size() - counts.size();
    if (counts.size() < 2) {
      notes.add("Only one athlete: this is a plain line through their scores.");
      return Structure.ONE_LINE;
    }
    if (repeats < 2) {
      notes.add(
          "Hardly an athlete was tested twice, so differences between athletes cannot be told from the error of the test: one line for all is shown.");
      return Structure.ONE_LINE;
    }
    if (onTwoDays < MIN_ATHLETES_FOR_SLOPES || spare < 3) {
      notes.add("Too few athletes were tested often enough to tell their trends apart: each has an own level and shares the squad's trend.");
      return Structure.OWN_LEVELS;
    }
    return Structure.OWN_LINES;
  }

  // The criterion does not change when a column of L changes sign, so it is smooth across 0 and needs no bounds.
  private static double[] minimise(RemlDeviance deviance, double[][] starts) {
    double[] best = starts[0];
    double least = Double.POSITIVE_INFINITY;
    for (double[] start : starts) {
      double[] found = search(deviance, search(deviance, start, 0.5), 0.05);
      double value = deviance.value(found);
      if (value < least) {
        least = value;
        best = found;
      }
    }
    return search(deviance, best, 0.01);
  }

  private static double[] search(RemlDeviance deviance, double[] from, double step) {
    PointValuePair found =
        new SimplexOptimizer(new SimpleValueChecker(-1, 1e-11))
            .optimize(
                new MaxEval(20_000),
                new ObjectiveFunction(deviance),
                GoalType.MINIMIZE,
                new InitialGuess(from),
                new NelderMeadSimplex(from.length, step));
    return found.getPoint();
  }

  private static void sayWhatIsSingular(Structure structure, double[] l, List<String> notes) {
    if (structure == Structure.ONE_LINE) {
      return;
    }
    boolean noLevel = Math.abs(l[0]) < NOTHING;
    if (structure == Structure.OWN_LEVELS) {
      if (noLevel) {
        notes.add("The athletes' levels differ by no more than the error of the test: all share one line.");
      }
      return;
    }
    boolean noSlope = Math.hypot(l[1], l[2]) < NOTHING;
    if (noLevel && noSlope) {
      notes.add("Neither levels nor trends differ by more than the error of the test: all share one line.");
    } else if (noSlope) {
      notes.add("No difference between the athletes' trends can be seen: all share the squad's trend.");
    } else if (noLevel) {
      notes.add("The athletes' levels at the middle of the time differ by no more than the error of the test; only their trends differ.");
    } else if (Math.abs(l[2]) < NOTHING) {
      notes.add("Level and trend go together in these scores without exception, which few athletes or few scores will do: read each athlete's trend with care.");
    }
  }

  private static TrendModel assemble(Structure structure, RemlDeviance deviance, double[] l, Solution at, List<String> notes) {
    double s2 = at.s2();
    Sym fixed = at.info().inverse();
    double l1 = l.length > 0 ? l[0] : 0;
    double l2 = l.length > 1 ? l[1] : 0;
    double l3 = l.length > 1 ? l[2] : 0;
    Sym d = new Sym(l1 * l1, l1 * l2, l2 * l2 + l3 * l3);
    RawTime raw = new RawTime(deviance.centre(), deviance.scale());
    Sym spread = raw.covariance(d, s2);
    Sym errors = raw.covariance(fixed, s2);
    double level = deviance.meanScore() + raw.level(at.b0(), at.b1());
    double slope = raw.slope(at.b1());
    List<TrendLine> lines = new ArrayList<>();
    for (RemlDeviance.Group g : deviance.groups()) {
      RemlDeviance.Whitened w = RemlDeviance.whiten(g, l);
      double r0 = w.b0() - w.h().a() * at.b0() - w.h().b() * at.b1();
      double r1 = w.b1() - w.h().b() * at.b0() - w.h().c() * at.b1();
      double u0 = d.a() * r0 + d.b() * r1;
      double u1 = d.b() * r0 + d.c() * r1;
      // Error of the deviation with the squad's line taken as known: D - D H D.
      double[][] dh = product(d, w.h());
      Sym known = new Sym(d.a() - dh[0][0] * d.a() - dh[0][1] * d.b(), d.b() - dh[0][0] * d.b() - dh[0][1] * d.c(), d.c() - dh[1][0] * d.b() - dh[1][1] * d.c());
      // The squad's line is not known: it enters the deviation by -D H and the athlete's own line by I - D H.
      Sym deviation = known.plus(sandwich(dh, fixed));
      double[][] k = {{1 - dh[0][0], -dh[0][1]}, {-dh[1][0], 1 - dh[1][1]}};
      Sym own = known.plus(sandwich(k, fixed));
      double du0 = raw.level(u0, u1);
      double du1 = raw.slope(u1);
      lines.add(
          new TrendLine(
              g.athlete(), g.n(), du0, du1, TrendLine.Errors.of(raw.covariance(known, s2)), TrendLine.Errors.of(raw.covariance(deviation, s2)),
              level + du0, slope + du1, TrendLine.Errors.of(raw.covariance(own, s2)), s2));
    }
    return new TrendModel(
        structure,
        new Coefficient(level, Math.sqrt(errors.a())),
        new Coefficient(slope, Math.sqrt(errors.c())),
        new Spread(spread.a(), spread.c(), spread.b(), s2),
        at.criterion(),
        List.copyOf(lines),
        List.copyOf(notes));
  }

  /** From centred and scaled time back to the caller's. */
  private record RawTime(double centre, double scale) {
    double level(double b0, double b1) {
      return b0 - b1 * centre / scale;
    }

    double slope(double b1) {
      return b1 / scale;
    }

    Sym covariance(Sym z, double s2) {
      double c = centre / scale;
      return new Sym(s2 * (z.a() - 2 * c * z.b() + c * c * z.c()), s2 * (z.b() - c * z.c()) / scale, s2 * z.c() / scale / scale);
    }
  }

  private static double[][] product(Sym x, Sym y) {
    return new double[][] {
      {x.a() * y.a() + x.b() * y.b(), x.a() * y.b() + x.b() * y.c()}, {x.b() * y.a() + x.c() * y.b(), x.b() * y.b() + x.c() * y.c()}
    };
  }

  private static Sym sandwich(double[][] k, Sym m) {
    double p = k[0][0] * m.a() + k[0][1] * m.b();
    double q = k[0][0] * m.b() + k[0][1] * m.c();
    double r = k[1][0] * m.a() + k[1][1] * m.b();
    double s = k[1][0] * m.b() + k[1][1] * m.c();
    return new Sym(p * k[0][0] + q * k[0][1], p * k[1][0] + q * k[1][1], r * k[1][0] + s * k[1][1]);
  }

  /** The line of this athlete; empty for one without a score. */
  public Optional<TrendLine> of(long athlete) {
    return athletes.stream().filter(t -> t.athlete() == athlete).findFirst();
  }

  /**
   * The 95 % interval of the squad's slope, by Student's t on as many degrees of freedom as there are athletes less one (scores
   * less two when all share a line): a plain choice that is on the wide side with few athletes.
   */
  public Interval slopeInterval() {
    int scores = athletes.stream().mapToInt(TrendLine::scores).sum();
    double df = Math.max(1, structure == Structure.ONE_LINE ? scores - 2 : athletes.size() - 1);
    double t = new TDistribution(df).inverseCumulativeProbability(0.975);
    return new Interval(slope.value() - t * slope.se(), slope.value() + t * slope.se(), 0.95);
  }

  /** The squad's trend in a sentence, without figures. */
  public String inWords() {
    Interval i = slopeInterval();
    return i.low() > 0
        ? "The squad is getting better."
        : i.high() < 0 ? "The squad is going down." : "No trend of the squad can be told from the scatter yet.";
  }
}
