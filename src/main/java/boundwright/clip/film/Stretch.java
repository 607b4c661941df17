package boundwright.clip.film;

import boundwright.quantity.RefusedException;
import java.util.Locale;

/**
 * A part of a film by the film's own times, both ends included.
 *
 * @param from_s first time [s]
 * @param to_s last time [s]
 */
public record Stretch(double from_s, double to_s) {
  /** All of it. */
  public static final Stretch WHOLE = new Stretch(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Refuses an end before the beginning. */
  public Stretch {
    if (!(from_s < to_s)) {
      throw new RefusedException(
          String.format(Locale.ROOT, "From %.2f to %.2f s is no part of a film: it has to end after it begins.", from_s, to_s));
    }
  }

  /** Whether it is not all of the film. */
  public boolean isPart() {
    return from_s > Double.NEGATIVE_INFINITY || to_s < Double.POSITIVE_INFINITY;
  }

  /** How long it is [s]; infinite for all of a film. */
  public double seconds() {
    return to_s - from_s;
  }
}
