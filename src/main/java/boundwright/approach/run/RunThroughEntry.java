package boundwright.approach.run;

import boundwright.jump.Event;
import boundwright.quantity.Notes;
import java.time.LocalDate;

/**
 * A run-through of an athlete as it is kept.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param event for which jump
 * @param run what was measured
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record RunThroughEntry(long id, long athleteId, LocalDate date, Event event, RunThrough run, String note) {
  /** A run-through for the triple jump. */
  public RunThroughEntry(long id, long athleteId, LocalDate date, RunThrough run, String note) {
    this(id, athleteId, date, Event.TRIPLE_JUMP, run, note);
  }

  /** Refuses long notes. */
  public RunThroughEntry {
    note = Notes.checked(note);
  }

  /** The same with the number the store gave. */
  public RunThroughEntry withId(long stored) {
    return new RunThroughEntry(stored, athleteId, date, event, run, note);
  }
}
