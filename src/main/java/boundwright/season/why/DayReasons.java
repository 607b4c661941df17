package boundwright.season.why;

import boundwright.season.Session;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why a day is as it is.
 *
 * @param athlete whose
 * @param date which day
 * @param session what is done, or null for rest
 * @param shaped sentences, what decided first
 */
public record DayReasons(String athlete, LocalDate date, @Nullable Session session, List<String> shaped) {
  /** Takes a copy. */
  public DayReasons {
    shaped = List.copyOf(shaped);
  }
}
