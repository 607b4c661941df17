package boundwright.approach.full;

import boundwright.approach.weather.Weather;
import boundwright.jump.Event;
import boundwright.quantity.Limits;
import java.time.LocalDate;

/**
 * One jump from a known number of approach steps.
 *
 * @param athleteId whose
 * @param date the day
 * @param steps of the run-up, 4 to 26
 * @param distance_m as measured [m], 3 to 19
 * @param weather what is known of it
 */
public record SeenDistance(long athleteId, LocalDate date, int steps, double distance_m, Weather weather) {
  /** Fewest steps that the curve speaks of: standing jumps and two steps are other jumps (judgement). */
  public static final int FEWEST_STEPS = 4;
  /** Most steps. */
  public static final int MOST_STEPS = 26;

  /** Refuses what lies outside. */
  public SeenDistance {
    steps(steps);
    Event.TRIPLE_JUMP.jump("triple jump", distance_m);
  }

  static int steps(int steps) {
    return Limits.count("Approach steps", steps, FEWEST_STEPS, MOST_STEPS, "The curve from short run to full run speaks of 4 to 20 steps and a little more.");
  }
}
