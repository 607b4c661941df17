package boundwright.readiness;

import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * Whether the speed of two more steps goes into longer flights, by this athlete's log alone.
 *
 * @param told what the log tells
 * @param perFlight gain over two steps less [m a flight], with its 90 % interval; null where nothing can be compared
 * @param days days on which both were measured
 * @param here measured reps of those days from this approach
 * @param below measured reps of those days from two steps less
 */
public record SpeedUse(Told told, @Nullable Estimate perFlight, int days, int here, int below) {
  /** What the log tells. */
  public enum Told {
    /** Flights are longer. */
    USED,
    /** They are not longer by as much as would be worth the speed. */
    NOT_USED,
    /** The log cannot tell yet: that holds nobody back. */
    NOT_KNOWN
  }

  /** Nothing measured that could be compared. */
  public static SpeedUse notKnown() {
    return new SpeedUse(Told.NOT_KNOWN, null, 0, 0, 0);
  }
}
