package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Lanes;
import boundwright.season.order.timing.Chains.Op;
import boundwright.season.order.timing.Chains.Times;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Builds an order rep by rep in the sequence of a list, each into the first gap in which its athlete, a lane and a coach are free: who has
 * least to spare is put down first, without a wait, and the others round them (serial schedule generation; Kolisch 1996, from memory).
 */
final class Insertion {
  private final Chains c;
  private final int horizon;
  private final byte[][] busy;
  private final byte[] watching;

  /** Looks no further than {@code horizon} [s]. */
  Insertion(Chains c, int horizon) {
    this.c = c;
    this.horizon = horizon;
    this.busy = new byte[c.places.size()][horizon];
    this.watching = new byte[horizon];
  }

  /**
   * An order; null where a rep finds no gap before the horizon.
   *
   * @param key of each athlete's reps, smallest first; a rep never comes before the one before it
   * @param home as in {@link Dispatch.Rule}
   */
  @Nullable Times build(double[][] key, int[][] home) {
    for (byte[] place : busy) {
      Arrays.fill(place, (byte) 0);
    }
    Arrays.fill(watching, (byte) 0);
    int n = c.athletes();
    int[] next = new int[n];
    int[] ready = new int[n];
    int[][] start = new int[n][];
    int[][] place = new int[n][];
    for (int a = 0; a < n; a++) {
      start[a] = new int[c.count(a)];
      place[a] = new int[c.count(a)];
    }
    for (int left = c.count(); left > 0; left--) {
      int who = -1;
      for (int a = 0; a < n; a++) {
        if (next[a] < c.count(a) && (who < 0 || key[a][next[a]] < key[who][next[who]])) {
          who = a;
        }
      }
      int k = next[who]++;
      Op op = c.op(who, k);
      int only = c.first(who, k) ? home[who][op.sand() ? 0 : 1] : place[who][k - 1];
      int best = horizon;
      int where = -1;
      for (int p = 0; p < busy.length; p++) {
        if (c.places.get(p).serves(op) && (only < 0 || only == p)) {
          int s = gap(op, p, ready[who], best);
          if (s < best) {
            best = s;
            where = p;
          }
        }
      }
      if (where < 0) {
        return null;
      }
      start[who][k] = best;
      place[who][k] = where;
      ready[who] = best + op.lag();
      for (int t = best; t < best + op.hold(); t++) {
        busy[where][t]++;
      }
      for (int t = best; t < best + op.eyes(); t++) {
        watching[t]++;
      }
    }
    return new Times(start, place);
  }

  /** The first start from {@code from} on in which it fits, or {@code most}. */
  private int gap(Op op, int p, int from, int most) {
    Lanes lanes = c.places.get(p);
    int last = Math.min(most - 1, Math.min(lanes.until() - op.hold(), horizon - op.span()));
    int s = from;
    while (s <= last) {
      int clash = clash(op, p, lanes.lanes(), s);
      if (clash < 0) {
        return s;
      }
      s = clash + 1;
    }
    return most;
  }

  /** The last second that is taken, or -1. */
  private int clash(Op op, int p, int lanes, int s) {
    for (int t = s + op.hold() - 1; t >= s; t--) {
      if (busy[p][t] >= lanes) {
        return t;
      }
    }
    for (int t = s + op.eyes() - 1; t >= s; t--) {
      if (watching[t] >= c.coaches) {
        return t;
      }
    }
    return -1;
  }
}
