package boundwright.flight;

import boundwright.athlete.Athlete;
import boundwright.athlete.Profile;
import boundwright.quantity.Estimate;

/**
 * An athlete's run-up for a number of approach steps.
 *
 * @param length start mark to first contact [m]; 0 from standing
 * @param speed speed into the first contact [m/s]; 0 from standing
 * @param measured how many run-ups of exactly this many steps were measured with the tape
 */
public record RunUp(Estimate length, Estimate speed, int measured) {
  /** What these run-ups say, 0 to 26 steps; the same as {@link Logbook#runUp} without the store. */
  public static RunUp of(Profile profile, int steps) {
    return RunUpBook.of(profile).runUp(Athlete.checkSteps(steps));
  }
}
