package boundwright.season.order;

import java.util.Arrays;

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
}
