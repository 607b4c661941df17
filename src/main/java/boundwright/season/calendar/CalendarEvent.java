package boundwright.season.calendar;

import boundwright.season.Venue;
import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One event.
 *
 * @param uid the same for good, whatever becomes of the event
 * @param says what it is
 * @param sequence how often it has changed since it was first published, 0 at first
 * @param changed when it last did
 * @param cancelled whether it went away; then {@code says} is what it was
 */
public record CalendarEvent(String uid, Says says, int sequence, Instant changed, boolean cancelled) {
  /**
   * What an event says.
   *
   * @param date its day
   * @param hours when, in the coach's time; null: the whole day
   * @param title in a line
   * @param where place, or empty
   * @param notes lines, or empty
   * @param busy whether somebody has to be there
   */
  public record Says(LocalDate date, Venue.@Nullable Hours hours, String title, String where, String notes, boolean busy) {}
}
