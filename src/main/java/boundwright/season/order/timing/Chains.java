package boundwright.season.order.timing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The session as bare numbers: of each athlete a chain of reps, each of which holds a lane and, if it is watched, a coach, and after each of
 * which a least time passes before the next. Whole seconds. A drill is done at one place, from its first rep to its last.
 */
public final class Chains {
  /** A place that never closes. */
  public static final int OPEN = Integer.MAX_VALUE / 4;

  /**
   * A rep.
   *
   * @param drill from 0
   * @param sand whether it ends in sand
   * @param hold keeps its lane so long [s], 1 or more
   * @param eyes keeps a coach so long [s]; 0: is not watched
   * @param lag least time from its start to the athlete's next start [s]
   */
  public record Op(int drill, boolean sand, int hold, int eyes, int lag) {
    /** Until everybody is done with it [s]. */
    public int span() {
      return Math.max(hold, eyes);
    }
  }

  /**
   * A place.
   *
   * @param lanes at once
   * @param sand whether reps into sand can be done
   * @param flat whether others can be done
   * @param until reps end by then [s]
   */
  public record Lanes(int lanes, boolean sand, boolean flat, int until) {
    boolean serves(Op op) {
      return op.sand ? sand : flat;
    }
  }

  final List<List<Op>> ops;
  final List<Lanes> places;
  final int coaches;
  /** From the start of rep k to the end of the athlete's session [s]; 0 after the last. */
  final int[][] rest;
  /** Equal where what is left of two athletes is equal. */
  final int[][] like;

  /** Takes copies; of each athlete the reps in order. */
  public Chains(List<List<Op>> ops, List<Lanes> places, int coaches) {
    this.ops = ops.stream().map(List::copyOf).toList();
    this.places = List.copyOf(places);
    this.coaches = coaches;
    this.rest = new int[ops.size()][];
    this.like = new int[ops.size()][];
    Map<List<Op>, Integer> seen = new HashMap<>();
    for (int a = 0; a < ops.size(); a++) {
      List<Op> chain = this.ops.get(a);
      rest[a] = new int[chain.size() + 1];
      like[a] = new int[chain.size() + 1];
      for (int k = chain.size() - 1; k >= 0; k--) {
        Op op = chain.get(k);
        rest[a][k] = Math.max(op.span(), k + 1 < chain.size() ? op.lag + rest[a][k + 1] : 0);
      }
      for (int k = 0; k <= chain.size(); k++) {
        // what is left, with whether its first rep may still choose a place
        List<Op> left = new ArrayList<>(chain.subList(k, chain.size()));
        if (k < chain.size() && !first(a, k)) {
          left.add(0, new Op(-1, false, 0, 0, 0));
        }
        like[a][k] = seen.computeIfAbsent(left, l -> seen.size());
      }
    }
  }

  /** How many athletes. */
  public int athletes() {
    return ops.size();
  }

  /** Reps of an athlete. */
  public int count(int athlete) {
    return ops.get(athlete).size();
  }

  /** All reps. */
  public int count() {
    return ops.stream().mapToInt(List::size).sum();
  }

  /** A rep of an athlete, from 0. */
  public Op op(int athlete, int k) {
    return ops.get(athlete).get(k);
  }

  /** Whether the rep is the first of its drill, so that a place may be chosen. */
  public boolean first(int athlete, int k) {
    return k == 0 || op(athlete, k).drill != op(athlete, k - 1).drill;
  }

  /** Lanes of all places. */
  public int laneCount() {
    return places.stream().mapToInt(Lanes::lanes).sum();
  }

  /** Index of the first lane of each place; the last entry is the number of lanes. */
  public int[] laneStarts() {
    int[] out = new int[places.size() + 1];
    for (int p = 0; p < places.size(); p++) {
      out[p + 1] = out[p] + places.get(p).lanes();
    }
    return out;
  }

  /** Whether every rep has a place that could take it. */
  public boolean placeable() {
    return ops.stream().flatMap(List::stream).distinct().allMatch(o -> places.stream().anyMatch(p -> p.serves(o) && o.hold <= p.until()));
  }

  /** When each rep starts and where. */
  public static final class Times {
    private final int[][] start;
    private final int[][] place;

    Times(int[][] start, int[][] place) {
      this.start = start;
      this.place = place;
    }

    /** When each rep starts, [athlete][rep], [s]; not to be changed. */
    public int[][] start() {
      return start;
    }

    /** Where each rep is done, [athlete][rep]; not to be changed. */
    public int[][] place() {
      return place;
    }

    /** When the last lane is clear [s]. */
    public int finish(Chains c) {
      int end = 0;
      for (int a = 0; a < start.length; a++) {
        for (int k = 0; k < start[a].length; k++) {
          end = Math.max(end, start[a][k] + c.op(a, k).span());
        }
      }
      return end;
    }

    /** When an athlete's last lane is clear [s]. */
    public int end(Chains c, int a) {
      int k = start[a].length - 1;
      return k < 0 ? 0 : start[a][k] + c.op(a, k).span();
    }

    /** The longest that an athlete waits rested [s]. */
    public int longestWait(Chains c) {
      int most = 0;
      for (int a = 0; a < start.length; a++) {
        int ready = 0;
        for (int k = 0; k < start[a].length; k++) {
          most = Math.max(most, start[a][k] - ready);
          ready = start[a][k] + c.op(a, k).lag();
        }
      }
      return most;
    }
  }
}
