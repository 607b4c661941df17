package boundwright.load.account;

import boundwright.quantity.RefusedException;

/**
 * Vertical speeds of the body around one contact.
 *
 * @param down into it, downwards positive [m/s], 0 to 6
 * @param up out of it, upwards positive [m/s], 0 to 6
 */
public record VerticalSpeeds(double down, double up) {
  /** Refuses what {@link ContactForce#meanOverBodyWeight} refuses. */
  public VerticalSpeeds {
    if (!(down >= 0 && down <= 6 && up >= 0 && up <= 6)) {
      throw new RefusedException("Vertical speeds of " + down + " m/s down and " + up + " m/s up are out of range: 0 to 6 m/s each.");
    }
  }
}
