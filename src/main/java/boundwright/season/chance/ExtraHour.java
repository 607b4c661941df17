package boundwright.season.chance;

import boundwright.season.SeasonInput;
import boundwright.season.SessionKind;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete does with an hour more a week: a session of bounding that was missed in the week before it, or one more where the plan has
 * fewer in a week than wanted. Not before a main meet; nothing hard near to what is hard. Mutable, for one thread.
 */
final class ExtraHour {
  private static final int MISSED_DAYS = 7;
  private static final int LIKE_DAYS = 14;
  private static final int WEEK = 7;

  private final WhatIf.MoreHours more;
  private final PlannedYear year;
  private final QuickStep quick;
  private final int venue;
  private final boolean[] on;
  private final boolean[] used;
  private final @Nullable PlannedWork[] work;

  ExtraHour(WhatIf.MoreHours more, PlannedYear year, SeasonInput input, Tapers tapers, QuickStep quick, @Nullable PlannedWork[] work) {
    this.more = more;
    this.year = year;
    this.quick = quick;
    this.work = work;
    this.venue = PlannedWork.number(input.venues(), more.venue());
    this.on = new boolean[year.days];
    this.used = new boolean[year.days];
    for (int t = year.open; t < on.length; t++) {
      on[t] = year.trains[t] && more.on(input.day(t).toEpochDay()) && !tapers.in(t);
    }
  }

  /** A season begins: weeks with too little bounding get one session more. */
  void begin(Ground ground) {
    for (int t = 0; t < used.length; t++) {
      used[t] = false;
      int week = t / WEEK;
      if (free(t) && year.missingBounds[week] > 0 && year.missingLoad[week] > 0) {
        for (int ago = 1; ago <= Math.min(t, LIKE_DAYS) && !used[t]; ago++) {
          int like = t - ago;
          PlannedWork session = year.planned[like];
          if (session != null && session.kind == SessionKind.BOUNDS && year.part[like] == year.part[t]) {
            double share = year.missingLoad[week] / Math.max(1.0, year.planned(0, like));
            take(t, session, share, ground);
          }
        }
      }
    }
  }

  private boolean free(int t) {
    return on[t] && work[t] == null;
  }

  /** Where a session was missed: it is done in the next hour, if there is one within a week. */
  void missed(int t, PlannedWork session, Ground ground) {
    for (int d = t + 1; d <= Math.min(year.days - 1, t + MISSED_DAYS); d++) {
      if (free(d) && year.part[d] == year.part[t]) {
        take(d, session, 1, ground);
        return;
      }
    }
  }

  private void take(int t, PlannedWork session, double share, Ground ground) {
    int smaller = session.smaller(share, nearHard(t) ? year.hardFrom : null);
    if (smaller >= 0 && ground.joins(t, more, venue)) {
      used[t] = true;
      work[t] = session;
      quick.choose(t, smaller);
    }
  }

  private boolean nearHard(int t) {
    boolean near = false;
    for (int d = Math.max(0, t - year.cautionBelowDays + 1); d < Math.min(year.days, t + year.cautionBelowDays); d++) {
      near |= d != t && (d < year.open ? year.doneHard[d] : year.hard[d] || used[d]);
    }
    return near;
  }

  /** The place of a session on a day: that of the hour where it is one of these; else {@link Ground#NOWHERE}. */
  int place(int t) {
    return used[t] ? venue : Ground.NOWHERE;
  }
}
