package boundwright.season.order;

import boundwright.season.order.timing.Chains;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** How many reps of each set each athlete is to do; changed while it is thought about what to drop. */
final class Doses {
  private final int[][][] reps;

  /** {@code reps[athlete][drill][set]}, taken as it is. */
  Doses(int[][][] reps) {
    this.reps = reps;
  }

  Doses copy() {
    int[][][] out = new int[reps.length][][];
    for (int a = 0; a < reps.length; a++) {
      out[a] = new int[reps[a].length][];
      for (int d = 0; d < reps[a].length; d++) {
        out[a][d] = reps[a][d].clone();
      }
    }
    return new Doses(out);
  }

  /** Reps in a set. */
  int of(int athlete, int drill, int set) {
    return reps[athlete][drill][set];
  }

  /** Reps of a drill. */
  int of(int athlete, int drill) {
    return Arrays.stream(reps[athlete][drill]).sum();
  }

  /** Reps of an athlete. */
  int of(int athlete) {
    int sum = 0;
    for (int d = 0; d < reps[athlete].length; d++) {
      sum += of(athlete, d);
    }
    return sum;
  }

  int all() {
    int sum = 0;
    for (int a = 0; a < reps.length; a++) {
      sum += of(a);
    }
    return sum;
  }

  /** Sets of a drill that have a rep. */
  int sets(int athlete, int drill) {
    return (int) Arrays.stream(reps[athlete][drill]).filter(r -> r > 0).count();
  }

  /** The last set of a drill that has a rep, from 0; -1: none. */
  int lastSet(int athlete, int drill) {
    int[] sets = reps[athlete][drill];
    for (int s = sets.length - 1; s >= 0; s--) {
      if (sets[s] > 0) {
        return s;
      }
    }
    return -1;
  }

  void put(int athlete, int drill, int set, int count) {
    reps[athlete][drill][set] = count;
  }

  int setCount(int athlete, int drill) {
    return reps[athlete][drill].length;
  }

  /** The session as bare numbers. */
  Chains chains(SessionAsk ask) {
    List<List<Chains.Op>> ops = new ArrayList<>();
    OrderSettings s = ask.settings();
    for (int a = 0; a < reps.length; a++) {
      List<Chains.Op> chain = new ArrayList<>();
      for (int d = 0; d < reps[a].length; d++) {
        SessionDrill drill = ask.drills().get(d);
        int steps = ask.athletes().get(a).parts().get(d).steps();
        int work = s.work_s(drill.sequence(), steps);
        int hold = s.hold_s(drill.sequence(), steps, drill.inSand());
        int lag = Math.max(hold, work + s.rest().after(steps, work));
        Chains.Op op = new Chains.Op(d, drill.inSand(), hold, drill.watched() ? work + s.say_s() : 0, lag);
        for (int k = of(a, d); k > 0; k--) {
          chain.add(op);
        }
      }
      ops.add(chain);
    }
    List<Chains.Lanes> places =
        ask.places().stream()
            .map(p -> new Chains.Lanes(p.lanes(), p.sand(), p.flat(), p.open_min() == null ? Chains.OPEN : p.open_min() * 60))
            .toList();
    return new Chains(ops, places, ask.coaches());
  }
}
