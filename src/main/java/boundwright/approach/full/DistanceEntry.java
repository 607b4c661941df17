package boundwright.approach.full;

import boundwright.approach.weather.Weather;
import boundwright.jump.Event;
import boundwright.quantity.Notes;
import java.time.LocalDate;

/**
 * The distance of a jump from a number of approach steps as it is kept, where nothing else of it was measured.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param steps of the run-up, 4 to 26
 * @param distance_m as measured [m], 3 to 19
 * @param weather what is known of it; the day's counts where this says nothing
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record DistanceEntry(long id, long athleteId, LocalDate date, int steps, double distance_m, Weather weather, String note) {
  /** Refuses what lies outside. */
  public DistanceEntry {
    SeenDistance.steps(steps);
    Event.TRIPLE_JUMP.jump("triple jump", distance_m);
    note = Notes.checked(note);
  }

  /** The same with the number the store gave. */
  public DistanceEntry withId(long stored) {
    return new DistanceEntry(stored, athleteId, date, steps, distance_m, weather, note);
  }
}
