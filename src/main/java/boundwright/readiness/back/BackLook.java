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
 * @param now the leg today
 * @param cleanDays days of this stage that count
 * @param asks what the stage asks
 * @param trains days of the week on which they usually come
 * @param path the fewest days to the former week from today, day by day; empty if those days of the week never lead
 *     there, or while a hold or a pain stops it
 * @param dates when it may be reached, or null if never, when it is over, or while a hold or a pain stops it
 * @param chances what the dates rest on
 */
public record BackLook(
    LegToday now,
    List<LocalDate> cleanDays,
    List<BackAsk> asks,
    Set<DayOfWeek> trains,
    List<ShortestWay.Day> path,
    @Nullable BackDates dates,
    BackChances chances) {
  /** Takes copies. */
  public BackLook {
    cleanDays = List.copyOf(cleanDays);
    asks = List.copyOf(asks);
    trains = Set.copyOf(trains);
    path = List.copyOf(path);
  }

  /** What was entered. */
  public WayBack way() {
    return now.way();
  }

  /** Where the guard sees it. */
  public LegBack leg() {
    return now.leg();
  }

  /** Where it stands on the morning of {@link #today}. */
  public BackState state() {
    return now.state();
  }

  /** The day. */
  public LocalDate today() {
    return now.today();
  }

  /** Whether a medical hold stands, so that it waits. */
  public boolean held() {
    return now.held();
  }

  /** Whether what was felt stops the leg today, see {@link LegToday#stopped}. */
  public boolean stopped() {
    return now.stopped();
  }

  /** Of the leg in seven days so far, today included [standing-bound contacts]. */
  public double week() {
    return now.week();
  }

  /** Whether it runs. */
  public boolean runs() {
    return now.runs();
  }

  /** Whether the former week is reached. */
  public boolean reached() {
    return now.reached();
  }

  /** What may still be done today [standing-bound contacts]. */
  public double mostToday() {
    return now.mostToday();
  }

  /** Whether the next stage is earned, and no test says no. */
  public boolean mayStep() {
    return runs() && !held() && !stopped() && !reached() && state().earned() && asks.stream().noneMatch(a -> a.met() == BackAsk.Met.BELOW);
  }

  /** What is to be done with the leg today, in a sentence. */
  public String todaySaid() {
    return now.said();
  }

  /** Share of the former week now, 0 to 1. */
  public double share() {
    return way().stages().share(state().stage());
  }

  /** Days that a stage lasts at least. */
  public int stageDays() {
    return Stages.LEAST_DAYS;
  }
}
