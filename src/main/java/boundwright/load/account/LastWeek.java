package boundwright.load.account;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * What the coach says of the week before this program was there, so that the first days have something to be compared with.
 *
 * @param said the day on which it was said; the weeks before it are meant
 * @param contacts jump contacts in a usual one of those weeks, 0 to 1500; 0 is new to bounding
 */
public record LastWeek(LocalDate said, int contacts) {
  /** Refuses counts that no week has. */
  public LastWeek {
    if (contacts < 0 || contacts > 1500) {
      throw new RefusedException(
          "A week of " + contacts + " contacts is out of range: 0 (new to bounding) to 1500. Enter about how many there were in the last seven days.");
    }
  }
}
