package boundwright.clip.reading;

import boundwright.clip.body.Posture;
import boundwright.clip.contact.Contact;
import boundwright.clip.track.Spot;
import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/** How far the toe lands ahead of the centre of mass. Most of its error is the touchdown's time, by the speed of the body. */
public final class TouchdownDistance {
  /**
   * Standard deviation of the centre of mass along the runway at a known time [m] (own output: 12 mm on made-up clips with
   * usual noise, 5 to 7 without). What the segment model errs on a real body comes on top and is not known.
   */
  private static final double MASS_SD_M = 0.013;
  /** The body's speed is taken from this long before to this long after [s]. */
  private static final double AROUND_S = 0.02;

  private TouchdownDistance() {}

  /** Toe ahead of the centre of mass at touchdown [m], or null where the touchdown or the body was not seen. */
  public static @Nullable Estimate of(Contact contact, Posture posture) {
    Estimate down = contact.touchdown_s();
    if (down == null) {
      return null;
    }
    double t = down.p50();
    Spot mass = posture.centreOfMass(t);
    double speed = (posture.centreOfMass(t + AROUND_S).x() - posture.centreOfMass(t - AROUND_S).x()) / (2 * AROUND_S);
    double ahead = contact.place_m().p50() - mass.x();
    double late = speed * down.halfWidth() / Estimate.Z95;
    double place = contact.place_m().halfWidth() / Estimate.Z95;
    double sd = Math.sqrt(place * place + late * late + MASS_SD_M * MASS_SD_M);
    return Double.isNaN(ahead + sd) ? null : Estimate.normal(ahead, sd);
  }
}
