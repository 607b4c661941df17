package boundwright.season.year;

import boundwright.season.SessionKind;
import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.IntUnaryOperator;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * The daily plan of a squad as a model of CP-SAT with the whole numbers of {@link YearRules}: nothing refused, then the first three
 * levels one after the other. It shares only the input with the program's search: {@link YearProblem}, not {@link YearLine}.
 */
public final class DailyModel {
  private static final int OFF = YearProblem.BEFORE;
  private static final int PARTS = 3;
  private static final long MOST = 100_000_000L;

  private final CpModel model = new CpModel();
  private final List<YearProblem> problems;
  private final boolean soft;
  private final List<List<Map<Choice, Literal>>> taken = new ArrayList<>();
  private final List<List<Choice>> found = new ArrayList<>();
  private final LinearExprBuilder wishes = LinearExpr.newBuilder();
  private final LinearExprBuilder off = LinearExpr.newBuilder();
  private final LinearExprBuilder cautions = LinearExpr.newBuilder();

  /** Of a squad; {@code room} most at once, by place. */
  public DailyModel(List<YearProblem> problems, int[] room) {
    this(problems, room, true);
  }

  /** What must hold of one athlete and nothing else, for {@link #fewestChanges}: much smaller. */
  public static DailyModel refusals(YearProblem problem) {
    return new DailyModel(List.of(problem), new int[0], false);
  }

  private DailyModel(List<YearProblem> problems, int[] room, boolean soft) {
    Loader.loadNativeLibraries();
    this.problems = problems;
    this.soft = soft;
    for (YearProblem p : problems) {
      athlete(p);
    }
    for (int t = 0; t < problems.get(0).days; t++) {
      for (int v = 0; v < room.length; v++) {
        LinearExprBuilder there = LinearExpr.newBuilder();
        for (List<Map<Choice, Literal>> one : taken) {
          int venue = v;
          one.get(t).forEach((c, x) -> there.addTerm(x, c.venue() == venue ? 1 : 0));
        }
        model.addLessOrEqual(there, room[v]);
      }
    }
  }

  /** What the levels looked at see of a choice. */
  private record Seen(int right, int left, boolean hard, boolean meet, int venue, int kind, int cautions) {
    static Seen of(Choice c) {
      return new Seen(c.right(), c.left(), c.hard(), c.meet(), c.venue(), c.session() == null ? -1 : c.session().kind().at(), c.cautions());
    }
  }

  private Seen seen(Choice c) {
    return soft ? Seen.of(c) : new Seen(c.right(), c.left(), c.hard(), c.meet(), -1, c.rest() ? -1 : 0, 0);
  }

  private void athlete(YearProblem p) {
    List<Map<Choice, Literal>> days = new ArrayList<>();
    for (int t = 0; t < p.days; t++) {
      Map<Choice, Literal> day = new LinkedHashMap<>();
      Set<Seen> seen = new HashSet<>();
      for (Choice c : p.choices.get(t)) {
        if (seen.add(seen(c))) {
          day.put(c, p.choices.get(t).size() == 1 ? model.trueLiteral() : model.newBoolVar("x"));
        }
      }
      model.addExactlyOne(day.values());
      days.add(day);
    }
    taken.add(days);
    One one = new One(p, days);
    for (int t = 0; t < p.days; t++) {
      one.day(t);
    }
    for (int w = 0; soft && w < p.wanted.length; w++) {
      one.week(w);
    }
    for (YearProblem.Taper taper : p.tapers) {
      one.taper(taper);
    }
  }

  /** The rules of one athlete. */
  private final class One {
    private final YearProblem p;
    private final List<Map<Choice, Literal>> days;
    private final IntVar[] right;
    private final IntVar[] left;
    private final Map<List<Object>, Literal> known = new HashMap<>();

    One(YearProblem p, List<Map<Choice, Literal>> days) {
      this.p = p;
      this.days = days;
      this.right = new IntVar[p.days];
      this.left = new IntVar[p.days];
      for (int t = 0; t < p.days; t++) {
        right[t] = leg(t, 1);
        left[t] = leg(t, 2);
      }
    }

    private void load(LinearExprBuilder e, int part, int t, long times, boolean said) {
      if (t < 0) {
        int i = t + OFF;
        long one = part == 0 ? p.pastRight[i] + p.pastLeft[i] : part == 1 ? p.pastRight[i] : p.pastLeft[i];
        e.add(times * (one + (said ? (part == 0 ? 2 : 1) * p.said[i] : 0)));
        return;
      }
      if (part != 2) {
        e.addTerm(right[t], times);
      }
      if (part != 1) {
        e.addTerm(left[t], times);
      }
    }

    /** One number for a day's load of a leg, so that sums of days are short. */
    private IntVar leg(int t, int part) {
      int least = days.get(t).keySet().stream().mapToInt(c -> c.units(part)).min().orElse(0);
      int most = days.get(t).keySet().stream().mapToInt(c -> c.units(part)).max().orElse(0);
      IntVar out = model.newIntVar(least, most, "leg");
      LinearExprBuilder sum = LinearExpr.newBuilder();
      days.get(t).forEach((c, x) -> sum.addTerm(x, c.units(part)));
      model.addEquality(sum, out);
      return out;
    }

    private Literal is(int t, String what, Predicate<Choice> such) {
      return known.computeIfAbsent(List.of(t, what), k -> made(t, such));
    }

    private Literal made(int t, Predicate<Choice> such) {
      List<Literal> all = new ArrayList<>();
      days.get(t).forEach((c, x) -> {
        if (such.test(c)) {
          all.add(x);
        }
      });
      if (all.isEmpty()) {
        return model.falseLiteral();
      }
      if (all.size() == days.get(t).size()) {
        return model.trueLiteral();
      }
      BoolVar b = model.newBoolVar("is");
      model.addEquality(LinearExpr.sum(all.toArray(Literal[]::new)), b);
      return b;
    }

    private IntVar base(int part, int t) {
      LinearExprBuilder week = LinearExpr.newBuilder();
      LinearExprBuilder month = LinearExpr.newBuilder();
      for (int ago = 7; ago < 35; ago++) {
        load(month, part, t - ago, 1, true);
        if (ago < 14) {
          load(week, part, t - ago, 4, true);
        }
      }
      IntVar base = model.newIntVar(0, MOST, "base");
      model.addMaxEquality(base, new LinearExpr[] {week.build(), month.build(), LinearExpr.constant((part == 0 ? 4L : 2L) * p.startWeek)});
      return base;
    }

    void day(int t) {
      days.get(t).forEach((c, x) -> cautions.addTerm(x, c.cautions()));
      Integer wish = p.wishes[t];
      if (wish != null) {
        wishes.add(1);
        wishes.addTerm(is(t, "wish", c -> (c.session() == null ? -1 : c.session().kind().at()) == wish), -1);
      }
      if (days.get(t).size() == 1 && days.get(t).keySet().iterator().next().rest()) {
        return;
      }
      Literal busy = is(t, "busy", c -> !c.rest());
      BoolVar caution = model.newBoolVar("caution");
      cautions.addTerm(caution, 1);
      for (int part = 0; part < PARTS; part++) {
        IntVar base = base(part, t);
        LinearExprBuilder trained = LinearExpr.newBuilder();
        LinearExprBuilder seven = LinearExpr.newBuilder();
        for (int ago = 0; ago < 7; ago++) {
          if (ago > 0) {
            load(trained, part, t - ago, 4000, false);
          }
          load(seven, part, t - ago, 4000, false);
        }
        Choice first = days.get(t).keySet().iterator().next();
        if (!first.meet()) {
          load(trained, part, t, 4000, false);
        }
        trained.add(4000L * YearRules.ROUNDING);
        trained.addTerm(base, -p.refuseMille());
        model.addLessOrEqual(trained, 0).onlyEnforceIf(busy);
        if (!soft) {
          continue;
        }
        seven.addTerm(base, -Math.round(1000 + 10 * p.cautionPercent));
        model.addLessOrEqual(seven, 0).onlyEnforceIf(new Literal[] {busy, caution.not()});
      }
      spacing(t);
      if (soft && p.mostSessions[t] < 7) {
        sessions(t, busy);
      }
    }

    private void spacing(int t) {
      Literal hard = is(t, "hard", Choice::hard);
      Literal training = is(t, "training", c -> c.hard() && !c.meet());
      BoolVar caution = model.newBoolVar("near");
      cautions.addTerm(caution, 1);
      for (int ago = 1; ago < p.cautionBelowDays; ago++) {
        if (t - ago < 0) {
          continue;
        }
        Literal before = is(t - ago, "hard", Choice::hard);
        if (soft) {
          model.addBoolOr(new Literal[] {hard.not(), before.not(), caution});
        }
        if (ago < p.refuseBelowDays) {
          model.addBoolOr(new Literal[] {training.not(), before.not()});
        }
      }
      if (t < p.cautionBelowDays && t + 1 + p.hardAgo < p.cautionBelowDays) {
        model.addBoolOr(new Literal[] {hard.not(), caution});
        if (t + 1 + p.hardAgo < p.refuseBelowDays) {
          model.addEquality(training, 0);
        }
      }
    }

    private void sessions(int t, Literal busy) {
      BoolVar caution = model.newBoolVar("many");
      cautions.addTerm(caution, 1);
      LinearExprBuilder n = LinearExpr.newBuilder();
      for (int ago = 1; ago <= 6; ago++) {
        if (t - ago < 0) {
          n.add(p.pastSession[t - ago + OFF] ? 1 : 0);
        } else {
          n.addTerm(is(t - ago, "busy", c -> !c.rest()), 1);
        }
      }
      model.addLessOrEqual(n, p.mostSessions[t] - 1).onlyEnforceIf(new Literal[] {busy, caution.not()});
    }

    void week(int w) {
      int end = Math.min(p.days, 7 * w + 7);
      LinearExprBuilder load = LinearExpr.newBuilder().add(-p.wanted[w]);
      LinearExprBuilder all = LinearExpr.newBuilder();
      Map<SessionKind, LinearExprBuilder> of = new LinkedHashMap<>();
      for (SessionKind k : YearProblem.KINDS) {
        of.put(k, LinearExpr.newBuilder());
      }
      for (int t = 7 * w; t < end; t++) {
        load(load, 0, t, 1, false);
        days.get(t).forEach((c, x) -> {
          LinearExprBuilder n = c.session() == null ? null : of.get(c.session().kind());
          if (n != null) {
            n.addTerm(x, 1);
            all.addTerm(x, 1);
          }
        });
      }
      of.forEach((k, n) -> {
        int want = p.weeks.get(w).sessions(k);
        if (want > 0) {
          IntVar missing = model.newIntVar(0, want, "missing");
          model.addGreaterOrEqual(LinearExpr.newBuilder().add(missing).add(n), want);
          wishes.add(missing);
        }
      });
      IntVar more = model.newIntVar(0, 7, "more");
      model.addGreaterOrEqual(LinearExpr.newBuilder().add(more).addTerm(all, -1), -p.weeks.get(w).all());
      wishes.add(more);
      IntVar distance = model.newIntVar(0, MOST, "distance");
      model.addAbsEquality(distance, load.build());
      IntVar whole = model.newIntVar(0, MOST / 100, "off");
      model.addGreaterOrEqual(LinearExpr.newBuilder().addTerm(whole, 100).addTerm(distance, -1), -49);
      off.add(whole);
    }

    void taper(YearProblem.Taper taper) {
      LinearExprBuilder before = LinearExpr.newBuilder();
      LinearExprBuilder cut = LinearExpr.newBuilder();
      long share = (long) (taper.meet() - taper.from() + 1) * taper.mostMille();
      for (int t = Math.max(-OFF, taper.from() - 28); t < taper.from(); t++) {
        load(before, 0, t, 1, false);
        load(cut, 0, t, -share, false);
      }
      for (int t = Math.max(-OFF, taper.from()); t <= taper.meet(); t++) {
        load(cut, 0, t, 28_000, false);
      }
      BoolVar little = model.newBoolVar("little");
      model.addLessOrEqual(before, 2L * p.startWeek - 1).onlyEnforceIf(little);
      model.addLessOrEqual(cut, 0).onlyEnforceIf(little.not());
    }
  }

  /** Leaves a day one choice. */
  public void fix(int athlete, int t, Choice chosen) {
    taken.get(athlete).get(t).forEach((c, x) -> {
      if (seen(c).equals(seen(chosen)) && problems.get(athlete).choices.get(t).size() > 1) {
        model.addEquality(x, 1);
      }
    });
  }

  /**
   * The fewest days from one day on that are not as they were published, with nothing refused; of {@link #refusals}.
   *
   * @param fits whether a day takes a choice beside what the others do
   * @param begin a plan to begin at: choice index by day, negative where it has none
   * @param seconds for the search
   * @return how many days; best -1 if none was found, which is proven if there is none
   */
  public Solved fewestChanges(int from, BiPredicate<Integer, Choice> fits, IntUnaryOperator begin, double seconds) {
    YearProblem p = problems.get(0);
    LinearExprBuilder changed = LinearExpr.newBuilder();
    for (int t = from; t < p.days; t++) {
      int at = p.published(t);
      if (p.choices.get(t).size() > 1 && at != -1) {
        changed.add(1);
        published(t, at < 0 ? null : p.choices.get(t).get(at), fits, changed);
      }
      int here = begin.applyAsInt(t);
      if (here >= 0) {
        Seen begun = seen(p.choices.get(t).get(here));
        taken.get(0).get(t).forEach((c, x) -> model.addHint(x, seen(c).equals(begun)));
      }
    }
    model.minimize(changed);
    CpSolver solver = solver(seconds);
    CpSolverStatus status = solver.solve(model);
    boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
    return new Solved(
        found ? Math.round(solver.objectiveValue()) : -1, Math.max(0, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6)),
        status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.INFEASIBLE);
  }

  /** A day that is as published counts nothing; what no place takes then is not chosen. */
  private void published(int t, @Nullable Choice was, BiPredicate<Integer, Choice> fits, LinearExprBuilder changed) {
    taken.get(0).get(t).forEach((c, x) -> {
      boolean same = was != null && seen(c).equals(seen(was));
      if (same) {
        changed.addTerm(x, -1);
      }
      if (problems.get(0).choices.get(t).stream().noneMatch(o -> seen(o).equals(seen(c)) && fits.test(t, o))) {
        model.addEquality(x, 0);
      }
    });
  }

  private void keep(CpSolver solver) {
    found.clear();
    for (List<Map<Choice, Literal>> one : taken) {
      List<Choice> days = new ArrayList<>();
      one.forEach(day -> day.forEach((c, x) -> {
        if (solver.booleanValue(x)) {
          days.add(c);
        }
      }));
      found.add(days);
    }
  }

  /** The plan found last, by athlete and day; empty if none was. */
  public List<List<Choice>> found() {
    return found;
  }

  /** With all days fixed: wishes, off and cautions; null if something is refused. */
  public long @Nullable [] scored() {
    model.minimize(LinearExpr.newBuilder().add(wishes).add(off).add(cautions));
    CpSolver solver = solver(60);
    CpSolverStatus status = solver.solve(model);
    if (status == CpSolverStatus.INFEASIBLE) {
      return null;
    }
    if (status != CpSolverStatus.OPTIMAL) {
      throw new IllegalStateException("not decided: " + status);
    }
    return new long[] {solver.value(wishes), solver.value(off), solver.value(cautions)};
  }

  private static CpSolver solver(double seconds) {
    CpSolver solver = new CpSolver();
    solver.getParameters().setMaxTimeInSeconds(seconds);
    solver.getParameters().setNumWorkers(1);
    solver.getParameters().setRandomSeed(1);
    // presolving takes the sums of seven and twenty-eight days apart into domains of 90,000 pieces and never ends
    solver.getParameters().setCpModelPresolve(false);
    return solver;
  }

  /**
   * A level.
   *
   * @param best value found; -1 if none
   * @param bound nothing is less, given the levels before; whole
   * @param proven whether both are the same
   */
  public record Solved(long best, long bound, boolean proven) {}

  /**
   * Wishes, off, cautions one after the other, each fixed before the next.
   *
   * @param ours values by {@link Level}, at which a level is fixed if nothing better was found; null: fixed where it is proven
   * @param seconds for each level
   * @return as many levels as were reached: none after one that was not fixed
   */
  public List<Solved> levels(long @Nullable [] ours, double seconds) {
    List<Solved> out = new ArrayList<>();
    LinearExprBuilder[] levels = {wishes, off, cautions};
    for (int k = 0; k < levels.length; k++) {
      model.minimize(levels[k]);
      CpSolver solver = solver(seconds);
      CpSolverStatus status = solver.solve(model);
      boolean found = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
      long best = found ? Math.round(solver.objectiveValue()) : -1;
      long bound = (long) Math.ceil(solver.bestObjectiveBound() - 1e-6);
      if (found) {
        keep(solver);
      }
      out.add(new Solved(best, Math.max(0, bound), status == CpSolverStatus.OPTIMAL));
      long fixed = ours == null ? best : ours[Level.WISHES.at() + k];
      if (ours == null ? status != CpSolverStatus.OPTIMAL : found && best < fixed) {
        break;
      }
      model.addLessOrEqual(levels[k], fixed);
    }
    return out;
  }
}
