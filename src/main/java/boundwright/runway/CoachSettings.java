package boundwright.runway;

import boundwright.athlete.Facility;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;

/**
 * What the coach set once and is remembered.
 *
 * @param unit how lengths are written
 * @param marks what is asked of a mark
 * @param facility the place
 * @param setContacts contacts after which a set is cut, 1 to 60
 */
public record CoachSettings(LengthUnit unit, MarkSettings marks, Facility facility, int setContacts) {
  /** Metres, the default marks, the default place, sets of ten. */
  public static final CoachSettings DEFAULT =
      new CoachSettings(LengthUnit.METRES, MarkSettings.DEFAULT, Facility.DEFAULT, Sequence.SET_CONTACTS);

  /** Refuses a set length outside 1 to 60. */
  public CoachSettings {
    if (setContacts < 1 || setContacts > Sequence.MAX_CONTACTS) {
      throw new RefusedException(
          "Sets of " + setContacts + " contacts are out of range: 1 to " + Sequence.MAX_CONTACTS + ". Ten is usual early in the season.");
    }
  }
}
