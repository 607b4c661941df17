package boundwright.flight.season;

import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.runway.CoachSettings;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvisor;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One athlete's season: two sessions a week of two blocks of three reps, logged in one way, learned rep by rep; before each
 * day the forecasts are scored on drills that were logged at least six times.
 */
final class Season {
  static final int BLOCK = 3;
  private static final int DRAWN = 60;
  private static final int SCORED = 6;
  private static final int FIRST_SESSIONS = 5;

  private final HiddenAthlete athlete;
  private final Logging logging;
  private final double bailOuts;
  private final List<Drill> drills;
  private final Random random;
  private final Random judge;
  private final Map<Drill, Integer> done = new HashMap<>();
  private final Map<Drill, List<double[]>> jumped = new HashMap<>();
  private FlightModel model;
  int reps;
  private int lastDay;
  private int taps;
  /** Reps that were measured because the program asked. */
  int measures;

  /** Scores from the day on which the scenario's change begins; the first session back on its own. */
  final Score late = new Score();
  final Score firstBack = new Score();
  /** The first five sessions after time off. */
  final Score firstFive = new Score();
  /** Scores before the first session in which so many reps were logged. */
  final Map<Integer, Score> after = new TreeMap<>();
  final Rules rules = new Rules();

  Season(HiddenAthlete athlete, FlightModel prior, Logging logging, double bailOuts, List<Drill> drills, long seed) {
    this.athlete = athlete;
    this.model = prior;
    this.logging = logging;
    this.bailOuts = bailOuts;
    this.drills = drills;
    this.random = new Random(seed);
    this.judge = new Random(seed + 1);
  }

  FlightModel model() {
    return model;
  }

  /** Runs the weeks of the scenario, or until so many reps. */
  Season run(int most) {
    boolean back = false;
    int sessionsBack = 0;
    for (int day = 0; day < 7 * athlete.scenario.weeks() && reps < most; day++) {
      if ((day % 7 == 1 || day % 7 == 4) && athlete.scenario.trains(day)) {
        LocalDate date = HiddenAthlete.FIRST_DAY.plusDays(day);
        if (day >= athlete.scenario.judgedFrom()) {
          boolean first = !back && day >= athlete.scenario.firstDayBack();
          back |= first;
          Score today = new Score();
          score(today, day, date, 6);
          (first ? firstBack : late).add(today);
          if (back && sessionsBack++ < FIRST_SESSIONS) {
            firstFive.add(today);
          }
        }
        if (reps % 6 == 0) {
          score(after.computeIfAbsent(reps, k -> new Score()), day, date, reps < 12 ? 1 : 6);
        }
        session(day, date);
        lastDay = day;
      }
    }
    if (!after.containsKey(reps)) {
      int day = lastDay + 3;
      score(after.computeIfAbsent(reps, k -> new Score()), day, HiddenAthlete.FIRST_DAY.plusDays(day), 6);
    }
    return this;
  }

  private void score(Score score, int day, LocalDate date, int least) {
    for (Drill d : drills) {
      if (done.getOrDefault(d, 0) >= least) {
        score.add(forecast(d, date), draw(d, day), SCORED);
      }
    }
  }

  /** What was scored before the session that came after so many reps; nothing if there was none. */
  Score scored(int afterReps) {
    return after.getOrDefault(afterReps, new Score());
  }

  /**
   * Scores a drill or rung that was never tried on a day after the season, against the last three of a known drill.
   *
   * @param factor on the known drill's mean; 0 scales it by the number of flights
   */
  void askNever(Score score, Rules rules, Drill d, Drill known, double factor) {
    int day = lastDay + 3;
    double[][] drawn = draw(d, day);
    Forecast f = forecast(d, HiddenAthlete.FIRST_DAY.plusDays(day));
    score.add(f, drawn, SCORED);
    List<double[]> past = jumped.getOrDefault(known, List.of());
    if (past.size() < 3) {
      return;
    }
    int n = known.sequence().size();
    double lastThree = 0;
    double lastFlight = 0;
    for (double[] q : past.subList(past.size() - 3, past.size())) {
      lastThree += q[n] / 3;
      lastFlight += (q[n] - q[n - 1]) / 3;
    }
    double scale = factor == 0 ? d.sequence().size() / (double) n : factor;
    double truth = 0;
    for (double[] p : drawn) {
      truth += p[d.sequence().size()] / drawn.length;
    }
    for (int i = 0; i < SCORED; i++) {
      rules.add(drawn[i], Marks.of(f), lastThree * scale, lastFlight, truth);
    }
  }

  /** Scores a drill on the next day, whether it was ever done or not. */
  void ask(Score score, Drill d) {
    int day = lastDay + 3;
    score.add(forecast(d, HiddenAthlete.FIRST_DAY.plusDays(day)), draw(d, day), SCORED);
  }

  Forecast forecast(Drill d, LocalDate date) {
    return model.forecast(d.sequence(), d.steps(), Surface.TRACK, date);
  }

  private double[][] draw(Drill d, int day) {
    double[][] out = new double[DRAWN][];
    for (int i = 0; i < DRAWN; i++) {
      out[i] = jump(d, day, athlete.form(judge), judge.nextInt(2 * BLOCK), judge);
    }
    return out;
  }

  private double[] jump(Drill d, int day, double form, int before, Random r) {
    return athlete.jump(d.sequence(), d.steps(), day, form, before, r);
  }

  private void session(int day, LocalDate date) {
    double form = athlete.form(random);
    int before = 0;
    int at = random.nextInt(drills.size());
    int other = (at + 1 + random.nextInt(drills.size() - 1)) % drills.size();
    for (Drill d : List.of(drills.get(at), drills.get(other))) {
      for (int i = 0; i < BLOCK; i++) {
        double[] p = jump(d, day, form, before++, random);
        compare(d, day, date, p);
        boolean breaks = random.nextDouble() < bailOuts;
        double[] logged = breaks ? HiddenAthlete.abandoned(p, random) : p;
        model = model.learn(rep(d, date, logged, i));
        done.merge(d, 1, Integer::sum);
        reps++;
        jumped.computeIfAbsent(d, k -> new ArrayList<>()).add(p);
      }
    }
  }

  /** The coaches' rules and the program on a rep that is about to be logged. */
  private void compare(Drill d, int day, LocalDate date, double[] p) {
    List<double[]> past = jumped.getOrDefault(d, List.of());
    if (past.size() < 6) {
      return;
    }
    int n = d.sequence().size();
    double lastThree = 0;
    double lastFlight = 0;
    for (double[] q : past.subList(past.size() - 3, past.size())) {
      lastThree += q[n] / 3;
      lastFlight += (q[n] - q[n - 1]) / 3;
    }
    double truth = 0;
    for (int i = 0; i < 30; i++) {
      truth += jump(d, day, 0, 2, judge)[n] / 30;
    }
    rules.add(p, Marks.of(forecast(d, date)), lastThree, lastFlight, truth);
  }

  private Rep rep(Drill d, LocalDate date, double[] p, int inBlock) {
    return switch (logging) {
      case PRINTS -> measured(d, date, p);
      case LANDING -> landing(d, date, p);
      case TAPS -> tapped(d, date, p, null);
      case THEN_TAPS -> early(date) ? measured(d, date, p) : tapped(d, date, p, Marks.of(forecast(d, date)).best());
      case THEN_ASKED -> early(date) ? measured(d, date, p) : asked(d, date, p);
      case ASKED -> asked(d, date, p);
      case MIXED -> inBlock == 0 ? measured(d, date, p) : inBlock == 1 ? landing(d, date, p) : tapped(d, date, p, null);
    };
  }

  static Rep measured(Drill d, LocalDate date, double[] p) {
    List<Double> prints = new ArrayList<>();
    for (int i = 1; i < d.sequence().size(); i++) {
      prints.add(cm(p[i]));
    }
    return made(d, date, prints, cm(p[d.sequence().size()]), null, null);
  }

  static Rep landing(Drill d, LocalDate date, double[] p) {
    return made(d, date, List.of(), cm(p[d.sequence().size()]), null, null);
  }

  private static boolean early(LocalDate date) {
    return date.isBefore(HiddenAthlete.FIRST_DAY.plusDays(21));
  }

  private Rep tapped(Drill d, LocalDate date, double[] p, @Nullable Double tape) {
    Marks marks = Marks.of(forecast(d, date));
    double best = marks.best();
    double usual = marks.promise(best) >= 0.9 ? best : marks.learning(taps++ % 2 == 0);
    double mark = cm(tape == null ? usual : tape);
    return made(d, date, List.of(), null, outcome(d.sequence(), p, mark), mark);
  }

  private Rep asked(Drill d, LocalDate date, double[] p) {
    LogNext next = MarkAdvisor.whatToLog(model, d.sequence(), d.steps(), Surface.TRACK, CoachSettings.DEFAULT, date);
    if (next == null || next.way() == LogNext.Way.TAPE) {
      return tapped(d, date, p, next == null ? null : next.tapeToSand_m());
    }
    measures++;
    if (next.way() == LogNext.Way.MEASURE) {
      return measured(d, date, p);
    }
    Rep tap = tapped(d, date, p, null);
    List<Double> prints = new ArrayList<>(Collections.nCopies(d.sequence().size() - 2, Double.NaN));
    prints.add(cm(p[d.sequence().size() - 1]));
    return made(d, date, prints, null, tap.outcome(), tap.markToSand_m());
  }

  static Rep made(Drill d, LocalDate date, List<Double> prints, @Nullable Double landing, @Nullable Outcome outcome, @Nullable Double mark) {
    return new Rep(0, 1, date, d.sequence(), d.steps(), Surface.TRACK, prints, landing, outcome, mark, List.of());
  }

  static Outcome outcome(Sequence s, double[] p, double mark) {
    return p[s.size() - 1] > mark ? Outcome.LATE : p[s.size()] < mark ? Outcome.SHORT : Outcome.IN;
  }

  private static double cm(double m) {
    return Math.round(m * 100) / 100.0;
  }
}
