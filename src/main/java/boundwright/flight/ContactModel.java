package boundwright.flight;

/**
 * What a contact costs: the horizontal speed lost on the ground grows with the vertical speed that is made there.
 *
 * <p>Two forms, one line per athlete each: {@link ByGain}, loss = A0 + A1 gain with gain = vy at take-off - vy at
 * touchdown (Yu and Hay 1996, J Biomech 29:1283-1289; form from memory, high), and {@link ByTakeOff}, loss = A0 + A1
 * vy at take-off (Allen, King and Yeadon 2013, J Biomech 46:979-983; read). A1 is the velocity conversion coefficient.
 */
public sealed interface ContactModel {
  /**
   * Horizontal speed lost in the contact [m/s]; negative is speed won.
   *
   * @param touchdownVy vertical speed at touchdown [m/s], negative is down
   * @param takeOffVy vertical speed at take-off [m/s], positive is up
   */
  double loss(double touchdownVy, double takeOffVy);

  /**
   * The form by gain.
   *
   * @param a0 intercept [m/s]
   * @param a1 velocity conversion coefficient [-]
   */
  record ByGain(double a0, double a1) implements ContactModel {
    @Override
    public double loss(double touchdownVy, double takeOffVy) {
      return a0 + a1 * (takeOffVy - touchdownVy);
    }
  }

  /**
   * The form by take-off speed.
   *
   * @param a0 intercept [m/s]
   * @param a1 slope [-]
   */
  record ByTakeOff(double a0, double a1) implements ContactModel {
    @Override
    public double loss(double touchdownVy, double takeOffVy) {
      return a0 + a1 * takeOffVy;
    }
  }
}
