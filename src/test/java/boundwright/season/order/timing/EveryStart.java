package boundwright.season.order.timing;

import boundwright.season.order.timing.Chains.Lanes;
import boundwright.season.order.timing.Chains.Op;
import java.util.ArrayList;
import java.util.List;

/**
 * The slow model: tries every whole second at which each rep could start and every place, and counts lanes and coaches second by second. It
 * knows nothing of sequences of starts, bounds or rules, and shares no line with the solver but the records of the question.
 */
final class EveryStart {
  private final List<List<Op>> ops;
  private final List<Lanes> places;
  private final int coaches;
  private int[][] busy = new int[0][0];
  private int[] watching = new int[0];
  private int limit;

  EveryStart(Chains c) {
    this.ops = c.ops;
    this.places = c.places;
    this.coaches = c.coaches;
  }

  /** The least finish [s], or -1 if none is at most {@code most}. */
  int finish(int most) {
    int from = 0;
    for (List<Op> chain : ops) {
      int at = 0;
      for (int k = 0; k < chain.size(); k++) {
        from = Math.max(from, at + Math.max(chain.get(k).hold(), chain.get(k).eyes()));
        at += chain.get(k).lag();
      }
    }
    for (limit = from; limit <= most; limit++) {
      busy = new int[places.size()][limit];
      watching = new int[limit];
      if (fits(0, 0, 0, -1)) {
        return limit;
      }
    }
    return -1;
  }

  private boolean fits(int athlete, int k, int ready, int place) {
    if (athlete == ops.size()) {
      return true;
    }
    List<Op> chain = ops.get(athlete);
    if (k == chain.size()) {
      return fits(athlete + 1, 0, 0, -1);
    }
    Op op = chain.get(k);
    int span = Math.max(op.hold(), op.eyes());
    int after = 0;
    for (int j = k; j < chain.size(); j++) {
      after = Math.max(after, sum(chain, k, j) + Math.max(chain.get(j).hold(), chain.get(j).eyes()));
    }
    boolean stays = k > 0 && chain.get(k - 1).drill() == op.drill();
    for (int p : options(op, stays ? place : -1)) {
      for (int s = ready; s + after <= limit && s + span <= limit; s++) {
        if (s + op.hold() <= places.get(p).until() && free(p, s, op)) {
          put(p, s, op, 1);
          boolean found = fits(athlete, k + 1, s + op.lag(), p);
          put(p, s, op, -1);
          if (found) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static int sum(List<Op> chain, int from, int to) {
    int out = 0;
    for (int i = from; i < to; i++) {
      out += chain.get(i).lag();
    }
    return out;
  }

  private List<Integer> options(Op op, int only) {
    List<Integer> out = new ArrayList<>();
    for (int p = 0; p < places.size(); p++) {
      if ((only < 0 || p == only) && (op.sand() ? places.get(p).sand() : places.get(p).flat())) {
        out.add(p);
      }
    }
    return out;
  }

  private boolean free(int p, int s, Op op) {
    for (int t = s; t < s + op.hold(); t++) {
      if (busy[p][t] >= places.get(p).lanes()) {
        return false;
      }
    }
    for (int t = s; t < s + op.eyes(); t++) {
      if (watching[t] >= coaches) {
        return false;
      }
    }
    return true;
  }

  private void put(int p, int s, Op op, int by) {
    for (int t = s; t < s + op.hold(); t++) {
      busy[p][t] += by;
    }
    for (int t = s; t < s + op.eyes(); t++) {
      watching[t] += by;
    }
  }
}
