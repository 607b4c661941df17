package boundwright.season;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * Days from one to another.
 *
 * @param from first day
 * @param to last day, not before {@code from}
 */
public record Span(LocalDate from, LocalDate to) {
  /** Refuses an end before the beginning. */
  public Span {
    if (to.isBefore(from)) {
      throw new RefusedException("The days from " + from + " to " + to + " end before they begin. Write the earlier date first.");
    }
  }

  /** Whether a day is one of them. */
  public boolean holds(LocalDate day) {
    return !day.isBefore(from) && !day.isAfter(to);
  }
}
