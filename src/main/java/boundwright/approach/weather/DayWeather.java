package boundwright.approach.weather;

import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * The weather of a day at the runway: it counts for every jump, run and rep of that day that has none of its own.
 *
 * @param date the day
 * @param weather what was noted, something at least
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record DayWeather(LocalDate date, Weather weather, String note) {
  /** Refuses a day of which nothing is known. */
  public DayWeather {
    if (weather.isUnknown()) {
      throw new RefusedException("Nothing was said of the weather of " + date + ". Say the wind, the temperature or whether it was wet.");
    }
    note = Notes.checked(note);
  }
}
