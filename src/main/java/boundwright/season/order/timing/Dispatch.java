package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Op;
import boundwright.season.order.timing.Chains.Times;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Builds an order in the sequence of its starts, the one with the least time to spare first where it presses, else the one who waits longest. */
final class Dispatch {
  private final Chains c;
  private final int[] laneStart;

  Dispatch(Chains c) {
    this.c = c;
    this.laneStart = c.laneStarts();
  }

  /** How it chooses. */
  static final class Rule {
    private final int aim;
    private final int press;
    private final int patience;
    private final int[][] home;
    private final int[] nudge;

    /**
     * @param aim finish that is aimed at [s]
     * @param press who has less than this to spare goes before those who wait longer [s]
     * @param patience a free lane may be kept so long for one who presses more [s]
     * @param home place of each athlete for sand [0] and the flat [1]; -1: where it is free first
     * @param nudge added to an athlete's time to spare [s]
     */
    Rule(int aim, int press, int patience, int[][] home, int[] nudge) {
      this.aim = aim;
      this.press = press;
      this.patience = patience;
      this.home = home;
      this.nudge = nudge;
    }

    int[][] home() {
      return home;
    }

    int[] nudge() {
      return nudge;
    }
  }

  /** An order by the rule; null if a rep finds no place that is still open. */
  @Nullable Times build(Rule rule) {
    int n = c.athletes();
    int[][] start = new int[n][];
    int[][] place = new int[n][];
    int[] next = new int[n];
    int[] ready = new int[n];
    int[] lanes = new int[c.laneCount()];
    int[] eyes = new int[c.coaches];
    int[] at = new int[n];
    int[] when = new int[n];
    int left = c.count();
    for (int a = 0; a < n; a++) {
      start[a] = new int[c.count(a)];
      place[a] = new int[c.count(a)];
    }
    for (; left > 0; left--) {
      int soonest = Integer.MAX_VALUE;
      for (int a = 0; a < n; a++) {
        if (next[a] < c.count(a)) {
          if (!seat(a, next[a], ready[a], lanes, eyes, place[a], rule, at, when)) {
            return null;
          }
          soonest = Math.min(soonest, when[a]);
        }
      }
      int best = -1;
      long bestKey = Long.MAX_VALUE;
      for (int a = 0; a < n; a++) {
        if (next[a] < c.count(a) && when[a] <= soonest + rule.patience) {
          long spare = (long) rule.aim - c.rest[a][next[a]] - when[a] + rule.nudge[a];
          // those who press by how much they do, then the others by how long they wait; the list of the squad last
          long key = spare < rule.press ? spare - 1_000_000L : ready[a] + 1000L * (when[a] - soonest) + rule.nudge[a];
          if (key < bestKey) {
            bestKey = key;
            best = a;
          }
        }
      }
      int k = next[best]++;
      Op op = c.op(best, k);
      start[best][k] = when[best];
      place[best][k] = at[best];
      ready[best] = when[best] + op.lag();
      take(lanes, laneStart[at[best]], laneStart[at[best] + 1], when[best] + op.hold());
      if (op.eyes() > 0) {
        take(eyes, 0, eyes.length, when[best] + op.eyes());
      }
    }
    return new Times(start, place);
  }

  private boolean seat(int a, int k, int ready, int[] lanes, int[] eyes, int[] places, Rule rule, int[] at, int[] when) {
    Op op = c.op(a, k);
    int free = op.eyes() == 0 ? ready : Math.max(ready, min(eyes, 0, eyes.length));
    int home = c.first(a, k) ? rule.home[a][op.sand() ? 0 : 1] : places[k - 1];
    int best = -1;
    int soon = Integer.MAX_VALUE;
    for (int p = 0; p < c.places.size(); p++) {
      if (!c.places.get(p).serves(op) || (home >= 0 && p != home)) {
        continue;
      }
      int s = Math.max(free, min(lanes, laneStart[p], laneStart[p + 1]));
      if (s + op.hold() <= c.places.get(p).until() && s < soon) {
        soon = s;
        best = p;
      }
    }
    at[a] = best;
    when[a] = soon;
    return best >= 0;
  }

  static int min(int[] free, int from, int to) {
    int least = Integer.MAX_VALUE;
    for (int i = from; i < to; i++) {
      least = Math.min(least, free[i]);
    }
    return least;
  }

  /** The one that is free first is taken until then; they stay in order. */
  static void take(int[] free, int from, int to, int until) {
    free[from] = until;
    Arrays.sort(free, from, to);
  }
}
