package boundwright.load.back;

import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Where a leg stands on the morning of a day, as far as the way to go depends on it.
 *
 * @param sinceLoaded days since the leg was last loaded, 1 yesterday; {@value #LONG_AGO} stands for all more
 * @param stage 0 the first
 * @param clean clean days in the stage, at most {@link Stages#CLEAN_DAYS}
 * @param days that the stage has lasted, at most {@link Stages#LEAST_DAYS}
 */
public record BackState(int sinceLoaded, int stage, int clean, int days) {
  /** No rest is longer. */
  public static final int LONG_AGO = 3;
  /** A day counts as loaded from half of what the stage asks of a day (judgement): less proves nothing of it. */
  private static final double PROVES = 0.5;

  /** At the beginning of a stage, rested. */
  public static BackState rested(int stage) {
    return new BackState(LONG_AGO, stage, 0, 0);
  }

  /** Whether the next stage is earned. */
  public boolean earned() {
    return clean >= Stages.CLEAN_DAYS && days >= Stages.LEAST_DAYS;
  }

  /** The same after the coach stepped on, where that is earned. */
  public BackState steppedOn() {
    return earned() ? new BackState(sinceLoaded, stage + 1, 0, 0) : this;
  }

  /** The morning after a day; the next stage begins by itself once it is earned. */
  BackState next(boolean loaded, Grade grade) {
    int since = loaded ? 1 : Math.min(LONG_AGO, sinceLoaded + 1);
    if (grade == Grade.TOO_MUCH) {
      return new BackState(since, Stages.after(stage, grade), 0, 0);
    }
    BackState then =
        new BackState(
            since, stage, Math.min(Stages.CLEAN_DAYS, clean + (loaded && grade == Grade.CLEAN ? 1 : 0)), Math.min(Stages.LEAST_DAYS, days + 1));
    return then.steppedOn();
  }

  /**
   * From what was done and felt, before a day is begun.
   *
   * @param before days with work, any order
   * @param felt any order
   */
  public static BackState of(WayBack way, LocalDate day, List<DayLoad> before, List<Felt> felt, ContactWeights weights) {
    WayBack.Stand stand = way.on(day, felt);
    return of(way, stand, day, before, cleanDays(way, stand, day, before, felt, weights).size());
  }

  /**
   * As {@link #of(WayBack, LocalDate, List, List, ContactWeights)}.
   *
   * @param stand where it stands by what was entered and felt
   * @param clean days of the stage that count, see {@link #cleanDays}
   */
  public static BackState of(WayBack way, WayBack.Stand stand, LocalDate day, List<DayLoad> before, int clean) {
    int since = LONG_AGO;
    for (DayLoad d : before) {
      long ago = ChronoUnit.DAYS.between(d.date(), day);
      if (ago >= 1 && ago < LONG_AGO && d.contacts(way.leg()) > 0) {
        since = (int) Math.min(since, ago);
      }
    }
    return new BackState(since, stand.stage(), Math.min(Stages.CLEAN_DAYS, clean), Math.min(Stages.LEAST_DAYS, stand.days(day)));
  }

  /**
   * Days of a stage before a day on which the leg was loaded as the stage asks, and on which and on the day after which nothing was
   * felt beyond what is safe; in order.
   */
  public static List<LocalDate> cleanDays(WayBack way, WayBack.Stand stand, LocalDate day, List<DayLoad> before, List<Felt> felt, ContactWeights weights) {
    double enough = PROVES * way.stages().dayShare(stand.stage()) * way.formerUnits();
    Set<LocalDate> unclean = new TreeSet<>();
    for (Felt f : felt) {
      if (f.grade() != Grade.CLEAN) {
        unclean.add(f.date());
        unclean.add(f.date().minusDays(1));
      }
    }
    return before.stream()
        .filter(d -> d.date().isBefore(day) && !d.date().isBefore(stand.since()) && d.contacts(way.leg()) > 0)
        .filter(d -> weights.of(d).units(way.leg()) >= enough && !unclean.contains(d.date()))
        .map(DayLoad::date)
        .sorted()
        .toList();
  }
}
