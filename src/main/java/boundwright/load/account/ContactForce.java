package boundwright.load.account;

import boundwright.flight.Projectile;
import boundwright.quantity.RefusedException;

/**
 * Force of a contact from speeds and times. The mean force is exact by impulse; it is not the impact peak, which
 * force plates show at 7 to 15 times body weight, and is never shown as that.
 */
public final class ContactForce {
  private ContactForce() {}

  /**
   * Mean vertical force of a contact over body weight: {@code 1 + (vyDown + vyUp) / (g tc)} (impulse and momentum; check
   * value worked: 2.6, 1.9 m/s, .157 s give 3.922).
   *
   * @param vyDown vertical speed into the contact, downwards positive [m/s], 0 to 6
   * @param vyUp vertical speed out of it, upwards positive [m/s], 0 to 6
   * @param contactTime [s], 0.05 to 1
   */
  public static double meanOverBodyWeight(double vyDown, double vyUp, double contactTime) {
    if (!(vyDown >= 0 && vyDown <= 6 && vyUp >= 0 && vyUp <= 6 && contactTime >= 0.05 && contactTime <= 1)) {
      throw new RefusedException(
          "A contact with " + vyDown + " m/s down, " + vyUp + " m/s up in " + contactTime
              + " s is out of range: speeds 0 to 6 m/s, time 0.05 to 1 s.");
    }
    return 1 + (vyDown + vyUp) / (Projectile.G * contactTime);
  }

  /**
   * Level running, from times alone (Morin et al. 2005, J Appl Biomech 21:167-180; equations from memory, stated error
   * .67-6.93 % low, read).
   *
   * @param mass [kg]
   * @param contactTime [s]
   * @param flightTime [s]
   */
  public static LevelRun levelRun(double mass, double contactTime, double flightTime) {
    double force = mass * Projectile.G * Math.PI / 2 * (flightTime / contactTime + 1);
    double drop =
        force * contactTime * contactTime / (mass * Math.PI * Math.PI) - Projectile.G * contactTime * contactTime / 8;
    return new LevelRun(force, force / (mass * Projectile.G), drop, force / drop);
  }

  /**
   * What level running asks.
   *
   * @param peak largest vertical force of the half-sine [N]
   * @param peakOverBodyWeight the same over body weight
   * @param drop of the centre of mass in contact [m]
   * @param stiffness vertical stiffness [N/m]
   */
  public record LevelRun(double peak, double peakOverBodyWeight, double drop, double stiffness) {}
}
