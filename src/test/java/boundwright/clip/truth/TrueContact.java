package boundwright.clip.truth;

import boundwright.footfall.Foot;

/**
 * A contact as planned and carried out.
 *
 * @param foot which
 * @param approach whether it is a step of the run-up
 * @param down touchdown [s]
 * @param up toe-off [s]
 * @param toeX where the toe point lands [m]
 * @param vxIn speed of the centre of mass at touchdown [m/s]
 * @param vyIn the same upward
 * @param vxOut speed at toe-off
 * @param vyOut the same upward
 * @param xIn centre of mass at touchdown [m]
 * @param xOut centre of mass at toe-off [m]
 * @param strikeDeg angle of the foot at touchdown against standing [degrees]
 * @param sweep speed of the contacting point forward over the ground at touchdown [m/s]
 * @param drop speed of the contacting point downward [m/s], negative
 */
public record TrueContact(
    Foot foot, boolean approach, double down, double up, double toeX, double vxIn, double vyIn, double vxOut, double vyOut,
    double xIn, double xOut, double strikeDeg, double sweep, double drop) {

  public double touchdownDistance() {
    return toeX - xIn;
  }
}
