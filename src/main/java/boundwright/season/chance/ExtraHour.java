package boundwright.season.chance;

import boundwright.season.SeasonInput;
import boundwright.season.SessionKind;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** What an athlete does with an hour more a week. Mutable, for one thread. */
final class ExtraHour {
  private static final int MISSED_DAYS = 7;
  private static final int LIKE_DAYS = 14;
  private static final int WEEK = 7;

  private final WhatIf.MoreHours more;
  private final PlannedYear year;
  private final LoadRun loads;
  private final int venue;
  private final boolean[] on;
  private final int[] given;
  private int missed;

  ExtraHour(WhatIf.MoreHours more, PlannedYear year, SeasonInput input, LoadRun loads) {
    this.more = more;
    this.year = year;
    this.loads = loads;
    this.venue = PlannedWork.number(input.venues(), more.venue());
    this.on = new boolean[year.days];
    for (int t = 0; t < on.length; t++) {
      on[t] = year.trains[t] && more.on(input.day(t).toEpochDay());
    }
    this.given = new int[(year.days + WEEK - 1) / WEEK];
    this.missed = -1;
  }

  WhatIf.MoreHours more() {
    return more;
  }

  int venue() {
    return venue;
  }

  void begin() {
    Arrays.fill(given, 0);
    missed = -1;
  }

  /** A planned session of bounding was missed. */
  void missed(int t) {
    missed = t;
  }

  /** What the athlete would do in it: the session that was missed, or one more like the last where the week has too few; null for nothing. */
  @Nullable PlannedWork wants(int t) {
    if (!on[t]) {
      return null;
    }
    if (makesUp(t)) {
      return year.planned[missed];
    }
    for (int ago = 1; year.missingBounds[t / WEEK] > given[t / WEEK] && ago <= LIKE_DAYS && ago <= t; ago++) {
      PlannedWork like = year.planned[t - ago];
      if (like != null && like.kind == SessionKind.BOUNDS && year.part[t - ago] == year.part[t]) {
        return like;
      }
    }
    return null;
  }

  private boolean makesUp(int t) {
    return missed >= 0 && t - missed <= MISSED_DAYS && year.part[missed] == year.part[t];
  }

  /** Whether something hard would lie too near to what is hard. */
  boolean nearHard(int t, int sinceHard) {
    boolean near = sinceHard < year.cautionBelowDays;
    for (int d = t + 1; d < Math.min(year.days, t + year.cautionBelowDays); d++) {
      near |= year.hard[d];
    }
    return near;
  }

  /** What may be added on a day so that neither it nor the six planned days after it are too much, and the week not more than wanted. */
  long room(int part, int t) {
    long least = part == 0 && !makesUp(t) ? year.missingLoad[t / WEEK] : Long.MAX_VALUE;
    long planned = 0;
    for (int d = t; d < Math.min(year.days, t + WEEK); d++) {
      planned += d == t ? 0 : year.planned(part, d);
      least = Math.min(least, loads.most(part, d) - loads.sum(part, d - 6, t - 1) - planned);
    }
    return least;
  }

  void done(int t) {
    if (makesUp(t)) {
      missed = -1;
    } else {
      given[t / WEEK]++;
    }
  }
}
