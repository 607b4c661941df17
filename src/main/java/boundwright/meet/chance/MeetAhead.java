package boundwright.meet.chance;

import boundwright.quantity.Limits;
import java.time.LocalDate;

/**
 * A meet that is still to come.
 *
 * @param name as the coach calls it; may be empty
 * @param date its day
 * @param attempts that the athlete will have, 1 to 6
 */
public record MeetAhead(String name, LocalDate date, int attempts) {
  /** Refuses what is no meet. */
  public MeetAhead {
    Limits.count("Attempts in a meet", attempts, 1, 6, "3, and 6 for those who go on, is usual.");
  }
}
