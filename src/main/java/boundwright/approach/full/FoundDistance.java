package boundwright.approach.full;

import boundwright.approach.weather.Weather;
import boundwright.jump.KeptJump;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A distance that stands somewhere in the log.
 *
 * @param athleteId whose
 * @param date the day
 * @param steps of the run-up, or null where none are noted: then it was the full run
 * @param distance_m as measured [m]
 * @param weather its own
 * @param where in which log it stands
 */
public record FoundDistance(long athleteId, LocalDate date, @Nullable Integer steps, double distance_m, Weather weather, Where where) implements KeptJump {
  /** Where distances stand. */
  public enum Where {
    /** Logged with its steps. */
    DISTANCE,
    /** A jump with its three lengths. */
    PHASES,
    /** A take-off at the board in training. */
    BOARD,
    /** An attempt in a meet. */
    MEET
  }

  /** Whether two entries of different logs are the same jump. */
  boolean sameJump(FoundDistance other) {
    return where != other.where && athleteId == other.athleteId && isJump(other);
  }
}
