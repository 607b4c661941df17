package boundwright.approach.board;

import boundwright.jump.Event;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One take-off at the board in training as it is kept; those of meets are kept with the meet.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whose
 * @param date the day
 * @param event which jump it was
 * @param gap_m board gap [m], + behind the line, -0.60 to +2.00; negative is a foul; null for a foul of unknown size
 * @param startShift_m how far the start mark stood from the planned one [m], + back; -5 to 5
 * @param distance_m from the take-off line [m], within the event's limits, or null when it was not measured or a foul
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record GapEntry(
    long id, long athleteId, LocalDate date, Event event, @Nullable Double gap_m, double startShift_m, @Nullable Double distance_m, String note) {
  /** A take-off of a triple jump. */
  public GapEntry(
      long id, long athleteId, LocalDate date, @Nullable Double gap_m, double startShift_m, @Nullable Double distance_m, String note) {
    this(id, athleteId, date, Event.TRIPLE_JUMP, gap_m, startShift_m, distance_m, note);
  }

  /** Refuses what cannot be. */
  public GapEntry {
    if (gap_m != null) {
      JumpLimits.gap(gap_m);
    }
    Limits.within("shift of the start mark", startShift_m, -5, 5, "m", "+ is back, away from the board.");
    if (distance_m != null) {
      event.jump(event.label(), distance_m);
      if (gap_m == null || gap_m < 0) {
        throw new RefusedException("A foul at the board has no distance that counts. Leave the distance empty, or mend the gap.");
      }
    }
    note = Notes.checked(note);
  }

  /** Whether the foot was over the line. */
  public boolean foul() {
    return gap_m == null || gap_m < 0;
  }

  /** The same with the number the store gave. */
  public GapEntry withId(long stored) {
    return new GapEntry(stored, athleteId, date, event, gap_m, startShift_m, distance_m, note);
  }
}
