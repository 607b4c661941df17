package boundwright.season.conflict;

import boundwright.season.Away;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.constraints.Constraint;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.variables.IntVar;

/**
 * Whether demands can hold together, exactly: a model of the days that they touch, searched until a choice is found, all are ruled out or
 * a number of dead ends is reached, never a time, so that the same question has the same answer.
 */
final class Feasibility implements Check<Demand> {
  private final SeasonInput input;
  private final Field field;
  private final int deadEnds;
  private int checks;

  /**
   * For a squad.
   *
   * @param deadEnds after which each of three ways of searching is given up
   */
  Feasibility(SeasonInput input, Field field, int deadEnds) {
    this.input = input;
    this.field = field;
    this.deadEnds = deadEnds;
  }

  /** What a check found: a choice for each cell that the demands touch, if they are feasible. */
  record Found(Answer answer, Map<Integer, Choice> choices) {}

  /** Checks made so far. */
  int checks() {
    return checks;
  }

  @Override
  public Answer of(List<Demand> demands) {
    return search(demands).answer();
  }

  /** The same with what was found. */
  Found search(List<Demand> demands) {
    checks++;
    for (int way = 0; way < 3; way++) {
      Found found = new Made(demands, way).solve();
      if (found.answer() != Answer.UNDECIDED) {
        return found;
      }
    }
    return new Found(Answer.UNDECIDED, Map.of());
  }

  private final class Made {
    private final Model model = new Model("clash");
    private final TreeMap<Integer, IntVar> cells = new TreeMap<>();
    private final int way;

    Made(List<Demand> demands, int way) {
      this.way = way;
      demands.forEach(this::add);
    }

    private IntVar cell(int athlete, int day) {
      int cell = field.cell(athlete, day);
      return cells.computeIfAbsent(cell, k -> model.intVar("c" + k, 0, field.options(k).length - 1, false));
    }

    private IntVar[] days(int athlete, int from, int to) {
      return IntStream.rangeClosed(Math.max(0, from), to).mapToObj(t -> cell(athlete, t)).toArray(IntVar[]::new);
    }

    private Choice[][] options(int athlete, int from, int to) {
      return IntStream.rangeClosed(Math.max(0, from), to).mapToObj(t -> field.options(field.cell(athlete, t))).toArray(Choice[][]::new);
    }

    private void post(Demand d, Rule rule) {
      new Constraint(d.kind().name(), rule).post();
    }

    private void count(Demand d, int athlete, int from, int to, Predicate<Choice> such, int least) {
      post(d, new CountRule(days(athlete, from, to), options(athlete, from, to), such, least, Integer.MAX_VALUE));
    }

    private void add(Demand d) {
      int a = d.athlete();
      int t = d.at();
      switch (d.kind()) {
        case SESSIONS -> count(d, a, 7 * t, Math.min(field.days - 1, 7 * t + 6), c -> is(c, d.what()), d.least());
        case DAY_WISH -> count(d, a, t, t, c -> is(c, d.what()), 1);
        case MEET -> count(d, a, t, t, Choice::meet, 1);
        case AWAY -> away(d);
        case CAPACITY -> {
          IntVar[] all = IntStream.range(0, field.problems.size()).mapToObj(i -> cell(i, t)).toArray(IntVar[]::new);
          Choice[][] options = IntStream.range(0, all.length).mapToObj(i -> field.options(field.cell(i, t))).toArray(Choice[][]::new);
          post(d, new CountRule(all, options, c -> c.venue() == d.what(), 0, field.room[d.what()]));
        }
        case TAPER -> {
          YearProblem.Taper taper = field.problems.get(a).tapers().get(t);
          int from = Math.max(0, taper.from() - TaperRule.BEFORE_DAYS);
          post(d, new TaperRule(days(a, from, taper.meet()), options(a, from, taper.meet()), field.problems.get(a), taper, Math.max(0, taper.from() - from)));
        }
        case SPACING -> {
          YearProblem p = field.problems.get(a);
          int from = t - p.refuseBelowDays() + 1;
          post(d, new SpacingRule(days(a, from, t), options(a, from, t), p.sinceHardBefore(t) < p.refuseBelowDays()));
        }
        case OWN_WEEKS -> {
          int from = t - OwnWeeksRule.REACH + 1;
          post(d, new OwnWeeksRule(days(a, from, t), options(a, from, t), field.problems.get(a), t));
        }
      }
    }

    private void away(Demand d) {
      Member m = input.squad().get(d.athlete());
      Away away = m.away().get(d.at());
      for (int t = field.open; t < field.days; t++) {
        if (away.span().holds(input.day(t))) {
          count(d, d.athlete(), t, t, Choice::rest, 1);
        }
      }
    }

    private boolean is(Choice c, int kind) {
      return kind < 0 ? c.rest() : c.session() != null && c.session().kind().at() == kind;
    }

    Found solve() {
      if (cells.isEmpty()) {
        return new Found(Answer.FEASIBLE, Map.of());
      }
      IntVar[] all = cells.values().toArray(IntVar[]::new);
      Solver solver = model.getSolver();
      solver.setSearch(way == 0 ? Search.inputOrderLBSearch(all) : way == 1 ? Search.domOverWDegSearch(all) : Search.inputOrderUBSearch(all));
      solver.limitFail(deadEnds);
      if (solver.solve()) {
        Map<Integer, Choice> choices = new HashMap<>();
        cells.forEach((k, v) -> choices.put(k, field.options(k)[v.getValue()]));
        return new Found(Answer.FEASIBLE, choices);
      }
      return new Found(solver.isStopCriterionMet() ? Answer.UNDECIDED : Answer.INFEASIBLE, Map.of());
    }
  }
}
