package boundwright.season.solve;

import boundwright.season.Venue;
import boundwright.season.year.Choice;
import boundwright.season.year.Level;
import boundwright.season.year.YearLine;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.List;

/** All lines of a season together, with what they share: places that take so many, and a coach who watches one place at a time. */
public final class Joint {
  private static final int LEVELS = Level.values().length;

  private final List<YearLine> lines;
  private final int[] room;
  /** Athletes by day and place. */
  private final int[][] there;
  private final long[] total = new long[LEVELS];

  /** All at rest, but for days that leave no choice. */
  public Joint(List<YearProblem> problems, List<Venue> venues) {
    this.room = venues.stream().mapToInt(Venue::athletes).toArray();
    this.lines = new ArrayList<>();
    this.there = new int[problems.get(0).days()][venues.size()];
    for (YearProblem p : problems) {
      YearLine line = new YearLine(p);
      lines.add(line);
      add(line.total(), 1);
    }
  }

  private Joint(Joint o) {
    lines = new ArrayList<>(o.lines.stream().map(YearLine::copy).toList());
    room = o.room;
    there = new int[o.there.length][];
    for (int t = 0; t < there.length; t++) {
      there[t] = o.there[t].clone();
    }
    System.arraycopy(o.total, 0, total, 0, LEVELS);
  }

  /** The same, to be changed on its own. */
  public Joint copy() {
    return new Joint(this);
  }

  private void add(long[] of, int sign) {
    for (int k = 0; k < LEVELS; k++) {
      total[k] += sign * of[k];
    }
  }

  /** The score by {@link Level}; not a copy. */
  public long[] total() {
    return total;
  }

  /** Athletes. */
  public int athletes() {
    return lines.size();
  }

  /** The line of an athlete; to be changed through this alone. */
  public YearLine line(int athlete) {
    return lines.get(athlete);
  }

  /** Chooses. */
  public void choose(int athlete, int t, Choice c) {
    YearLine line = lines.get(athlete);
    Choice old = line.chosen(t);
    if (old.index() == c.index()) {
      return;
    }
    add(line.total(), -1);
    line.choose(t, c);
    add(line.total(), 1);
    if (old.venue() != c.venue()) {
      move(t, old.venue(), -1);
      move(t, c.venue(), 1);
    }
  }

  /** Puts a whole line in the place of an athlete's. */
  public void replace(int athlete, YearLine line) {
    YearLine old = lines.get(athlete);
    add(old.total(), -1);
    lines.set(athlete, line);
    add(line.total(), 1);
    for (int t = 0; t < there.length; t++) {
      int from = old.chosen(t).venue();
      int to = line.chosen(t).venue();
      if (from != to) {
        move(t, from, -1);
        move(t, to, 1);
      }
    }
  }

  private void move(int t, int venue, int sign) {
    if (venue < 0) {
      return;
    }
    total[Level.PLACES.at()] -= more(t);
    total[Level.REFUSED.at()] -= over(t, venue);
    there[t][venue] += sign;
    total[Level.REFUSED.at()] += over(t, venue);
    total[Level.PLACES.at()] += more(t);
  }

  private int over(int t, int venue) {
    return Math.max(0, there[t][venue] - room[venue]);
  }

  private int more(int t) {
    int used = 0;
    for (int n : there[t]) {
      used += n > 0 ? 1 : 0;
    }
    return Math.max(0, used - 1);
  }

  /** Whether one more fits a place on a day, beside {@code athlete}, who may be there already. */
  public boolean fits(int athlete, int t, int venue) {
    if (venue < 0) {
      return true;
    }
    int others = there[t][venue] - (lines.get(athlete).chosen(t).venue() == venue ? 1 : 0);
    return others < room[venue];
  }

  /** By how much the days at two places grow if {@code athlete} goes there, beside the others. */
  public int placeCost(int athlete, int t, int venue) {
    if (venue < 0) {
      return 0;
    }
    int used = 0;
    boolean here = false;
    int mine = lines.get(athlete).chosen(t).venue();
    for (int v = 0; v < there[t].length; v++) {
      int others = there[t][v] - (mine == v ? 1 : 0);
      used += others > 0 ? 1 : 0;
      here |= others > 0 && v == venue;
    }
    return here || used == 0 ? 0 : 1;
  }

  /** Days refused by a rule, tapers that are none and places with too many. */
  public int refusals() {
    int n = 0;
    for (YearLine l : lines) {
      n += l.refusals();
    }
    for (int t = 0; t < there.length; t++) {
      for (int v = 0; v < room.length; v++) {
        n += over(t, v) > 0 ? 1 : 0;
      }
    }
    return n;
  }

  /** Whether a score is better than another: the first level that differs decides. */
  public static int compare(long[] a, long[] b) {
    for (int k = 0; k < LEVELS; k++) {
      int c = Long.compare(a[k], b[k]);
      if (c != 0) {
        return c;
      }
    }
    return 0;
  }
}
