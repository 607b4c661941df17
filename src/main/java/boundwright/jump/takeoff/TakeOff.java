package boundwright.jump.takeoff;

import boundwright.flight.Projectile;
import boundwright.quantity.Limits;
import org.jspecify.annotations.Nullable;

/**
 * One take-off of a long jump as measured in a clip or with a laser.
 *
 * @param vxIn forward speed into the last contact [m/s], 2 to 13, or null
 * @param touchdown_m toe ahead of the centre of mass at touchdown [m], 0 to 1.2, or null
 * @param vx forward speed at take-off [m/s], 1 to 13
 * @param vy vertical speed at take-off, up is positive [m/s], 0.2 to 6
 * @param takeOffHeight_m centre of mass at take-off [m], 0.5 to 1.7
 * @param landingHeight_m centre of mass when the sand is touched [m], 0.2 to 1.4
 * @param ahead_m centre of mass ahead of the toe at take-off, the take-off distance [m], -0.3 to 1.2, or null
 */
public record TakeOff(
    @Nullable Double vxIn,
    @Nullable Double touchdown_m,
    double vx,
    double vy,
    double takeOffHeight_m,
    double landingHeight_m,
    @Nullable Double ahead_m) {
  /** Refuses what no take-off does (sanity limits; judgement). */
  public TakeOff {
    if (vxIn != null) {
      Limits.within("speed into the take-off", vxIn, 2, 13, "m/s", "Check the clip's scale.");
    }
    if (touchdown_m != null) {
      Limits.within("touchdown distance", touchdown_m, 0, 1.2, "m", "It is the toe ahead of the centre of mass when the foot comes down.");
    }
    Limits.within("take-off speed", vx, 1, 13, "m/s", "Check the clip's scale.");
    Limits.within("vertical take-off speed", vy, 0.2, 6, "m/s", "Up is positive.");
    Limits.within("take-off height", takeOffHeight_m, 0.5, 1.7, "m", "It is the height of the centre of mass.");
    Limits.within("landing height", landingHeight_m, 0.2, 1.4, "m", "It is the height of the centre of mass.");
    if (ahead_m != null) {
      Limits.within("take-off distance", ahead_m, -0.3, 1.2, "m", "It is the centre of mass ahead of the toe when the foot leaves.");
    }
  }

  /**
   * From speed and angle.
   *
   * @param speed at take-off, of the whole velocity [m/s]
   * @param angle_deg above the horizontal [degrees], 1 to 60
   */
  public static TakeOff ofAngle(
      @Nullable Double vxIn,
      @Nullable Double touchdown_m,
      double speed,
      double angle_deg,
      double takeOffHeight_m,
      double landingHeight_m,
      @Nullable Double ahead_m) {
    Limits.within("take-off angle", angle_deg, 1, 60, "degrees", "Long jumpers take off at 15 to 27 degrees.");
    double a = Math.toRadians(angle_deg);
    return new TakeOff(vxIn, touchdown_m, speed * Math.cos(a), speed * Math.sin(a), takeOffHeight_m, landingHeight_m, ahead_m);
  }

  /** Speed of the whole velocity at take-off [m/s]. */
  public double speed() {
    return Math.hypot(vx, vy);
  }

  /** Above the horizontal [degrees]. */
  public double angle_deg() {
    return Math.toDegrees(Math.atan2(vy, vx));
  }

  /** The flight to the sand. */
  public Projectile flight() {
    return new Projectile(vx, vy, takeOffHeight_m, landingHeight_m);
  }

  /** Forward speed lost on the board [m/s], or null without the speed into it. */
  public @Nullable Double loss() {
    return vxIn == null ? null : Double.valueOf(vxIn - vx);
  }
}
