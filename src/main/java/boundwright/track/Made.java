package boundwright.track;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * When a tap was made.
 *
 * @param at by the phone's own clock, right or wrong
 * @param offset_ms server minus phone, as the phone last measured it [ms]
 */
public record Made(Instant at, long offset_ms) {
  /**
   * The day of it by the server's clock: nothing was done after {@code now}, however the phone's clock goes.
   *
   * @param zone where the day is counted
   */
  public LocalDate day(Instant now, ZoneId zone) {
    Instant corrected = at.plusMillis(offset_ms);
    return LocalDate.ofInstant(corrected.isAfter(now) ? now : corrected, zone);
  }
}
