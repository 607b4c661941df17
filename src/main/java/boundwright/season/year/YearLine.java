package boundwright.season.year;

import boundwright.season.SessionKind;
import org.jspecify.annotations.Nullable;

/**
 * One athlete's chosen days, with the score of {@link YearRules} by {@link Level}, kept right after every change. A change on day d is
 * seen by the rules on d to d + 34.
 */
public final class YearLine {
  private static final int OFF = YearProblem.BEFORE;
  /** Farthest day on which a change is seen. */
  private static final int REACH = 34;
  private static final int LEVELS = Level.values().length;
  private static final int KINDS = SessionKind.values().length;

  private final YearProblem p;
  private final long refuseMille;
  private final long cautionMille;
  private final Choice[] chosen;
  private final int[] right;
  private final int[] left;
  private final int[] right7;
  private final int[] left7;
  private final int[] right28;
  private final int[] left28;
  private final int[] said7;
  private final int[] said28;
  private final int[] weekLoad;
  private final int[] weekSurplus;
  private final int[] weekKinds;
  private final long[] dayCost;
  private final long[] weekCost;
  private final long[] taperCost;
  private final long[] total = new long[LEVELS];

  /** All at rest, but for days that leave no choice. */
  public YearLine(YearProblem p) {
    this.p = p;
    this.refuseMille = Math.round(1000 + 10 * p.refusePercent);
    this.cautionMille = Math.round(1000 + 10 * p.cautionPercent);
    int n = p.days + OFF;
    chosen = new Choice[p.days];
    right = new int[n];
    left = new int[n];
    System.arraycopy(p.pastRight, 0, right, 0, OFF);
    System.arraycopy(p.pastLeft, 0, left, 0, OFF);
    int[] said = new int[n];
    System.arraycopy(p.said, 0, said, 0, OFF);
    weekLoad = new int[p.wanted.length];
    weekSurplus = new int[p.wanted.length];
    weekKinds = new int[p.wanted.length * KINDS];
    for (int t = 0; t < p.days; t++) {
      chosen[t] = p.choices.get(t).get(0);
      enter(t, chosen[t], 1);
    }
    right7 = windows(right, 7);
    left7 = windows(left, 7);
    right28 = windows(right, 28);
    left28 = windows(left, 28);
    said7 = windows(said, 7);
    said28 = windows(said, 28);
    dayCost = new long[p.days];
    weekCost = new long[p.wanted.length * LEVELS];
    taperCost = new long[p.tapers.length];
    for (int t = 0; t < p.days; t++) {
      judgeDay(t);
    }
    for (int w = 0; w < p.wanted.length; w++) {
      judgeWeek(w);
    }
    judgeTapers(0, Integer.MAX_VALUE);
  }

  /** What was published, wherever it can still be chosen; rest elsewhere. */
  public static YearLine published(YearProblem p) {
    YearLine out = new YearLine(p);
    for (int t = 0; t < p.days; t++) {
      if (p.published[t] >= 0) {
        out.choose(t, p.choices.get(t).get(p.published[t]));
      }
    }
    return out;
  }

  private YearLine(YearLine o) {
    p = o.p;
    refuseMille = o.refuseMille;
    cautionMille = o.cautionMille;
    chosen = o.chosen.clone();
    right = o.right.clone();
    left = o.left.clone();
    right7 = o.right7.clone();
    left7 = o.left7.clone();
    right28 = o.right28.clone();
    left28 = o.left28.clone();
    said7 = o.said7;
    said28 = o.said28;
    weekLoad = o.weekLoad.clone();
    weekSurplus = o.weekSurplus.clone();
    weekKinds = o.weekKinds.clone();
    dayCost = o.dayCost.clone();
    weekCost = o.weekCost.clone();
    taperCost = o.taperCost.clone();
    System.arraycopy(o.total, 0, total, 0, LEVELS);
  }

  /** The same, to be changed on its own. */
  public YearLine copy() {
    return new YearLine(this);
  }

  private static int[] windows(int[] of, int days) {
    int[] out = new int[of.length];
    int sum = 0;
    for (int i = 0; i < of.length; i++) {
      sum += of[i] - (i >= days ? of[i - days] : 0);
      out[i] = sum;
    }
    return out;
  }

  /** Whose. */
  public YearProblem problem() {
    return p;
  }

  /** What is chosen on a day. */
  public Choice chosen(int t) {
    return chosen[t];
  }

  /** The score by {@link Level}; not a copy. */
  public long[] total() {
    return total;
  }

  /** Chooses. */
  public void choose(int t, Choice c) {
    Choice old = chosen[t];
    if (old.index() == c.index()) {
      return;
    }
    int dr = c.right() - old.right();
    int dl = c.left() - old.left();
    enter(t, old, -1);
    chosen[t] = c;
    enter(t, c, 1);
    int i = t + OFF;
    int end = Math.min(right.length, i + 28);
    for (int k = i; k < Math.min(right.length, i + 7); k++) {
      right7[k] += dr;
      left7[k] += dl;
    }
    for (int k = i; k < end; k++) {
      right28[k] += dr;
      left28[k] += dl;
    }
    judgeDay(t);
    int reach = Math.min(p.days - 1, t + REACH);
    for (int k = t + 1; k <= reach; k++) {
      if (!chosen(k).rest()) {
        judgeDay(k);
      }
    }
    judgeWeek(t / 7);
    judgeTapers(t, t);
  }

  private void enter(int t, Choice c, int sign) {
    int i = t + OFF;
    right[i] += sign * c.right();
    left[i] += sign * c.left();
    int w = t / 7;
    weekLoad[w] += sign * (c.right() + c.left());
    weekSurplus[w] += sign * c.surplus();
    if (c.session() != null) {
      weekKinds[w * KINDS + c.session().kind().at()] += sign;
    }
  }

  private void judgeDay(int t) {
    addDay(dayCost[t], -1, total);
    Choice c = chosen[t];
    dayCost[t] =
        pack(
            YearRules.ownWeeksRefused(this, t, c) + YearRules.spacingRefused(this, t, c) + YearRules.wayBackRefused(this, t, c), YearRules.dayWish(this, t, c), cautions(t, c),
            YearRules.changed(this, t, c), YearRules.same(this, t, c));
    addDay(dayCost[t], 1, total);
  }

  private long cautions(int t, Choice c) {
    return t < p.open ? 0 : c.cautions() + YearRules.ownWeeksCaution(this, t, c) + YearRules.spacingCaution(this, t, c) + YearRules.sessionsCaution(this, t, c);
  }

  /** What a day costs in one number, so that lines are copied fast: two bits each of wish, change and repeat, ten of cautions, the rest refused. */
  private static long pack(long refused, long wish, long cautions, long changed, long same) {
    return refused << 16 | cautions << 6 | wish << 4 | changed << 2 | same;
  }

  private static void addDay(long cost, int sign, long[] to) {
    to[Level.REFUSED.at()] += sign * part(cost, Level.REFUSED);
    to[Level.CAUTIONS.at()] += sign * part(cost, Level.CAUTIONS);
    to[Level.WISHES.at()] += sign * part(cost, Level.WISHES);
    to[Level.CHANGES.at()] += sign * part(cost, Level.CHANGES);
    to[Level.SAME.at()] += sign * part(cost, Level.SAME);
  }

  private static long part(long cost, Level level) {
    return switch (level) {
      case REFUSED -> cost >> 16;
      case CAUTIONS -> cost >> 6 & 1023;
      case WISHES -> cost >> 4 & 3;
      case CHANGES -> cost >> 2 & 3;
      case SAME -> cost & 3;
      case OFF, PLACES, UNEQUAL -> 0;
    };
  }

  private void addWeek(int w, int sign, long[] to) {
    for (int k = 0; k < LEVELS; k++) {
      to[k] += sign * weekCost[w * LEVELS + k];
    }
  }

  private void judgeWeek(int w) {
    addWeek(w, -1, total);
    int at = w * LEVELS;
    weekCost[at + Level.WISHES.at()] = YearRules.weekWishes(this, w);
    weekCost[at + Level.OFF.at()] = YearRules.off(this, w);
    weekCost[at + Level.UNEQUAL.at()] = YearRules.unequal(this, w);
    addWeek(w, 1, total);
  }

  /**
   * What the score would be if {@code c} were chosen on a day whose later days are at rest, but for what the week costs, which is left
   * out; later meets are not looked at again.
   *
   * @param key its first entries are written
   */
  public void preview(int t, Choice c, long[] key) {
    System.arraycopy(total, 0, key, 0, LEVELS);
    addDay(dayCost[t], -1, key);
    addWeek(t / 7, -1, key);
    key[Level.REFUSED.at()] += YearRules.ownWeeksRefused(this, t, c) + YearRules.spacingRefused(this, t, c) + YearRules.wayBackRefused(this, t, c);
    key[Level.WISHES.at()] += YearRules.dayWish(this, t, c);
    key[Level.CAUTIONS.at()] += cautions(t, c);
    key[Level.CHANGES.at()] += YearRules.changed(this, t, c);
    key[Level.SAME.at()] += YearRules.same(this, t, c);
    long more = (long) c.right() + c.left() - chosen[t].right() - chosen[t].left();
    for (int i = 0; i < taperCost.length; i++) {
      YearProblem.Taper taper = p.tapers[i];
      if (t >= taper.from() && t <= taper.meet()) {
        key[0] += YearRules.taperRefused(this, taper, more) - taperCost[i];
      }
    }
  }

  /** Tapers that see one of these days. */
  private void judgeTapers(int from, int to) {
    for (int i = 0; i < taperCost.length; i++) {
      YearProblem.Taper taper = p.tapers[i];
      if (to >= taper.from() - 28 && from <= taper.meet()) {
        total[0] -= taperCost[i];
        taperCost[i] = YearRules.taperRefused(this, taper, 0);
        total[0] += taperCost[i];
      }
    }
  }

  /** Days on which a rule of the guard refuses, and tapers that are none. */
  public int refusals() {
    int n = 0;
    for (int t = 0; t < p.days; t++) {
      n += dayCost(t, Level.REFUSED) > 0 ? 1 : 0;
    }
    for (long t : taperCost) {
      n += t > 0 ? 1 : 0;
    }
    return n;
  }

  /** Which rule of the athlete's own line refuses something. */
  public enum Cause {
    /** Seven days beside the athlete's own weeks. */
    OWN_WEEKS,
    /** Hours between hard sessions. */
    SPACING,
    /** The load does not fall before a main meet. */
    TAPER
  }

  /**
   * The first refusal.
   *
   * @param day on which it is told; the meet of a taper
   * @param cause which rule
   */
  public record Refusal(int day, Cause cause) {}

  /**
   * The first refusal from a day on, those of days before those of tapers; null if nothing is refused.
   *
   * @param from first day that is looked at; tapers are looked at whenever they are
   */
  public @Nullable Refusal refusal(int from) {
    for (int t = from; t < p.days; t++) {
      if (dayCost(t, Level.REFUSED) > 0) {
        return new Refusal(t, YearRules.ownWeeksRefused(this, t, chosen[t]) + YearRules.wayBackRefused(this, t, chosen[t]) > 0 ? Cause.OWN_WEEKS : Cause.SPACING);
      }
    }
    for (int i = 0; i < taperCost.length; i++) {
      if (taperCost[i] > 0) {
        return new Refusal(p.tapers[i].meet(), Cause.TAPER);
      }
    }
    return null;
  }

  /** What a day costs at a level. */
  public long dayCost(int t, Level level) {
    return part(dayCost[t], level);
  }

  /** What a week costs at a level. */
  public long weekCost(int w, Level level) {
    return weekCost[w * LEVELS + level.at()];
  }

  /** Twenty-eight days up to a day, both legs [1/100 standing-bound contact]. */
  public int month(int t) {
    return right28[t + OFF] + left28[t + OFF];
  }

  long refuseMille() {
    return refuseMille;
  }

  long cautionMille() {
    return cautionMille;
  }

  /** Seven days up to a day, if {@code c} were chosen on it [1/100 standing-bound contact]. */
  long seven(int part, int t, Choice c) {
    int i = t + OFF;
    long sum = part == 0 ? right7[i] + left7[i] : part == 1 ? right7[i] : left7[i];
    return sum - chosen(t).units(part) + c.units(part);
  }

  /** Four times the own week that a day is compared with [1/100 standing-bound contact]. */
  long base(int part, int t) {
    int i = t + OFF - 7;
    long week = part == 0 ? right7[i] + left7[i] + 2L * said7[i] : (part == 1 ? right7[i] : left7[i]) + said7[i];
    long month = part == 0 ? right28[i] + left28[i] + 2L * said28[i] : (part == 1 ? right28[i] : left28[i]) + said28[i];
    long start = part == 0 ? 4L * p.startWeek : 2L * p.startWeek;
    return Math.max(Math.max(4 * week, month), start);
  }

  /** Days since the last hard session before a day, as far as the guard looks. */
  public int sinceHard(int t) {
    for (int ago = 1; ago <= t && ago < p.cautionBelowDays; ago++) {
      if (chosen(t - ago).hard()) {
        return ago;
      }
    }
    return t < p.cautionBelowDays ? t + 1 + p.hardAgo : p.cautionBelowDays;
  }

  /** Whether a leg was loaded on one of so many days before a day. */
  boolean loadedWithin(int part, int t, int days) {
    for (int ago = 1; ago <= days; ago++) {
      int i = t - ago + OFF;
      if (i >= 0 && (part == 1 ? right[i] : left[i]) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Days with a session among the six before a day. */
  public int sessionsBefore(int t) {
    int n = 0;
    for (int ago = 1; ago <= 6; ago++) {
      int day = t - ago;
      n += day >= 0 ? (chosen(day).rest() ? 0 : 1) : p.pastSession[day + OFF] ? 1 : 0;
    }
    return n;
  }

  /** Load of both legs from a day to another [1/100 standing-bound contact]; days not known are 0. */
  long sum(int from, int to) {
    long sum = 0;
    for (int i = Math.max(0, from + OFF); i <= Math.min(right.length - 1, to + OFF); i++) {
      sum += right[i] + left[i];
    }
    return sum;
  }

  /** Load of a week of the season [1/100 standing-bound contact]. */
  public int week(int w) {
    return weekLoad[w];
  }

  /** Sessions of a kind in a week of the season. */
  public int sessions(int w, SessionKind kind) {
    return weekKinds[w * KINDS + kind.at()];
  }

  /** Contacts of the right leg less those of the left in a week. */
  public int surplus(int w) {
    return weekSurplus[w];
  }
}
