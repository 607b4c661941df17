package boundwright.season.chance;

import boundwright.season.ladder.DrawnClimb;
import boundwright.season.year.YearProblem;
import java.util.ArrayList;
import java.util.List;

/**
 * The weeks before an athlete's main meets in a simulated season: how much they may hold after what really was done in the four before, the
 * meets' own contacts counted, as the rules of the plan ask. Mutable, for one thread.
 */
final class Tapers {
  private static final long NO_LIMIT = Long.MAX_VALUE / 2;

  private final PlannedYear year;
  private final Drills.Done now = new Drills.Done();
  private final LoadRun loads;
  private final List<Ahead> all = new ArrayList<>();

  private static final class Ahead {
    final int from;
    final int meet;
    final int mostMille;
    /** The most of all its days [1/100 standing-bound contact]; more than anybody does where nothing is asked. */
    long most;
    /** Share of each planned session that is done, so that all of them fit. */
    double share;

    Ahead(int from, int meet, int mostMille) {
      this.from = from;
      this.meet = meet;
      this.mostMille = mostMille;
    }
  }

  Tapers(PlannedYear year, LoadRun loads) {
    this.year = year;
    this.loads = loads;
    for (YearProblem.Taper t : year.numbers.tapers()) {
      for (int m : year.mainMeets) {
        if (m == t.meet()) {
          all.add(new Ahead(t.from(), t.meet(), t.mostMille()));
        }
      }
    }
  }

  /** A season begins. */
  void begin() {
    for (Ahead a : all) {
      a.most = NO_LIMIT;
      a.share = 1;
    }
  }

  /** A day begins. */
  void begins(int t) {
    for (Ahead a : all) {
      if (t == Math.max(a.from, year.open) && t <= a.meet) {
        opens(a, t);
      }
    }
  }

  private void opens(Ahead a, int t) {
    long before = loads.sum(0, a.from - 28, a.from - 1);
    if (before < 2L * year.numbers.startWeek()) {
      return;
    }
    a.most = Math.floorDiv(before * (a.meet - a.from + 1L) * a.mostMille, 28_000L);
    long left = a.most - loads.sum(0, a.from, t - 1) - meets(t - 1, a.meet);
    long planned = 0;
    for (int d = t; d <= a.meet; d++) {
      planned += year.planned(0, d);
    }
    planned -= meets(t - 1, a.meet);
    a.share = planned <= left ? 1 : Math.max(0, (double) left / planned);
  }

  /** Planned load of the meets after a day, up to another. */
  private long meets(int after, int to) {
    long sum = 0;
    for (int m : year.meets) {
      sum += m > after && m <= to ? year.planned(0, m) : 0;
    }
    return sum;
  }

  /** Whether a day lies in one. */
  boolean in(int t) {
    for (Ahead a : all) {
      if (t >= a.from && t <= a.meet) {
        return true;
      }
    }
    return false;
  }

  /** What a session may come to on a day of one [1/100 standing-bound contact, both legs]. */
  long room(int t, Drills session, DrawnClimb climb) {
    long least = Long.MAX_VALUE;
    for (Ahead a : all) {
      if (t >= a.from && t < a.meet && a.most < NO_LIMIT) {
        long left = a.most - loads.sum(0, a.from, t - 1) - meets(t, a.meet);
        session.weigh(climb, year.hardFrom, now);
        least = Math.min(least, Math.min(left, a.share >= 1 ? left : (long) (a.share * now.load(0))));
      }
    }
    return least;
  }

  /** Whether a usual meet in the weeks before a main one would leave too little for that. */
  boolean tooMuchBefore(int t) {
    for (Ahead a : all) {
      if (t >= a.from && t < a.meet && loads.sum(0, a.from, t - 1) + meets(t - 1, a.meet) > a.most) {
        return true;
      }
    }
    return false;
  }

  /** Whether a main meet is jumped although the load before it did not fall as far as it must. */
  boolean missed(int t, long load) {
    for (Ahead a : all) {
      if (t == a.meet && loads.sum(0, a.from, t - 1) + load > a.most) {
        return true;
      }
    }
    return false;
  }
}
