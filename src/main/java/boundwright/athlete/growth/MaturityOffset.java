package boundwright.athlete.growth;

import boundwright.athlete.person.Sex;
import boundwright.quantity.RefusedException;

/**
 * Years from the height spurt's peak, before it negative, as a formula has it for many and not for one: {@code -7.999994 + 0.0036124 age x height}
 * for boys, {@code -7.709133 + 0.0042232 age x height} for girls (Moore et al. 2015, Med Sci Sports Exerc 47:1755-1764; coefficients, error and
 * ages from memory). It leans towards the middle: who is early or late is further from the truth than its error says.
 *
 * @param years from the peak [y]
 * @param error_y standard error [y]
 */
public record MaturityOffset(double years, double error_y) {
  /** Standard error [y], about. */
  public static final double ERROR_Y = 0.5;
  /** Youngest age for which the formula was made [y] (memory). */
  public static final double YOUNGEST = 8;
  /** Oldest age for which the formula was made [y] (memory). */
  public static final double OLDEST = 18;

  /**
   * By the formula.
   *
   * @param age_y on the day of the height [y], {@value #YOUNGEST} to {@value #OLDEST}
   * @param height_cm standing height [cm]
   * @throws RefusedException outside those ages: the formula says nothing there
   */
  public static MaturityOffset of(Sex sex, double age_y, double height_cm) {
    if (!(age_y >= YOUNGEST && age_y <= OLDEST)) {
      throw new RefusedException(
          "The formula was made for ages of " + (int) YOUNGEST + " to " + (int) OLDEST + "; at " + Math.round(10 * age_y) / 10.0 + " years it says nothing.");
    }
    double years =
        switch (sex) {
          case MALE -> -7.999994 + 0.0036124 * age_y * height_cm;
          case FEMALE -> -7.709133 + 0.0042232 * age_y * height_cm;
        };
    return new MaturityOffset(years, ERROR_Y);
  }
}
