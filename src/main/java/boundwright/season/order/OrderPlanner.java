package boundwright.season.order;

import boundwright.quantity.RefusedException;
import boundwright.runway.Window;
import boundwright.season.order.RunningOrder.Go;
import boundwright.season.order.timing.Chains.Times;
import boundwright.season.order.timing.Chains;
import boundwright.season.order.timing.OrderSolver.Effort;
import boundwright.season.order.timing.OrderSolver.Solved;
import boundwright.season.order.timing.OrderSolver;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Orders a session. What is wanted, in this order and never as one sum: that everything planned is done in the minutes there are (what is
 * left out: {@link DropPlanner}); the earliest finish; the shortest longest wait of somebody who is rested; the fewest tapes laid; the fewest
 * changes at the sand. Least rests, lanes, coaches and closing times are never given way.
 */
public final class OrderPlanner {
  private final long seed;
  private final Effort effort;

  OrderPlanner(long seed, Effort effort) {
    this.seed = seed;
    this.effort = effort;
  }

  /** Thinks as long as it takes to prove most squads of up to twelve, some seconds at most; the same seed gives the same order. */
  public static OrderPlanner thorough(long seed) {
    return new OrderPlanner(seed, Effort.FULL);
  }

  /** Thinks shorter, for a page that waits. */
  public static OrderPlanner brisk(long seed) {
    return new OrderPlanner(seed, Effort.BRISK);
  }

  /** The order of a session, with what is left out so that it fits. */
  public RunningOrder plan(SessionAsk ask) {
    Doses all = ask.all();
    if (all.all() == 0) {
      throw new RefusedException("Every rep of the plan is done already, so there is no order. Add a drill, or warm down.");
    }
    Chains c = all.chains(ask);
    Solved solved = solved(ask, c, effort);
    DropPlanner.Left left =
        solved.times() != null && solved.finish() <= ask.minutes() * 60
            ? new DropPlanner.Left(all, List.of(), true)
            : new DropPlanner(ask, d -> solved(ask, d, Effort.QUICK).times(), d -> solved(ask, d, Effort.CAREFUL).times()).plan();
    if (left.doses().all() == 0) {
      throw new RefusedException("No place is open for any drill of the session. Say which places are, or change the drills.");
    }
    if (!left.drops().isEmpty()) {
      c = left.doses().chains(ask);
      solved = solved(ask, c, effort);
    }
    Times times = solved.times();
    if (times == null) {
      throw new RefusedException(
          "The places close before everybody has had one rep. Open one for longer, or make the group smaller.");
    }
    return new Written(ask, left, c, times).order(solved);
  }

  private Solved solved(SessionAsk ask, Chains c, Effort how) {
    double[] marks = new double[ask.athletes().size()];
    for (int a = 0; a < marks.length; a++) {
      marks[a] =
          ask.athletes().get(a).parts().stream()
              .map(OrderAthlete.Part::works)
              .filter(Objects::nonNull)
              .mapToDouble(Window::middle_m)
              .average()
              .orElse(0);
    }
    ToIntFunction<Times> tapes = t -> 0;
    if (ask.places().stream().filter(Place::sand).count() > 1 && how.trials() > 0) {
      tapes =
          t -> {
            int sum = 0;
            for (int p = 0; p < ask.places().size(); p++) {
              sum += TapeSets.least(works(ask, c, t, p));
            }
            return sum;
          };
    }
    return new OrderSolver(c, marks, tapes, new SplittableRandom(seed)).solve(how);
  }

  /** What works at a place: one for each athlete and drill there. */
  static List<Window> works(SessionAsk ask, Chains c, Times times, int place) {
    List<Window> out = new ArrayList<>();
    for (int a = 0; a < c.athletes(); a++) {
      for (int k = 0; k < c.count(a); k++) {
        Window w = ask.athletes().get(a).parts().get(c.op(a, k).drill()).works();
        if (w != null && c.op(a, k).sand() && times.place()[a][k] == place && c.first(a, k)) {
          out.add(w);
        }
      }
    }
    return out;
  }

  /** Writes times down as what everybody does. */
  private static final class Written {
    private final SessionAsk ask;
    private final DropPlanner.Left left;
    private final Chains c;
    private final Times times;

    Written(SessionAsk ask, DropPlanner.Left left, Chains c, Times times) {
      this.ask = ask;
      this.left = left;
      this.c = c;
      this.times = times;
    }

    private record At(int athlete, int rep, int start, int place) {}

    RunningOrder order(Solved solved) {
      List<At> all = new ArrayList<>();
      int[][] hold = new int[c.athletes()][];
      for (int a = 0; a < c.athletes(); a++) {
        hold[a] = new int[c.count(a)];
        for (int k = 0; k < c.count(a); k++) {
          hold[a][k] = c.op(a, k).hold();
          all.add(new At(a, k, times.start()[a][k], times.place()[a][k]));
        }
      }
      all.sort(Comparator.comparingInt(At::start).thenComparingInt(At::place).thenComparingInt(At::athlete));
      Hands hands = new Hands(ask.athletes().stream().map(OrderAthlete::name).toList(), times.start(), hold, ask.helpers());
      List<List<Double>> marks = new ArrayList<>();
      for (int p = 0; p < ask.places().size(); p++) {
        marks.add(TapeSets.marks(works(ask, c, times, p), ask.liked_m()));
      }
      int[] laneFree = new int[c.laneCount()];
      int[] laneStart = c.laneStarts();
      @Nullable Integer[] present = new @Nullable Integer[ask.places().size()];
      List<Go> goes = new ArrayList<>();
      for (At at : all) {
        int lane = laneStart[at.place];
        while (laneFree[lane] > at.start) {
          lane++;
        }
        laneFree[lane] = at.start + hold[at.athlete][at.rep];
        Integer who = null;
        if (c.op(at.athlete, at.rep).sand()) {
          who = hands.take(present[at.place], at.start, laneFree[lane]);
          present[at.place] = who;
        }
        goes.add(go(at, lane - laneStart[at.place] + 1, marks.get(at.place), who == null ? null : hands.name(who)));
      }
      return new RunningOrder(
          goes, new TapeMoves(ask, goes, hands).all(), left.drops(), solved.finish(), solved.simple(), solved.bound(), solved.proven(),
          times.longestWait(c), ask.minutes() * 60, left.level());
    }

    private Go go(At at, int lane, List<Double> marks, @Nullable String measures) {
      Chains.Op op = c.op(at.athlete, at.rep);
      OrderAthlete who = ask.athletes().get(at.athlete);
      OrderAthlete.Part part = who.parts().get(op.drill());
      SessionDrill drill = ask.drills().get(op.drill());
      int work = ask.settings().work_s(drill.sequence(), part.steps());
      int n = 0;
      while (at.rep - n - 1 >= 0 && c.op(at.athlete, at.rep - n - 1).drill() == op.drill()) {
        n++;
      }
      int set = 0;
      while (n >= left.doses().of(at.athlete, op.drill(), set)) {
        n -= left.doses().of(at.athlete, op.drill(), set++);
      }
      return new Go(
          at.start, at.start + work, at.start + op.hold(), at.start + op.lag(), who.id(), who.name(), op.drill(), set + 1, n + 1, part.steps(),
          ask.places().get(at.place).name(), lane, part.works() == null ? null : TapeSets.nearest(part.works(), marks), drill.watched(), measures);
    }
  }
}
