package boundwright.season.year;

import boundwright.season.SessionKind;

/**
 * The rules of one athlete's season, one a method. Each looks at what a day would be if {@code c} were chosen on it and says by how much
 * the rule is broken, 0 if it is kept. Those of the guard are its own definitions ({@code load.ContactRules}) with its own power, in
 * whole numbers; a rounding of a tenth of a standing-bound contact is kept free, so that the guard, which counts exactly, never refuses
 * what is kept here.
 */
final class YearRules {
  /** Kept free of a refusal for rounding [1/100 standing-bound contact]. */
  static final int ROUNDING = 10;
  private static final int PARTS = 3;
  private static final int SAME_DAYS = 14;

  private YearRules() {}

  /**
   * Seven days up to today beside the athlete's own weeks: the larger of the week before and a quarter of the four before, at least the
   * week with which anybody may start; both legs and each. A meet itself is never refused for it, only what was trained before it; nor is
   * a day that is over, whatever was done on it.
   *
   * @return standing-bound contacts above what is not refused, rounded up
   */
  static long ownWeeksRefused(YearLine l, int t, Choice c) {
    if (c.rest() || t < l.problem().open) {
      return 0;
    }
    Choice trained = c.meet() ? Choice.REST : c;
    long worst = 0;
    for (int part = 0; part < PARTS; part++) {
      long over = 4000L * (l.seven(part, t, trained) + ROUNDING) - l.refuseMille() * l.base(part, t);
      worst = Math.max(worst, (over + 399_999) / 400_000);
    }
    return worst;
  }

  /**
   * Seven days up to today of a leg on its way back beside its stage, and the days between; a meet is never refused for it, nor a day that
   * is over.
   *
   * @return standing-bound contacts above what is not refused, rounded up, or 1 for a day that comes too soon
   */
  static long wayBackRefused(YearLine l, int t, Choice c) {
    if (c.rest() || t < l.problem().open) {
      return 0;
    }
    Choice trained = c.meet() ? Choice.REST : c;
    long worst = 0;
    for (int part = 1; part < PARTS; part++) {
      int most = l.problem().backMost(part, t);
      if (most < Integer.MAX_VALUE) {
        worst = Math.max(worst, (l.seven(part, t, trained) + ROUNDING - most + 99) / 100);
        worst = Math.max(worst, !c.meet() && c.contacts() > 0 && c.units(part) > 0 && l.loadedWithin(part, t, l.problem().backRest[part - 1][t] - 1) ? 1 : 0);
      }
    }
    return worst;
  }

  /** The same for a caution: 1 or 0. */
  static long ownWeeksCaution(YearLine l, int t, Choice c) {
    if (c.rest()) {
      return 0;
    }
    for (int part = 0; part < PARTS; part++) {
      if (4000L * l.seven(part, t, c) > l.cautionMille() * l.base(part, t)) {
        return 1;
      }
    }
    return 0;
  }

  /** Whole days between hard sessions; a meet is never refused for it, nor a day that is over. 1 or 0. */
  static long spacingRefused(YearLine l, int t, Choice c) {
    return c.hard() && !c.meet() && t >= l.problem().open && l.sinceHard(t) < l.problem().refuseBelowDays ? 1 : 0;
  }

  /** The same for a caution. */
  static long spacingCaution(YearLine l, int t, Choice c) {
    return c.hard() && l.sinceHard(t) < l.problem().cautionBelowDays ? 1 : 0;
  }

  /** Sessions in seven days of a growing athlete. 1 or 0. */
  static long sessionsCaution(YearLine l, int t, Choice c) {
    return !c.rest() && l.problem().mostSessions[t] < 7 && l.sessionsBefore(t) + 1 > l.problem().mostSessions[t] ? 1 : 0;
  }

  /**
   * Before a main meet the load has fallen by the least cut, the meet's own contacts counted, against the four weeks before the taper.
   * Weeks below half of that with which anybody may start are not cut. A meet that is over asks for nothing.
   *
   * @param more on a day of the taper that is tried [1/100 standing-bound contact]
   * @return standing-bound contacts above, rounded up
   */
  static long taperRefused(YearLine l, YearProblem.Taper taper, long more) {
    long days = taper.meet() - taper.from() + 1L;
    long before = l.sum(taper.from() - 28, taper.from() - 1);
    if (before < 2L * l.problem().startWeek || taper.meet() < l.problem().open) {
      return 0;
    }
    long most = before * days * taper.mostMille();
    long over = 28_000 * (l.sum(taper.from(), taper.meet()) + more) - most;
    return over <= 0 ? 0 : (over + 2_799_999) / 2_800_000;
  }

  /** Wishes of a week that are not met: sessions that are missing, by kind, and sessions that nobody asked for. */
  static long weekWishes(YearLine l, int week) {
    if (over(l, week)) {
      return 0;
    }
    long missing = 0;
    int all = 0;
    for (SessionKind kind : YearProblem.KINDS) {
      int n = l.sessions(week, kind);
      all += n;
      missing += Math.max(0, l.problem().weeks.get(week).sessions(kind) - n);
    }
    return missing + Math.max(0, all - l.problem().weeks.get(week).all());
  }

  /** A wish for a day that is not met. 1 or 0. */
  static long dayWish(YearLine l, int t, Choice c) {
    Integer wish = l.problem().wishes[t];
    if (wish == null || t < l.problem().open) {
      return 0;
    }
    return (c.session() == null ? -1 : c.session().kind().at()) == wish ? 0 : 1;
  }

  /** Distance of a week from what is wanted [standing-bound contacts]. */
  static long off(YearLine l, int week) {
    return over(l, week) ? 0 : (Math.abs(l.week(week) - l.problem().wanted[week]) + 50L) / 100;
  }

  /** By how many contacts the legs differ in a week. */
  static long unequal(YearLine l, int week) {
    return over(l, week) ? 0 : Math.abs(l.surplus(week));
  }

  /** Whether a week is over: nothing of it can still be wished for or told. */
  private static boolean over(YearLine l, int week) {
    return 7 * week + 7 <= l.problem().open;
  }

  /** A day that is not as it was published. 1 or 0. */
  static long changed(YearLine l, int t, Choice c) {
    int before = l.problem().published[t];
    return before != -1 && before != c.index() ? 1 : 0;
  }

  /** A session like the one before, within a fortnight. 1 or 0. */
  static long same(YearLine l, int t, Choice c) {
    if (c.session() == null || c.meet()) {
      return 0;
    }
    for (int ago = 1; ago <= SAME_DAYS && t - ago >= 0; ago++) {
      Choice before = l.chosen(t - ago);
      if (before.session() != null) {
        return before.session().kind() == c.session().kind() && before.contacts() == c.contacts() && before.venue() == c.venue() ? 1 : 0;
      }
    }
    return 0;
  }
}
