package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Op;
import boundwright.season.order.timing.Chains.Times;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * All orders, rep by rep in the sequence of their starts, layer on layer: those that cannot finish before what is known are left out, and
 * those that another one is as good as in everything that is left. If no layer was cut for its width, what is found is the earliest finish
 * there is, or nothing is earlier than what was known.
 *
 * <p>Why only starts in sequence, each as early as it can be: in a schedule in which no rep can be moved forward alone, sorted by start,
 * every rep starts when its athlete, a lane and a coach are there, and no schedule of that kind is later than the best. A rep that another
 * athlete could have finished before is put off for the same reason (Giffler and Thompson 1960; from memory).
 */
final class LayeredSearch {
  private final Chains c;
  private final int width;
  private final int[] laneStart;
  private final int n;
  private final List<Bounds.Part> parts;
  /** Reps of each part by what must follow them, most first: {athlete, rep, work, tail}. */
  private final int[][][] byTail;
  private final int[][] ahead;
  private boolean cut;

  /** Keeps at most {@code width} orders of a layer. */
  LayeredSearch(Chains c, int width) {
    this.c = c;
    this.width = width;
    this.laneStart = c.laneStarts();
    this.n = c.athletes();
    this.parts = Bounds.parts(c);
    this.byTail = new int[parts.size()][][];
    this.ahead = new int[n][];
    for (int a = 0; a < n; a++) {
      ahead[a] = new int[c.count(a) + 1];
      for (int k = 0; k < c.count(a); k++) {
        ahead[a][k + 1] = ahead[a][k] + c.op(a, k).lag();
      }
    }
    for (int p = 0; p < parts.size(); p++) {
      List<int[]> jobs = new ArrayList<>();
      for (int a = 0; a < n; a++) {
        for (int k = 0; k < c.count(a); k++) {
          if (parts.get(p).of().test(c.op(a, k))) {
            int work = parts.get(p).takes().applyAsInt(c.op(a, k));
            jobs.add(new int[] {a, k, work, c.rest[a][k] - work});
          }
        }
      }
      jobs.sort(Comparator.comparingInt((int[] j) -> j[3]).reversed());
      byTail[p] = jobs.toArray(int[][]::new);
    }
  }

  /** Whether an order may have been left out that is better than all that are known. */
  boolean cut() {
    return cut;
  }

  private static final class State {
    final int[] done;
    final int[] ready;
    final int[] at;
    final int[] lanes;
    final int[] eyes;
    int last;
    int wait;
    long load;
    int bound;
    @Nullable State before;
    int who;
    int where;

    State(int[] done, int[] ready, int[] at, int[] lanes, int[] eyes) {
      this.done = done;
      this.ready = ready;
      this.at = at;
      this.lanes = lanes;
      this.eyes = eyes;
    }
  }

  /** Two orders of which the same is left. */
  private static final class Key {
    private final int[] of;

    Key(int[] of) {
      this.of = of;
    }

    @Override
    public boolean equals(@Nullable Object o) {
      return o instanceof Key k && Arrays.equals(of, k.of);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(of);
    }
  }

  private static final class Kept {
    private final State state;
    private final int[] free;

    Kept(State state, int[] free) {
      this.state = state;
      this.free = free;
    }
  }

  /** An order that finishes before {@code below} [s], or null if none was found. */
  @Nullable Times before(int below) {
    int[] at = new int[n];
    Arrays.fill(at, -1);
    State begin = new State(new int[n], new int[n], at, new int[c.laneCount()], new int[c.coaches]);
    List<State> layer = List.of(begin);
    for (int left = c.count(); left > 0; left--) {
      Map<Key, List<Kept>> next = new HashMap<>();
      for (State s : layer) {
        expand(s, below, next);
      }
      List<State> all = new ArrayList<>();
      next.values().forEach(kept -> kept.forEach(k -> all.add(k.state)));
      if (all.isEmpty()) {
        return null;
      }
      all.sort(
          Comparator.comparingInt((State s) -> s.bound).thenComparingInt(s -> s.wait).thenComparingLong(s -> s.load));
      cut |= all.size() > width;
      layer = all.size() > width ? new ArrayList<>(all.subList(0, width)) : all;
    }
    return times(layer.get(0));
  }

  private void expand(State s, int below, Map<Key, List<Kept>> next) {
    int places = c.places.size();
    int[] when = new int[n * places];
    Arrays.fill(when, -1);
    // the two athletes who could be through first, wherever they run
    int first = Integer.MAX_VALUE;
    int second = Integer.MAX_VALUE;
    int whoFirst = -1;
    for (int a = 0; a < n; a++) {
      if (s.done[a] == c.count(a)) {
        continue;
      }
      Op op = c.op(a, s.done[a]);
      int free = op.eyes() == 0 ? s.ready[a] : Math.max(s.ready[a], s.eyes[0]);
      int through = -1;
      for (int p = 0; p < places; p++) {
        if (c.places.get(p).serves(op) && (s.at[a] < 0 || s.at[a] == p)) {
          int start = Math.max(free, s.lanes[laneStart[p]]);
          when[a * places + p] = start + op.hold() <= c.places.get(p).until() ? start : -1;
          through = Math.max(through, start + op.span());
        }
      }
      if (through >= 0 && through < first) {
        second = first;
        first = through;
        whoFirst = a;
      } else if (through >= 0 && through < second) {
        second = through;
      }
    }
    for (int a = 0; a < n; a++) {
      for (int p = 0; p < places; p++) {
        int start = when[a * places + p];
        if (start >= s.last && start < (a == whoFirst ? second : first) && start + c.rest[a][s.done[a]] < below) {
          State child = child(s, a, p, start);
          child.bound = bound(child, below);
          if (child.bound < below) {
            add(child, next);
          }
        }
      }
    }
  }

  private State child(State s, int a, int p, int start) {
    State out = new State(s.done.clone(), s.ready.clone(), s.at.clone(), s.lanes.clone(), s.eyes.clone());
    int k = out.done[a]++;
    Op op = c.op(a, k);
    out.ready[a] = start + op.lag();
    out.at[a] = k + 1 < c.count(a) && !c.first(a, k + 1) ? p : -1;
    Dispatch.take(out.lanes, laneStart[p], laneStart[p + 1], start + op.hold());
    if (op.eyes() > 0) {
      Dispatch.take(out.eyes, 0, out.eyes.length, start + op.eyes());
    }
    out.last = start;
    out.wait = Math.max(s.wait, start - s.ready[a]);
    out.bound = Math.max(s.bound, start + c.rest[a][k]);
    out.before = s;
    out.who = a;
    out.where = p;
    return out;
  }

  /** Nothing that comes of it finishes before [s]. */
  private int bound(State s, int below) {
    int most = s.bound;
    for (int a = 0; a < n; a++) {
      if (s.done[a] < c.count(a)) {
        most = Math.max(most, Math.max(s.ready[a], s.last) + c.rest[a][s.done[a]]);
      }
    }
    for (int p = 0; p < parts.size() && most < below; p++) {
      int machines = parts.get(p).machines();
      // all reps on all lanes say no more than those into sand where there are no others
      if (machines > 0 && !(p == 2 && byTail[1].length == 0 && parts.get(0).machines() == machines)) {
        int[] free = free(s, p, machines);
        int least = Integer.MAX_VALUE;
        long work = 0;
        for (int[] j : byTail[p]) {
          if (most >= below) {
            return most;
          }
          if (j[1] >= s.done[j[0]]) {
            work += j[2];
            least = Math.min(least, Math.max(s.ready[j[0]], s.last) + ahead[j[0]][j[1]] - ahead[j[0]][s.done[j[0]]]);
            most = Math.max(most, Bounds.filled(free, least, work) + j[3]);
          }
        }
      }
    }
    return most;
  }

  /** When the machines of a part are free, first ones first. */
  private int[] free(State s, int part, int machines) {
    if (part == 3) {
      return s.eyes;
    }
    if (machines == c.laneCount() && c.places.size() == 1) {
      return s.lanes;
    }
    int[] out = new int[machines];
    int at = 0;
    for (int p = 0; p < c.places.size(); p++) {
      if (part == 2 || (part == 0 ? c.places.get(p).sand() : c.places.get(p).flat())) {
        for (int l = laneStart[p]; l < laneStart[p + 1]; l++) {
          out[at++] = s.lanes[l];
        }
      }
    }
    Arrays.sort(out);
    return out;
  }

  private void add(State s, Map<Key, List<Kept>> next) {
    int soonest = Integer.MAX_VALUE;
    int running = 0;
    long[] order = new long[n];
    int[] name = names(s);
    for (int a = 0; a < n; a++) {
      if (s.done[a] < c.count(a)) {
        int ready = Math.max(s.ready[a], s.last);
        soonest = Math.min(soonest, ready);
        order[running++] = ((long) c.like[a][s.done[a]] << 40) | ((long) (s.at[a] < 0 ? 0 : name[s.at[a]] + 1) << 32) | ready;
      }
    }
    Arrays.sort(order, 0, running);
    int[] key = new int[2 * running];
    int[] free = new int[running + s.lanes.length + s.eyes.length];
    for (int i = 0; i < running; i++) {
      key[2 * i] = (int) (order[i] >>> 40);
      key[2 * i + 1] = (int) (order[i] >>> 32) & 0xff;
      free[i] = (int) order[i];
    }
    for (int p = 0; p < name.length; p++) {
      for (int l = laneStart[p]; l < laneStart[p + 1]; l++) {
        free[running + laneStart[name[p]] + l - laneStart[p]] = Math.max(s.lanes[l], soonest);
      }
    }
    for (int i = 0; i < s.eyes.length; i++) {
      free[running + s.lanes.length + i] = Math.max(s.eyes[i], soonest);
    }
    for (int f : free) {
      s.load += f;
    }
    List<Kept> kept = next.computeIfAbsent(new Key(key), k -> new ArrayList<>(2));
    for (Kept other : kept) {
      if (other.state.load <= s.load && other.state.bound <= s.bound && atMost(other.free, free)) {
        return;
      }
    }
    kept.removeIf(other -> s.load <= other.state.load && s.bound <= other.state.bound && atMost(free, other.free));
    kept.add(new Kept(s, free));
  }

  /** Places of which one is as good as the other change names, so that an order and its mirror are one. */
  private int[] names(State s) {
    int places = c.places.size();
    int[] name = new int[places];
    long[] weight = new long[places];
    for (int a = 0; a < n; a++) {
      if (s.at[a] >= 0) {
        weight[s.at[a]] += 1_000_003L * (c.like[a][s.done[a]] + 1) + s.ready[a];
      }
    }
    for (int p = 0; p < places; p++) {
      weight[p] += 1_000_000_007L * s.lanes[laneStart[p]];
      name[p] = p;
    }
    for (int p = 0; p < places; p++) {
      for (int q = p + 1; q < places; q++) {
        if (c.places.get(p).equals(c.places.get(q)) && (weight[p] > weight[q]) != (name[p] > name[q])) {
          int swap = name[p];
          name[p] = name[q];
          name[q] = swap;
        }
      }
    }
    return name;
  }

  private static boolean atMost(int[] a, int[] b) {
    for (int i = 0; i < a.length; i++) {
      if (a[i] > b[i]) {
        return false;
      }
    }
    return true;
  }

  private Times times(State end) {
    int[][] start = new int[n][];
    int[][] place = new int[n][];
    for (int a = 0; a < n; a++) {
      start[a] = new int[c.count(a)];
      place[a] = new int[c.count(a)];
    }
    for (State s = end; s.before != null; s = s.before) {
      start[s.who][s.done[s.who] - 1] = s.last;
      place[s.who][s.done[s.who] - 1] = s.where;
    }
    return new Times(start, place);
  }
}
