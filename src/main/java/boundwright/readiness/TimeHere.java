package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How long an athlete has worked from an approach, counted from days with reps from there or from farther.
 *
 * @param since first such day since the last break; null when a break is on, or nothing was done
 * @param days days from then to today
 * @param needed days asked for: none where the approach is known, half after a break
 * @param why new to the athlete, after a break, or known
 */
public record TimeHere(@Nullable LocalDate since, int days, int needed, Why why) {
  /** Where the least stay comes from. */
  public static final Source SOURCE =
      new Source("least-stay", "Keep a new approach for some weeks: tissue adapts slower than skill", "common practice; weeks are a judgement",
          Standing.JUDGEMENT);

  /** Why so many days are asked for. */
  public enum Why {
    /** The approach is new to this athlete. */
    NEW,
    /** It was known, but nothing was done from there for a while. */
    AFTER_BREAK,
    /** Nothing is asked. */
    KNOWN
  }

  /** An approach about which nothing is asked. */
  static TimeHere known() {
    return new TimeHere(null, 0, 0, Why.KNOWN);
  }

  /** Whether the least stay is over. */
  public boolean met() {
    return days >= needed;
  }

  /** The first day on which it is over if the athlete goes on. */
  public LocalDate over(LocalDate today) {
    return today.plusDays(Math.max(0, needed - days));
  }

  /**
   * From the days with reps.
   *
   * @param exposed days with reps from this approach or a longer one, in any order
   * @param steps the approach
   * @param knownBefore whether it was known to the athlete before the log; a break in the log counts all the same
   * @param today days after it are passed over
   */
  public static TimeHere of(Collection<LocalDate> exposed, int steps, boolean knownBefore, GateRules.Stay rules, LocalDate today) {
    int whole = rules.days(steps);
    int half = (whole + 1) / 2;
    boolean known = knownBefore;
    int stretches = 0;
    LocalDate start = null;
    LocalDate last = null;
    for (LocalDate day : new TreeSet<>(exposed).headSet(today, true)) {
      if (start == null || last == null || ChronoUnit.DAYS.between(last, day) > rules.breakDays()) {
        start = day;
        stretches++;
      }
      last = day;
      known |= ChronoUnit.DAYS.between(start, day) >= whole;
    }
    if (start == null || last == null) {
      return knownBefore ? known() : new TimeHere(null, 0, whole, Why.NEW);
    }
    if (ChronoUnit.DAYS.between(last, today) > rules.breakDays()) {
      return new TimeHere(null, 0, known ? half : whole, known ? Why.AFTER_BREAK : Why.NEW);
    }
    int days = (int) ChronoUnit.DAYS.between(start, today);
    if (days >= whole || (knownBefore && stretches == 1)) {
      return new TimeHere(start, days, 0, Why.KNOWN);
    }
    return new TimeHere(start, days, known ? half : whole, known ? Why.AFTER_BREAK : Why.NEW);
  }
}
