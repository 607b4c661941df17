package boundwright.season.chance;

import boundwright.footfall.Foot;
import boundwright.load.GuardLimits;
import boundwright.season.year.YearProblem;

/**
 * Loads of an athlete's legs day by day as running sums, and how much a day may still hold beside the own weeks, by the definitions of
 * {@code season.year.YearRules}: seven days against the larger of the week before and a quarter of the four before, at least the week with
 * which anybody may start; both legs and each. Loads are whole hundredths of a standing-bound contact; part 0 is both legs, 1 the right, 2
 * the left. Mutable, for one thread.
 */
final class LoadRun {
  static final int PARTS = 3;
  private static final int BEFORE = YearProblem.before();
  /** Kept free of a refusal for rounding, as in the rules of the plan [1/100 standing-bound contact]. */
  private static final int ROUNDING = 10;

  private final YearProblem problem;
  private final long refuseMille;
  private final long startWeek;
  /** Sums of the days before one, by leg; what the coach said of days without a log beside them. */
  private final long[] right;

  private final long[] left;
  private final long[] said;

  LoadRun(YearProblem p, GuardLimits limits) {
    problem = p;
    refuseMille = Math.round(1000 + 10 * limits.ownPercent().refuse());
    startWeek = p.startWeek();
    int n = BEFORE + p.days() + 1;
    right = new long[n];
    left = new long[n];
    said = new long[n];
    for (int d = -BEFORE; d < p.days(); d++) {
      int i = d + BEFORE;
      right[i + 1] = right[i] + (d < 0 ? p.past(Foot.RIGHT, d) : 0);
      left[i + 1] = left[i] + (d < 0 ? p.past(Foot.LEFT, d) : 0);
      said[i + 1] = said[i] + (d < 0 ? p.said(d) : 0);
    }
  }

  /** The load of a day; days are told in order. */
  void tell(int day, int rightLoad, int leftLoad) {
    int i = day + BEFORE;
    right[i + 1] = right[i] + rightLoad;
    left[i + 1] = left[i] + leftLoad;
  }

  /** Load from a day to another that was told, of a part. */
  long sum(int part, int from, int to) {
    int a = Math.max(0, from + BEFORE);
    int b = Math.max(a, to + 1 + BEFORE);
    return part == 0 ? right[b] - right[a] + left[b] - left[a] : part == 1 ? right[b] - right[a] : left[b] - left[a];
  }

  private long told(int part, int from, int to) {
    long words = said[to + 1 + BEFORE] - said[Math.max(0, from + BEFORE)];
    return sum(part, from, to) + (part == 0 ? 2 * words : words);
  }

  /** Load of the week that a day is compared with: the seven days that end a week before it. */
  long week(int part, int day) {
    return told(part, day - 13, day - 7);
  }

  /** Load of the four weeks that a day is compared with. */
  long month(int part, int day) {
    return told(part, day - 34, day - 7);
  }

  /** The most that seven days up to a day may hold; the days up to a week before it have been told. */
  long most(int part, int day) {
    return most(part, day, week(part, day), month(part, day));
  }

  /** The same, from the week and the four weeks that it is compared with; a leg on its way back has its stage's week at most. */
  long most(int part, int day, long week, long month) {
    long base = Math.max(Math.max(4 * week, month), part == 0 ? 4 * startWeek : 2 * startWeek);
    return Math.min(problem.backMost(part, day), Math.floorDiv(refuseMille * base, 4000)) - ROUNDING;
  }
}
