package boundwright.season.conflict;

import boundwright.footfall.Foot;
import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import org.chocosolver.solver.exception.ContradictionException;
import org.chocosolver.solver.variables.IntVar;

/** Seven days up to a day beside the larger of the week before and a quarter of the four before, both legs and each; a leg on its way back beside
 * its stage too. */
final class OwnWeeksRule extends Rule {
  /** Days that it looks at. */
  static final int REACH = 35;
  private static final int PARTS = 3;
  private static final int ROUNDING = 10;

  private final int last;
  private final int before;
  private final long refuse;
  private final long[] start = new long[PARTS];
  /** Most of a leg on its way back. */
  private final long[] most = new long[PARTS];
  private final long[] seven = new long[PARTS];
  private final long[] week = new long[PARTS];
  private final long[] month = new long[PARTS];

  /** Cells from the first day that it looks at, or the season's first, to the day {@code t} itself. */
  OwnWeeksRule(IntVar[] cells, Choice[][] options, YearProblem p, int t) {
    super(cells, options);
    last = cells.length - 1;
    before = Math.max(0, last - 6);
    refuse = p.refuseMille();
    for (int part = 0; part < PARTS; part++) {
      most[part] = p.backMost(part, t);
      start[part] = (part == 0 ? 4L : 2L) * p.startWeek();
      for (int ago = 0; ago < REACH; ago++) {
        int day = t - ago;
        if (day < 0) {
          long load = part == 0 ? (long) p.past(Foot.RIGHT, day) + p.past(Foot.LEFT, day) : p.past(part == 1 ? Foot.RIGHT : Foot.LEFT, day);
          long said = (part == 0 ? 2L : 1L) * p.said(day);
          seven[part] += ago < 7 ? load : 0;
          week[part] += ago >= 7 && ago < 14 ? load + said : 0;
          month[part] += ago >= 7 ? load + said : 0;
        }
      }
    }
  }

  private boolean inWeek(int i) {
    return last - i < 14;
  }

  private static long own(Choice c, int part) {
    return c.meet() ? 0 : units(c, part);
  }

  private boolean over(long ofSeven, long weekBefore, long monthBefore, int part) {
    return ofSeven + ROUNDING > most[part] || 4000 * (ofSeven + ROUNDING) > refuse * Math.max(Math.max(4 * weekBefore, monthBefore), start[part]);
  }

  @Override
  void filter() throws ContradictionException {
    if (!may(last, c -> !c.rest())) {
      return;
    }
    for (int part = 0; part < PARTS; part++) {
      int p = part;
      long least = seven[p];
      for (int i = before; i < last; i++) {
        least += least(i, p);
      }
      long weekMost = week[p];
      long monthMost = month[p];
      for (int i = 0; i < before; i++) {
        long most = most(i, p);
        weekMost += inWeek(i) ? most : 0;
        monthMost += most;
      }
      long w = weekMost;
      long m = monthMost;
      long s = least;
      keep(last, c -> c.rest() || !over(s + own(c, p), w, m, p));
      if (!may(last, Choice::rest)) {
        atWork(s, w, m, p);
      }
    }
  }

  /** The day itself is not at rest. */
  private void atWork(long least, long weekMost, long monthMost, int p) throws ContradictionException {
    long own = Long.MAX_VALUE;
    int end = vars[last].getUB();
    for (int v = vars[last].getLB(); v <= end; v = vars[last].nextValue(v)) {
      own = Math.min(own, own(option(last, v), p));
    }
    long all = least + own;
    for (int i = before; i < last; i++) {
      long others = all - least(i, p);
      keep(i, c -> !over(others + units(c, p), weekMost, monthMost, p));
    }
    for (int i = 0; i < before; i++) {
      long most = most(i, p);
      boolean in = inWeek(i);
      keep(i, c -> !over(all, weekMost - (in ? most - units(c, p) : 0), monthMost - most + units(c, p), p));
    }
  }

  @Override
  boolean kept() {
    Choice c = only(last);
    if (c.rest()) {
      return true;
    }
    for (int p = 0; p < PARTS; p++) {
      long s = seven[p] + own(c, p);
      long w = week[p];
      long m = month[p];
      for (int i = 0; i < last; i++) {
        long load = units(only(i), p);
        s += i >= before ? load : 0;
        w += i < before && inWeek(i) ? load : 0;
        m += i < before ? load : 0;
      }
      if (over(s, w, m, p)) {
        return false;
      }
    }
    return true;
  }
}
