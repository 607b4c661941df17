package boundwright.clip.reading;

import boundwright.clip.body.Strike;
import boundwright.clip.contact.Contact;
import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * A contact with what the body did. A value that could not be read is null (NaN for plain numbers).
 *
 * @param contact foot, times, place
 * @param fromHand whether the coach set a time of it or added it
 * @param touchdownDistance_m toe ahead of the centre of mass at touchdown [m]
 * @param trunkLeanDeg at touchdown, forward positive
 * @param strikeDeg heel-to-toe line against the ground at touchdown, less its angle when the foot stood flat, toe up positive
 * @param strike its class
 * @param thighDeg highest angle of the free thigh from touchdown to the next touchdown; 90 is level
 * @param heelToHip_m least distance of the free heel from the hips meanwhile [m]
 * @param ankleDeg angle at the ankle just before touchdown; 90 is square, less is toe up
 * @param strikeFrom_m height of the foot above where it will stand when it begins to go back against the body [m]
 * @param groundSpeed_ms speed of the foot against the ground just before touchdown, forward positive [m/s]; 0 is matched
 * @param speedIn_ms forward speed of the centre of mass in the flight before [m/s]
 * @param speedOut_ms the same in the flight after [m/s]
 */
public record ReadContact(
    Contact contact,
    boolean fromHand,
    @Nullable Estimate touchdownDistance_m,
    double trunkLeanDeg,
    double strikeDeg,
    @Nullable Strike strike,
    double thighDeg,
    double heelToHip_m,
    double ankleDeg,
    double strikeFrom_m,
    double groundSpeed_ms,
    double speedIn_ms,
    double speedOut_ms) {

  /** Speed lost in the contact [m/s], positive when slower; NaN if a flight beside it was not seen. */
  public double speedLost_ms() {
    return speedIn_ms - speedOut_ms;
  }
}
