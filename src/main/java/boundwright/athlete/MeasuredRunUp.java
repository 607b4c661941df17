package boundwright.athlete;

import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A run-up that was measured with the tape, from the start mark to the first contact.
 *
 * @param id number in the store, 0 before it is stored
 * @param steps steps run, 1 to 26
 * @param length_m start mark to first contact [m], 0.4 to 2.8 m a step and at most 55 m
 * @param speed_mps mean speed of the last metres before the mark [m/s], 1.5 to 12, or null if not timed
 * @param date when it was run
 */
public record MeasuredRunUp(long id, int steps, double length_m, @Nullable Double speed_mps, LocalDate date) {
  /** Longest run-up that is taken [m] (sanity limit; judgement). */
  public static final double MAX_LENGTH_M = 55;

  /** Refuses what nobody runs (sanity limits; judgement). */
  public MeasuredRunUp {
    Athlete.checkSteps(steps);
    if (steps == 0) {
      throw new RefusedException("A run-up has at least 1 step; this one has 0. Standing starts are not measured as run-ups.");
    }
    double most = Math.min(MAX_LENGTH_M, 2.8 * steps);
    if (!(length_m >= 0.4 * steps && length_m <= most)) {
      throw new RefusedException(
          "A run-up of " + length_m + " m in " + steps + " steps is out of range: " + Math.round(0.4 * steps * 100) / 100.0
              + " to " + Math.round(most * 100) / 100.0 + " m. Check the steps and the unit.");
    }
    if (speed_mps != null && !(speed_mps >= 1.5 && speed_mps <= 12)) {
      throw new RefusedException(
          "A run-up speed of " + speed_mps + " m/s is out of range: 1.5 to 12 m/s. Leave it empty if it was not timed.");
    }
  }
}
