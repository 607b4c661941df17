package boundwright.meet;

import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * Somebody on the list of a meet: an athlete of the squad, or a rival under a label.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId the athlete of the squad, or null for a rival
 * @param name the athlete's name as it is now; of a rival a label such as a bib number, 1 to 80 characters
 */
public record Entrant(long id, @Nullable Long athleteId, String name) {
  /** Refuses empty and long names. */
  public Entrant {
    name = name.strip().replaceAll("\\s+", " ");
    if (name.isEmpty() || name.length() > 80) {
      throw new RefusedException(
          "Somebody on the list of a meet has a name or a label of 1 to 80 characters; this one has " + name.length()
              + ". A bib number will do.");
    }
  }

  /** A rival under a label, before it is stored. */
  public static Entrant rival(String label) {
    return new Entrant(0, null, label);
  }

  /** Whether they are not of the squad. */
  public boolean isRival() {
    return athleteId == null;
  }
}
