package boundwright.season.order;

import boundwright.season.order.timing.Chains.Times;
import boundwright.season.order.timing.Chains;
import boundwright.season.order.Drop.Kind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What to leave out so that the session fits its minutes, least wanted first: sets after the first, then reps after the first, then drills
 * whose sequence is known, last those that are new; within each, unwatched before watched, the last set before the one before it, the later
 * drill before the earlier, the longer run before the shorter, because it rests longest. Never a warm-up, never a rest, never an athlete's
 * last drill. Nobody's legs become less even than they were planned: what would make them so is left out together with its mirror. What turns
 * out not to be needed is put back, the most wanted first.
 */
final class DropPlanner {
  /** How far back in what was dropped the mirror of a drop is looked for. */
  private static final int MOST_APART = 8;

  private final SessionAsk ask;
  private final Function<Chains, @Nullable Times> quick;
  private final Function<Chains, @Nullable Times> careful;
  private final int limit;
  private final Doses planned;
  private final int[] uneven;

  /**
   * {@code quick} is asked often, {@code careful} whether something can be put back; both answer null where a rep finds no place.
   */
  DropPlanner(SessionAsk ask, Function<Chains, @Nullable Times> quick, Function<Chains, @Nullable Times> careful) {
    this.ask = ask;
    this.quick = quick;
    this.careful = careful;
    this.limit = ask.minutes() * 60;
    this.planned = ask.all();
    this.uneven = new int[ask.athletes().size()];
    for (int a = 0; a < uneven.length; a++) {
      uneven[a] = Math.abs(over(planned, a));
    }
  }

  /**
   * What is left, and what was left out.
   *
   * @param level whether nobody's legs are less even than planned
   */
  record Left(Doses doses, List<Drop> drops, boolean level) {}

  Left plan() {
    Doses now = planned.copy();
    List<Drop> drops = new ArrayList<>();
    for (int d = 0; d < ask.drills().size(); d++) {
      if (!ask.open(d)) {
        close(now, d, drops);
      }
    }
    int closed = drops.size();
    evenOut(now, drops);
    Late late = late(now, quick);
    while (!fits(late)) {
      Step step = step(now, late, true);
      step = step == null ? step(now, late, false) : step;
      if (step == null) {
        return new Left(now, merged(drops), level(now));
      }
      apply(now, step.drops, -1);
      drops.addAll(step.drops);
      late = step.late;
    }
    while (putBackOne(now, drops, closed)) {
      // until nothing more fits
    }
    return new Left(now, merged(drops), level(now));
  }

  private void close(Doses now, int drill, List<Drop> drops) {
    groups(now, drill).forEach(
        (steps, who) -> {
          for (int a : who) {
            Drop one = new Drop(Kind.CLOSED, drill, 0, now.of(a, drill), steps, List.of(a));
            apply(now, List.of(one), -1);
            drops.add(one);
          }
        });
  }

  /** How late it gets: reps without a place, seconds over of all athletes together, and the finish. */
  private record Late(boolean placed, long over_s, int finish_s) {
    boolean betterThan(Late other) {
      return placed != other.placed ? placed : over_s != other.over_s ? over_s < other.over_s : finish_s < other.finish_s;
    }
  }

  private boolean fits(Late late) {
    return late.placed && late.finish_s <= limit;
  }

  private Late late(Doses doses, Function<Chains, @Nullable Times> order) {
    Chains c = doses.chains(ask);
    Times times = order.apply(c);
    if (times == null) {
      // fewer reps are nearer to having a place
      return new Late(false, doses.all(), Integer.MAX_VALUE);
    }
    long over = IntStream.range(0, c.athletes()).mapToLong(a -> Math.max(0, times.end(c, a) - limit)).sum();
    return new Late(true, over, times.finish(c));
  }

  private record Step(List<Drop> drops, Late late) {}

  /** The least wanted that helps, with its mirror where the legs need it. */
  private @Nullable Step step(Doses now, Late before, boolean even) {
    List<Drop> all = candidates(now);
    Step any = null;
    for (Drop first : all) {
      List<Drop> both = even ? balanced(now, first, all) : List.of(first);
      if (both == null) {
        continue;
      }
      Doses then = now.copy();
      apply(then, both, -1);
      Step step = new Step(both, late(then, quick));
      if (step.late.betterThan(before)) {
        return step;
      }
      any = any == null ? step : any;
    }
    return any;
  }

  private @Nullable List<Drop> balanced(Doses now, Drop first, List<Drop> all) {
    if (level(now, List.of(first))) {
      return List.of(first);
    }
    for (Drop second : all) {
      if (!second.equals(first) && second.athletes().equals(first.athletes()) && level(now, List.of(first, second)) && staysSomething(now, first, second)) {
        return List.of(first, second);
      }
    }
    return null;
  }

  private static boolean staysSomething(Doses now, Drop first, Drop second) {
    return first.athletes().stream().allMatch(a -> now.of(a) > first.reps() + second.reps());
  }

  private boolean level(Doses now, List<Drop> drops) {
    Doses then = now.copy();
    apply(then, drops, -1);
    return drops.get(0).athletes().stream().allMatch(a -> Math.abs(over(then, a)) <= uneven[a]);
  }

  private boolean level(Doses doses) {
    return IntStream.range(0, uneven.length).allMatch(a -> Math.abs(over(doses, a)) <= uneven[a]);
  }

  /** Contacts of the right leg more than of the left, with what was done before. */
  private int over(Doses doses, int athlete) {
    int sum = 0;
    for (int d = 0; d < ask.drills().size(); d++) {
      SessionDrill drill = ask.drills().get(d);
      int done = Math.min(ask.athletes().get(athlete).parts().get(d).done(), drill.sets() * drill.reps());
      sum += drill.rightOver() * (doses.of(athlete, d) + done);
    }
    return sum;
  }

  /** After a surface closed: what its mirror was is left out too. */
  private void evenOut(Doses now, List<Drop> drops) {
    boolean again = true;
    while (again) {
      again = false;
      for (Drop one : candidates(now)) {
        Doses then = now.copy();
        apply(then, List.of(one), -1);
        boolean all = one.athletes().stream().allMatch(a -> Math.abs(over(now, a)) > uneven[a] && Math.abs(over(then, a)) < Math.abs(over(now, a)));
        if (all) {
          apply(now, List.of(one), -1);
          drops.add(one);
          again = true;
          break;
        }
      }
    }
  }

  /** Whether something was put back: the most wanted that fits, by itself, or with a mirror where the legs need one. */
  private boolean putBackOne(Doses now, List<Drop> drops, int from) {
    for (int i = drops.size() - 1; i >= from; i--) {
      for (int j = i; j >= Math.max(from, i - MOST_APART); j--) {
        List<Drop> back = i == j ? List.of(drops.get(i)) : List.of(drops.get(i), drops.get(j));
        Doses then = now.copy();
        apply(then, back, 1);
        boolean level = level(then);
        if (level && fits(late(then, careful))) {
          apply(now, back, 1);
          drops.remove(i);
          if (j < i) {
            drops.remove(j);
          }
          return true;
        }
        if (i == j && level) {
          // no mirror is needed
          break;
        }
      }
    }
    return false;
  }

  private List<Drop> candidates(Doses now) {
    List<Drop> out = new ArrayList<>();
    for (int d = 0; d < ask.drills().size(); d++) {
      if (!ask.drills().get(d).warmUp()) {
        int drill = d;
        groups(now, d).forEach((steps, who) -> candidate(now, drill, steps, who, out));
      }
    }
    out.sort(
        Comparator.comparing(Drop::kind)
            .thenComparing(x -> ask.drills().get(x.drill()).watched())
            .thenComparing(Comparator.comparingInt(Drop::set).reversed())
            .thenComparing(Comparator.comparingInt(Drop::drill).reversed())
            .thenComparing(Comparator.comparingInt(Drop::steps).reversed()));
    return out;
  }

  /** Those who still have a drill to do, by their steps. */
  private Map<Integer, List<Integer>> groups(Doses now, int drill) {
    TreeMap<Integer, List<Integer>> out = new TreeMap<>();
    for (int a = 0; a < ask.athletes().size(); a++) {
      if (now.of(a, drill) > 0) {
        out.computeIfAbsent(ask.athletes().get(a).parts().get(drill).steps(), s -> new ArrayList<>()).add(a);
      }
    }
    return out;
  }

  private void candidate(Doses now, int drill, int steps, List<Integer> who, List<Drop> out) {
    int last = who.stream().mapToInt(a -> now.lastSet(a, drill)).max().orElse(-1);
    List<Integer> sets = who.stream().filter(a -> now.lastSet(a, drill) == last && last > 0 && hasBefore(now, a, drill, last)).toList();
    if (!sets.isEmpty()) {
      int reps = sets.stream().mapToInt(a -> now.of(a, drill, last)).max().orElse(0);
      out.add(new Drop(Kind.SET, drill, last + 1, reps, steps, sets.stream().filter(a -> now.of(a, drill, last) == reps).toList()));
      return;
    }
    List<Integer> many = who.stream().filter(a -> now.of(a, drill) > 1 || done(a, drill)).toList();
    if (!many.isEmpty()) {
      List<Integer> could = many.stream().filter(a -> now.of(a) > 1).toList();
      if (!could.isEmpty()) {
        out.add(new Drop(Kind.REP, drill, 0, 1, steps, could));
      }
      return;
    }
    for (boolean fresh : new boolean[] {false, true}) {
      List<Integer> could =
          who.stream().filter(a -> now.of(a) > now.of(a, drill) && ask.athletes().get(a).parts().get(drill).fresh() == fresh).toList();
      if (!could.isEmpty()) {
        out.add(new Drop(fresh ? Kind.NEW : Kind.DRILL, drill, 0, 1, steps, could));
      }
    }
  }

  private boolean hasBefore(Doses now, int athlete, int drill, int set) {
    return done(athlete, drill) || IntStream.range(0, set).anyMatch(s -> now.of(athlete, drill, s) > 0);
  }

  private boolean done(int athlete, int drill) {
    return ask.athletes().get(athlete).parts().get(drill).done() > 0;
  }

  /** Takes reps away from the end of a drill, or puts them back. */
  private void apply(Doses doses, List<Drop> drops, int sign) {
    for (Drop drop : drops) {
      for (int a : drop.athletes()) {
        int left = drop.reps();
        int sets = doses.setCount(a, drop.drill());
        for (int i = 0; i < sets && left > 0; i++) {
          int s = sign < 0 ? sets - 1 - i : i;
          int has = doses.of(a, drop.drill(), s);
          int change = Math.min(left, sign < 0 ? has : planned.of(a, drop.drill(), s) - has);
          doses.put(a, drop.drill(), s, has + sign * change);
          left -= change;
        }
      }
    }
  }

  /** The same that is left out for several, or several times, is said once. */
  private static List<Drop> merged(List<Drop> drops) {
    List<Drop> out = new ArrayList<>();
    for (Drop d : drops) {
      boolean found = false;
      for (int i = 0; i < out.size() && !found; i++) {
        Drop o = out.get(i);
        boolean same = o.kind() == d.kind() && o.drill() == d.drill() && o.set() == d.set();
        if (same && o.athletes().equals(d.athletes())) {
          out.set(i, new Drop(o.kind(), o.drill(), o.set(), o.reps() + d.reps(), o.steps(), o.athletes()));
          found = true;
        }
      }
      if (!found) {
        out.add(d);
      }
    }
    for (int i = 0; i < out.size(); i++) {
      for (int j = out.size() - 1; j > i; j--) {
        Drop o = out.get(i);
        Drop d = out.get(j);
        if (o.kind() == d.kind() && o.drill() == d.drill() && o.set() == d.set() && o.reps() == d.reps()
            && o.athletes().stream().noneMatch(d.athletes()::contains)) {
          List<Integer> both = new ArrayList<>(o.athletes());
          both.addAll(d.athletes());
          both.sort(Comparator.naturalOrder());
          out.set(i, new Drop(o.kind(), o.drill(), o.set(), o.reps(), o.steps() == d.steps() ? o.steps() : -1, both));
          out.remove(j);
        }
      }
    }
    return List.copyOf(out);
  }
}
