package boundwright.flight;

import boundwright.quantity.RefusedException;

/**
 * The centre of mass in the air: constant horizontal speed, constant acceleration g downwards, no drag.
 *
 * <p>{@code t = (vy + sqrt(vy^2 + 2 g (h_to - h_td))) / g}, {@code x = vx t}, vertical speed at touchdown
 * {@code vy - g t}. Elementary mechanics; check values in the tests (standing: worked).
 *
 * @param vx horizontal speed at take-off [m/s]
 * @param vy vertical speed at take-off, up positive [m/s]
 * @param takeOffHeight height of the centre of mass at take-off [m]
 * @param touchdownHeight height of the centre of mass at touchdown [m]
 */
public record Projectile(double vx, double vy, double takeOffHeight, double touchdownHeight) {
  /** Standard acceleration of free fall, rounded as in the field's papers [m/s2]. */
  public static final double G = 9.81;

  /** Refuses a flight that never comes down to the touchdown height. */
  public Projectile {
    if (!(vy * vy + 2 * G * (takeOffHeight - touchdownHeight) >= 0)) {
      throw new RefusedException(
          "With " + vy + " m/s upwards from " + takeOffHeight + " m the centre of mass never reaches " + touchdownHeight
              + " m. Check the heights.");
    }
  }

  /** Flight time [s]. */
  public double time() {
    return (vy + Math.sqrt(vy * vy + 2 * G * (takeOffHeight - touchdownHeight))) / G;
  }

  /** Distance covered by the centre of mass in flight [m]. */
  public double distance() {
    return vx * time();
  }

  /** Vertical speed at touchdown [m/s], negative is down. */
  public double touchdownVy() {
    return vy - G * time();
  }
}
