package boundwright.jump;

import boundwright.athlete.Athlete;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A measured triple jump of an athlete as it is kept.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param steps of the run-up, 0 to 26, or null when not noted
 * @param phases the three lengths
 * @param speeds the same jump with its speeds, or null when only the lengths were measured
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record JumpEntry(
    long id, long athleteId, LocalDate date, @Nullable Integer steps, Phases phases, @Nullable MeasuredJump speeds, String note) {
  /** Refuses steps out of range and long notes. */
  public JumpEntry {
    if (steps != null) {
      Athlete.checkSteps(steps);
    }
    note = Notes.checked(note);
  }

  /** The same with the number the store gave. */
  public JumpEntry withId(long stored) {
    return new JumpEntry(stored, athleteId, date, steps, phases, speeds, note);
  }
}
