package boundwright.load.back;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * The fewest days to the end of a way back if nothing is felt on the way, and on which days the leg is loaded: a dynamic programme over
 * the day of the week, the days since the leg was last loaded, the stage, the clean days in it and the days it has lasted. Exact: the
 * days of a stage only grow and the stages only rise while nothing is felt, so that every state is worked out from later ones, but for
 * rest from one day of the week to the next, which is swept until nothing changes.
 */
public final class ShortestWay {
  /** It cannot be reached. */
  public static final int NEVER = Integer.MAX_VALUE / 2;

  private static final int WEEK = 7;
  private static final int CLEANS = Stages.CLEAN_DAYS + 1;
  private static final int LASTED = Stages.LEAST_DAYS + 1;

  private final Stages stages;
  private final boolean[] trains = new boolean[WEEK];
  /** Fewest days to the end, by stage, days lasted, clean days, days since loaded less 1, day of the week. */
  private final int[] least;

  /**
   * For these days of the week.
   *
   * @param trains days of the week on which the athlete trains; none is refused by the caller
   */
  public ShortestWay(Stages stages, Set<DayOfWeek> trains) {
    this.stages = stages;
    for (DayOfWeek d : trains) {
      this.trains[d.getValue() - 1] = true;
    }
    int n = stages.count();
    least = new int[n * LASTED * CLEANS * BackState.LONG_AGO * WEEK];
    Arrays.fill(least, NEVER);
    for (int stage = n - 1; stage >= 0; stage--) {
      solve(stage);
    }
  }

  /** On any day of the week. */
  public ShortestWay(Stages stages) {
    this(stages, EnumSet.allOf(DayOfWeek.class));
  }

  private void solve(int stage) {
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int days = Stages.LEAST_DAYS; days >= 0; days--) {
        for (int clean = Stages.CLEAN_DAYS; clean >= 0; clean--) {
          for (int since = BackState.LONG_AGO; since >= 1; since--) {
            for (int weekday = 0; weekday < WEEK; weekday++) {
              changed |= improve(new BackState(since, stage, clean, days), weekday);
            }
          }
        }
      }
    }
  }

  private boolean improve(BackState s, int weekday) {
    int best = after(s, weekday, false);
    if (mayLoad(s, weekday)) {
      best = Math.min(best, after(s, weekday, true));
    }
    int at = place(s, weekday);
    if (best < least[at]) {
      least[at] = best;
      return true;
    }
    return false;
  }

  private int after(BackState s, int weekday, boolean loaded) {
    BackState next = s.next(loaded, Grade.CLEAN);
    int tomorrow = (weekday + 1) % WEEK;
    int rest = next.stage() >= stages.count() ? 0 : least[place(next, tomorrow)];
    return rest >= NEVER ? NEVER : rest + 1;
  }

  private boolean mayLoad(BackState s, int weekday) {
    return trains[weekday] && s.sinceLoaded() >= stages.restDays(s.stage());
  }

  private static int place(BackState s, int weekday) {
    return (((s.stage() * LASTED + s.days()) * CLEANS + s.clean()) * BackState.LONG_AGO + s.sinceLoaded() - 1) * WEEK + weekday;
  }

  /** Fewest days from the morning of a day until the former week is reached; 0 at the end, {@link #NEVER} if it cannot be. */
  public int days(BackState at, DayOfWeek today) {
    BackState from = at.steppedOn();
    return from.stage() >= stages.count() ? 0 : least[place(from, today.getValue() - 1)];
  }

  /**
   * Whether the leg is loaded on a day: while the stage's days are not all clean, as early as that does not make the way longer. Of two
   * ways as short the one with the earlier loaded day is taken: a clean day in hand is worth having.
   */
  public boolean loads(BackState s, DayOfWeek today) {
    int weekday = today.getValue() - 1;
    return s.stage() < stages.count() && s.clean() < Stages.CLEAN_DAYS && mayLoad(s, weekday) && after(s, weekday, true) <= after(s, weekday, false);
  }

  /**
   * A day of the way.
   *
   * @param day days from now, 0 today
   * @param stage in which
   * @param loaded whether the leg is loaded
   */
  public record Day(int day, int stage, boolean loaded) {}

  /** The way from a morning to the end if nothing is felt; empty if there is none. */
  public List<Day> way(BackState from, DayOfWeek today) {
    List<Day> out = new ArrayList<>();
    if (days(from, today) >= NEVER) {
      return out;
    }
    BackState s = from.steppedOn();
    DayOfWeek weekday = today;
    while (s.stage() < stages.count()) {
      boolean loaded = loads(s, weekday);
      out.add(new Day(out.size(), s.stage(), loaded));
      s = s.next(loaded, Grade.CLEAN);
      weekday = weekday.plus(1);
    }
    return out;
  }
}
