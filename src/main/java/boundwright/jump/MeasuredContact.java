package boundwright.jump;

import boundwright.quantity.Limits;

/**
 * Speeds of the centre of mass into and out of one contact.
 *
 * @param phase the phase that follows the contact
 * @param vxIn forward at touchdown [m/s], 2 to 13
 * @param vxOut forward at take-off [m/s], 1 to 13
 * @param touchdownVy vertical at touchdown [m/s], negative is down; -6 to 1
 * @param takeOffVy vertical at take-off [m/s], positive is up; 0.2 to 6
 */
public record MeasuredContact(Phase phase, double vxIn, double vxOut, double touchdownVy, double takeOffVy) {
  /** Refuses what no contact does (sanity limits; judgement). */
  public MeasuredContact {
    String where = " of the " + phase.label();
    Limits.within("touchdown speed" + where, vxIn, 2, 13, "m/s", "Check the clip's scale.");
    Limits.within("take-off speed" + where, vxOut, 1, 13, "m/s", "Check the clip's scale.");
    Limits.within("vertical touchdown speed" + where, touchdownVy, -6, 1, "m/s", "Down is negative.");
    Limits.within("vertical take-off speed" + where, takeOffVy, 0.2, 6, "m/s", "Up is positive.");
  }

  /** Forward speed lost on the ground [m/s]; negative is speed won. */
  public double loss() {
    return vxIn - vxOut;
  }

  /** Vertical speed made on the ground [m/s]. */
  public double gain() {
    return takeOffVy - touchdownVy;
  }

  /** Part of the forward speed carried through, 0 to about 1. */
  public double carried() {
    return vxOut / vxIn;
  }
}
