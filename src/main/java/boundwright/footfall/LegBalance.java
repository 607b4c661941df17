package boundwright.footfall;

import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Keeps the legs level over the sets of a session. A set of R R L x3 is 6 right and 3 left (worked), so the next has
 * to start on the other foot. Given the sets in order it mirrors as few as it must to bring the two legs' totals as
 * close as they can come; of equally good ways it takes the one that mirrors the later sets, so that the first set
 * stays as the coach wrote it.
 */
public final class LegBalance {
  /** Cells of the table that may be filled: some 60 MB, far beyond any session that is bounded. */
  private static final long MOST_CELLS = 8_000_000;

  private LegBalance() {}

  /**
   * One set as proposed.
   *
   * @param sequence the sequence to do, mirrored or not
   * @param mirrored whether it was turned to the other leg
   */
  public record ProposedSet(Sequence sequence, boolean mirrored) {}

  /**
   * The session as proposed.
   *
   * @param sets the sets in order
   * @param right contacts on the right over the session
   * @param left contacts on the left over the session
   */
  public record Proposal(List<ProposedSet> sets, int right, int left) {
    /** How far apart the legs remain, in contacts; 0 or the least that mirroring whole sets can reach. */
    public int apart() {
      return Math.abs(right - left);
    }
  }

  /**
   * Proposes which sets to mirror. At most 200 sets; exact by dynamic programming over the running surplus.
   *
   * @param sets the sets in order, as written
   */
  public static Proposal propose(List<Sequence> sets) {
    return propose(sets, Collections.nCopies(sets.size(), 1));
  }

  /**
   * As {@link #propose(List)}, for sets in which the sequence is run through several times.
   *
   * @param sets the sets in order, as written
   * @param reps how often each is run through, in the same order, at least 1
   * @throws RefusedException if the session is so large that it could not be weighed
   */
  public static Proposal propose(List<Sequence> sets, List<Integer> reps) {
    int n = sets.size();
    int[] surpluses = new int[n];
    int reach = 0;
    for (int k = 0; k < n; k++) {
      surpluses[k] = reps.get(k) * sets.get(k).surplusRight();
      reach += Math.abs(surpluses[k]);
    }
    int width = 2 * reach + 1;
    if ((long) width * (n + 1) > MOST_CELLS) {
      throw new RefusedException(
          n + " sets with up to " + reach + " contacts more on one leg are too many to balance in one session."
              + " Split the session in two.");
    }
    // cost[k][d]: the least (mirrored sets, earliness) over sets k.. when the surplus before them is d - reach
    long[][] cost = new long[n + 1][width];
    for (int d = 0; d < width; d++) {
      cost[n][d] = (long) Math.abs(d - reach) << 40;
    }
    for (int k = n - 1; k >= 0; k--) {
      int surplus = surpluses[k];
      for (int d = 0; d < width; d++) {
        long asIs = at(cost[k + 1], d + surplus);
        cost[k][d] = Math.min(asIs, turned(cost[k + 1], d - surplus, n - k));
      }
    }
    List<ProposedSet> out = new ArrayList<>(n);
    int d = reach;
    int right = 0;
    int left = 0;
    for (int k = 0; k < n; k++) {
      Sequence s = sets.get(k);
      boolean mirror = at(cost[k + 1], d + surpluses[k]) > turned(cost[k + 1], d - surpluses[k], n - k);
      Sequence chosen = mirror ? s.mirrored() : s;
      d += mirror ? -surpluses[k] : surpluses[k];
      right += reps.get(k) * chosen.count(Foot.RIGHT);
      left += reps.get(k) * chosen.count(Foot.LEFT);
      out.add(new ProposedSet(chosen, mirror));
    }
    return new Proposal(List.copyOf(out), right, left);
  }

  private static long at(long[] row, int d) {
    return d < 0 || d >= row.length ? Long.MAX_VALUE : row[d];
  }

  /** Mirroring costs one set (2^20) and a little more the earlier it comes. */
  private static long turned(long[] row, int d, int setsLeft) {
    long rest = at(row, d);
    return rest == Long.MAX_VALUE ? rest : rest + (1L << 20) + setsLeft;
  }
}
