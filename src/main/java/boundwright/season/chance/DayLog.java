package boundwright.season.chance;

import boundwright.footfall.Foot;
import boundwright.load.GuardLimits;
import boundwright.season.year.YearProblem;

/**
 * What was done on each day of a simulated season, and the rules of the plan held against it once more when it is over: written a second
 * time, day by day without running sums, so that the quick step is not its own judge. Mutable, for one thread.
 */
final class DayLog {
  private static final int BEFORE = YearProblem.before();
  private static final int ROUNDING = 10;

  private final PlannedYear year;
  private final long refuseMille;
  /** By day, {@code BEFORE} before the season first [1/100 standing-bound contact]. */
  private final int[] right;

  private final int[] left;
  private final int[] said;
  private final boolean[] hard;
  private final boolean[] meet;

  DayLog(PlannedYear year) {
    this.year = year;
    GuardLimits limits = year.limits;
    this.refuseMille = Math.round(1000 + 10 * limits.ownPercent().refuse());
    int n = BEFORE + year.days;
    right = new int[n];
    left = new int[n];
    said = new int[n];
    hard = new boolean[n];
    meet = new boolean[n];
    for (int d = -BEFORE; d < 0; d++) {
      right[d + BEFORE] = year.numbers.past(Foot.RIGHT, d);
      left[d + BEFORE] = year.numbers.past(Foot.LEFT, d);
      said[d + BEFORE] = year.numbers.said(d);
    }
    for (int t = 0; t < year.open; t++) {
      right[t + BEFORE] = year.doneRight[t];
      left[t + BEFORE] = year.doneLeft[t];
      hard[t + BEFORE] = year.doneHard[t];
    }
  }

  /** What was done on a day. */
  void tell(int t, Drills.Done d) {
    int i = t + BEFORE;
    right[i] = d.right;
    left[i] = d.left;
    hard[i] = d.hard;
    meet[i] = d.meet;
  }

  /** Open days that a rule refuses. */
  int refused() {
    int n = 0;
    for (int t = year.open; t < year.days; t++) {
      int i = t + BEFORE;
      boolean work = right[i] + left[i] > 0;
      n += work && (tooMuch(i) || tooSoon(i)) ? 1 : 0;
    }
    return n;
  }

  private boolean tooMuch(int i) {
    int[] week = new int[LoadRun.PARTS];
    int[] before = new int[LoadRun.PARTS];
    int[] month = new int[LoadRun.PARTS];
    for (int ago = 0; ago <= 34; ago++) {
      int k = i - ago;
      boolean counts = ago > 0 || !meet[i];
      int r = counts ? right[k] : 0;
      int l = counts ? left[k] : 0;
      if (ago < 7) {
        add(week, r, l);
      } else {
        add(month, r + said[k], l + said[k]);
        if (ago < 14) {
          add(before, r + said[k], l + said[k]);
        }
      }
    }
    for (int part = 0; part < LoadRun.PARTS; part++) {
      long start = part == 0 ? 4L * year.numbers.startWeek() : 2L * year.numbers.startWeek();
      long own = Math.max(Math.max(4L * before[part], month[part]), start);
      if (week[part] + ROUNDING > year.numbers.backMost(part, i - BEFORE) || 4000L * (week[part] + ROUNDING) > refuseMille * own) {
        return true;
      }
    }
    return false;
  }

  private static void add(int[] to, int r, int l) {
    to[0] += r + l;
    to[1] += r;
    to[2] += l;
  }

  private boolean tooSoon(int i) {
    if (!hard[i] || meet[i]) {
      return false;
    }
    for (int ago = 1; ago < year.refuseBelowDays && ago <= i - BEFORE; ago++) {
      if (hard[i - ago]) {
        return true;
      }
    }
    return i - BEFORE < year.refuseBelowDays && year.numbers.sinceHardBefore(i - BEFORE) < year.refuseBelowDays;
  }
}
