package boundwright.season.chance;

import boundwright.season.SessionKind;
import boundwright.season.ladder.DrawnClimb;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The mend's quick step: after something happened the planned days ahead are looked at, and where one would be refused, one session before it
 * or the day itself is made larger or smaller, the one that leaves least refused and then changes least; again until nothing is, at most
 * {@value #MOST_CHANGES} times. What is left is made smaller on its day by {@link YearWalk}. The full mend ({@code season.mend}) looks for
 * the fewest days over all of them and may take other kinds of sessions; this looks at one day at a time. Mutable, for one thread.
 */
final class QuickStep {
  private static final int MOST_CHANGES = 4;
  /** The last day that can be refused for what happened, and the last on which that is felt. */
  private static final int REFUSED_WITHIN = 34;

  private static final int FELT_WITHIN = 2 * REFUSED_WITHIN;
  private static final int REST = 1000;
  private static final int PARTS = LoadRun.PARTS;

  private final PlannedYear year;
  private final @Nullable PlannedWork[] work;
  private final LoadRun loads;
  private final DrawnClimb climb;
  private final Tapers tapers;
  /** By day: how many sizes smaller than planned, below 0 larger; {@link #REST} for none. */
  private final int[] smaller;

  private final Drills.Done now = new Drills.Done();
  private final int[] day = new int[FELT_WITHIN + 2];
  private final long[][] load = new long[FELT_WITHIN + 2][PARTS];
  private final long[][] seven = new long[FELT_WITHIN + 2][PARTS];
  private final long[][] week = new long[FELT_WITHIN + 2][PARTS];
  private final long[][] month = new long[FELT_WITHIN + 2][PARTS];
  private final long[] change = new long[PARTS];
  private int n;

  QuickStep(PlannedYear year, @Nullable PlannedWork[] work, LoadRun loads, DrawnClimb climb, Tapers tapers) {
    this.year = year;
    this.work = work;
    this.loads = loads;
    this.climb = climb;
    this.tapers = tapers;
    this.smaller = new int[year.days];
  }

  /** A season begins: everything is as planned. */
  void begin() {
    Arrays.fill(smaller, 0);
  }

  /** Has a session done so many sizes smaller than planned. */
  void choose(int t, int sizes) {
    smaller[t] = sizes;
  }

  /** The place in the sizes of a session from which on it may be done on a day; past the last for rest. */
  int from(int t, PlannedWork.Sizes sizes) {
    return smaller[t] == REST ? sizes.all().size() : Math.max(0, Math.min(sizes.all().size() - 1, sizes.planned() + smaller[t]));
  }

  /** Looks at the days after one. */
  void mend(int t) {
    look(t);
    long refused = refused(-1);
    for (int k = 0; k < MOST_CHANGES && refused > 0; k++) {
      long left = better(refused);
      if (left >= refused) {
        return;
      }
      refused = left;
    }
  }

  private void look(int t) {
    n = 0;
    int last = Math.min(year.days - 1, t + FELT_WITHIN);
    for (int d = t + 1; d <= last; d++) {
      PlannedWork planned = work[d];
      now.clear();
      if (planned != null) {
        PlannedWork.Sizes sizes = planned.expected(climb);
        int at = from(d, sizes);
        if (at < sizes.all().size()) {
          sizes.all().get(at).expect(climb, now);
        }
        day[n] = d;
        for (int part = 0; part < PARTS; part++) {
          load[n][part] = now.load(part);
        }
        n++;
      }
      loads.tell(d, now.right, now.left);
    }
    for (int i = 0; i < n; i++) {
      for (int part = 0; part < PARTS; part++) {
        seven[i][part] = loads.sum(part, day[i] - 6, day[i]) - (meet(i) ? load[i][part] : 0);
        week[i][part] = loads.week(part, day[i]);
        month[i][part] = loads.month(part, day[i]);
      }
    }
  }

  private boolean meet(int i) {
    PlannedWork planned = work[day[i]];
    return planned != null && planned.kind == SessionKind.MEET;
  }

  /**
   * Load that is refused if a day had {@link #change} more.
   *
   * @param changed place of that day; -1 for none
   */
  private long refused(int changed) {
    long sum = 0;
    for (int i = 0; i < n; i++) {
      sum += refused(i, changed);
    }
    return sum;
  }

  private long refused(int i, int changed) {
    int ago = changed < 0 ? -1 : day[i] - day[changed];
    boolean rests = load[i][0] + (ago == 0 ? change[0] : 0) == 0;
    long worst = 0;
    for (int part = 0; part < PARTS && !rests; part++) {
      long c = ago < 0 || ago > REFUSED_WITHIN ? 0 : change[part];
      long s = seven[i][part] + (ago <= 6 && !(ago == 0 && meet(i)) ? c : 0);
      long w = week[i][part] + (ago > 6 && ago <= 13 ? c : 0);
      long m = month[i][part] + (ago > 6 ? c : 0);
      worst = Math.max(worst, s - loads.most(part, day[i], w, m));
    }
    return worst;
  }

  /** Makes the best one change; the load that is refused after it. */
  private long better(long refused) {
    int first = 0;
    while (refused(first, -1) == 0) {
      first++;
    }
    long least = refused;
    long moved = Long.MAX_VALUE;
    int best = -1;
    int bestSize = 0;
    for (int i = 0; i <= first; i++) {
      PlannedWork planned = work[day[i]];
      if (planned == null || planned.kind == SessionKind.MEET || planned.kind == SessionKind.TEST) {
        continue;
      }
      List<Drills> all = planned.expected(climb).all();
      boolean tapered = tapers.in(day[i]);
      for (int k = 0; k <= all.size(); k++) {
        weigh(i, all, k);
        if (change[0] == 0 || (change[0] > 0 && tapered)) {
          continue;
        }
        long left = refused(i);
        if (left < least || (left == least && best >= 0 && Math.abs(change[0]) < moved)) {
          least = left;
          moved = Math.abs(change[0]);
          best = i;
          bestSize = k;
        }
      }
    }
    if (best >= 0) {
      apply(best, bestSize);
    }
    return least;
  }

  private void weigh(int i, List<Drills> all, int k) {
    now.clear();
    if (k < all.size()) {
      all.get(k).expect(climb, now);
    }
    for (int part = 0; part < PARTS; part++) {
      change[part] = now.load(part) - load[i][part];
    }
  }

  private void apply(int i, int k) {
    PlannedWork.Sizes sizes = Objects.requireNonNull(work[day[i]]).expected(climb);
    weigh(i, sizes.all(), k);
    smaller[day[i]] = k < sizes.all().size() ? k - sizes.planned() : REST;
    for (int j = i; j < n; j++) {
      int ago = day[j] - day[i];
      for (int part = 0; part < PARTS && ago <= REFUSED_WITHIN; part++) {
        seven[j][part] += ago <= 6 ? change[part] : 0;
        week[j][part] += ago > 6 && ago <= 13 ? change[part] : 0;
        month[j][part] += ago > 6 ? change[part] : 0;
      }
    }
    for (int part = 0; part < PARTS; part++) {
      load[i][part] += change[part];
    }
  }
}
