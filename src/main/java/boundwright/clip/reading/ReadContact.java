package boundwright.clip.reading;

import boundwright.clip.body.Strike;
import boundwright.clip.contact.Contact;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

  /**
   * What the body did at the contact, a sentence each; values that could not be read are left out.
   *
   * @param scaled whether lengths and speeds stand
   * @param unit in which lengths are written
   */
  public List<String> posture(boolean scaled, LengthUnit unit) {
    List<String> out = new ArrayList<>();
    say(out, trunkLeanDeg >= 0 ? "Trunk %.0f degrees forward at touchdown." : "Trunk %.0f degrees back at touchdown.", Math.abs(trunkLeanDeg));
    if (strike != null) {
      say(out, "Lands on the " + strike.label() + ", foot at %.0f degrees against flat.", strikeDeg);
    }
    say(out, "Free thigh up to %.0f degrees; 90 is level.", thighDeg);
    say(out, "Ankle at %.0f degrees before touchdown; 90 is square.", ankleDeg);
    if (scaled) {
      if (touchdownDistance_m != null) {
        double ahead = touchdownDistance_m.p50();
        out.add("Toe " + unit.writeSmall(ahead) + (ahead < 0 ? " behind" : " ahead of") + " the centre of mass at touchdown.");
      }
      if (!Double.isNaN(strikeFrom_m)) {
        out.add("The strike begins " + unit.writeSmall(Math.max(0, strikeFrom_m)) + " above the ground.");
      }
      say(out, "The foot meets the ground at %+.1f m/s; 0 is matched.", groundSpeed_ms);
      say(out, "Speed in %.1f m/s.", speedIn_ms);
      say(out, "Speed out %.1f m/s.", speedOut_ms);
    }
    return out;
  }

  private static void say(List<String> out, String words, double value) {
    if (!Double.isNaN(value)) {
      out.add(String.format(Locale.ROOT, words, value));
    }
  }
}
