package boundwright.load.account;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the days before.
 *
 * @param days with work, oldest first; at least those of the 34 days before the day that is judged
 * @param first first day on which any contact was logged, however long ago, or null
 * @param lastWeek what the coach said of the weeks before the log began, or null
 */
public record History(List<DayLoad> days, @Nullable LocalDate first, @Nullable LastWeek lastWeek) {
  /** Nothing known. */
  public static final History NONE = new History(List.of(), null, null);

  /** Takes a copy. */
  public History {
    days = List.copyOf(days);
  }

  /** Nothing but these days, oldest first, the first of them the first there was. */
  public static History of(List<DayLoad> days) {
    return new History(days, days.stream().filter(d -> d.contacts() > 0).findFirst().map(DayLoad::date).orElse(null), null);
  }

  /** Whether there is anything to compare a day with: a log that began a week before it, or the coach's word. */
  public boolean known(LocalDate day) {
    return lastWeek != null || (first != null && !first.isAfter(day.minusDays(7)));
  }

  /** The days before a day. */
  History before(LocalDate day) {
    return new History(days.stream().filter(d -> d.date().isBefore(day)).toList(), first, lastWeek);
  }
}
