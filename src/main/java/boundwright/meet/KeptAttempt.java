package boundwright.meet;

import boundwright.quantity.Notes;

/**
 * An attempt as it is kept.
 *
 * @param id number in the store, 0 before it is stored; later ones have larger numbers
 * @param entrantId who jumped
 * @param attempt what happened; its athlete is the entrant's name
 * @param note the coach's words, at most 200 characters; may be empty
 */
public record KeptAttempt(long id, long entrantId, Attempt attempt, String note) {
  /** Refuses long notes. */
  public KeptAttempt {
    note = Notes.checked(note);
  }
}
