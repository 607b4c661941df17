package boundwright.season.why;

import boundwright.season.Session;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What the rules answer to a session that is moved to a day.
 *
 * @param date where to
 * @param answer of the rules
 * @param said what it would cost or which rule refuses it, a sentence; empty if it is simply allowed
 * @param there what would be done on that day; null if it is refused
 * @param here what would be done on the day that it comes from: what was on the other day, or null for rest
 */
public record Move(LocalDate date, Answer answer, String said, @Nullable Session there, @Nullable Session here) {
  /** Answers of the rules. */
  public enum Answer {
    /** It lies there now. */
    HERE,
    /** Nothing is worse for it. */
    ALLOWED,
    /** It may go there, and something is worse for it. */
    COSTS,
    /** It may not go there. */
    REFUSED
  }
}
