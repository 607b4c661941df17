package boundwright.readiness.back;

import boundwright.load.back.BackChances;
import boundwright.load.back.BackDates;
import boundwright.load.back.BackState;
import boundwright.load.back.LegBack;
import boundwright.load.back.ShortestWay;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A way back as it stands on a day.
 *
 * @param way what was entered
 * @param leg where the guard sees it
 * @param state where it stands on the morning of {@code today}
 * @param today the day
 * @param cleanDays days of this stage that count
 * @param asks what the stage asks
 * @param trains days of the week on which they usually come
 * @param path the fewest days to the former week from today, day by day; empty if those days of the week never lead
 *     there, or while it is held
 * @param dates when it may be reached, or null if never, when it is over, or while it is held
 * @param chances what the dates rest on
 * @param held whether a medical hold stands, so that it waits
 * @param stop why a pain or a sign to refer stops bounding today, or null; {@code dates} and {@code path} are not told then either
 * @param week of the leg in seven days so far, today included [standing-bound contacts]
 */
public record BackLook(
    WayBack way,
    LegBack leg,
    BackState state,
    LocalDate today,
    List<LocalDate> cleanDays,
    List<BackAsk> asks,
    Set<DayOfWeek> trains,
    List<ShortestWay.Day> path,
    @Nullable BackDates dates,
    BackChances chances,
    boolean held,
    @Nullable String stop,
    double week) {
  /** Takes copies. */
  public BackLook {
    cleanDays = List.copyOf(cleanDays);
    asks = List.copyOf(asks);
    trains = Set.copyOf(trains);
    path = List.copyOf(path);
  }

  /** Whether it runs. */
  public boolean runs() {
    return way.end() == null;
  }

  /** Whether the former week is reached. */
  public boolean reached() {
    return state.stage() >= way.stages().count();
  }

  /** Whether the leg may be loaded today by its rest; a hold and pain stand above it. */
  public boolean rested() {
    return state.sinceLoaded() >= way.stages().restDays(Math.min(state.stage(), way.stages().count() - 1));
  }

  /** What is left of seven days [standing-bound contacts]. */
  public double left() {
    return Math.max(0, leg.week(today) - week);
  }

  /** Whether what was felt stops the leg today: as the guard judges it, or because the stage to which it stepped back begins only after today. */
  public boolean stopped() {
    return stop != null || (leg.steppedBack() != null && leg.since().isAfter(today));
  }

  /** Most of today [standing-bound contacts]. */
  public double mostToday() {
    return rested() && !held && !stopped() ? Math.min(left(), leg.perDay(today)) : 0;
  }

  /** Whether the next stage is earned, and no test says no. */
  public boolean mayStep() {
    return runs() && !held && !stopped() && !reached() && state.earned() && asks.stream().noneMatch(a -> a.met() == BackAsk.Met.BELOW);
  }

  /** What is to be done with the leg today, in a sentence. */
  public String todaySaid() {
    if (!runs()) {
      return "It is over.";
    }
    if (held) {
      return "A medical hold stands: nothing today. It begins again at the first stage when a named clinician has ended the hold.";
    }
    if (stop != null) {
      return "Rest the leg. " + stop;
    }
    if (stopped()) {
      return "Rest the leg today: the stage to which it stepped back begins on " + leg.since() + ".";
    }
    if (reached()) {
      return "The former week is reached. The usual limits hold; end the way back when licensed medical staff agree.";
    }
    if (today.isBefore(way.begun())) {
      return "It begins on " + way.begun() + ".";
    }
    int rest = way.stages().restDays(state.stage());
    if (!rested()) {
      return "Rest the leg: " + 24 * rest + " hours between its days in this stage, so again on " + today.plusDays(rest - state.sinceLoaded()) + ".";
    }
    if (mostToday() < 1) {
      return "Rest the leg: its seven days are full.";
    }
    return "Up to " + Math.round(Math.floor(mostToday())) + " standing-bound contacts on this leg today; " + Math.round(Math.floor(left())) + " left of its seven days.";
  }

  /** Share of the former week now, 0 to 1. */
  public double share() {
    return way.stages().share(state.stage());
  }

  /** Days that a stage lasts at least. */
  public int stageDays() {
    return Stages.LEAST_DAYS;
  }
}
