package boundwright.meet;

import boundwright.approach.run.RunLimits;
import boundwright.jump.Event;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * One attempt in a meet.
 *
 * @param event which jump
 * @param athlete as on the list, 1 to 80 characters
 * @param round 1 to 6
 * @param result what the officials showed
 * @param distance_m measured distance [m] of a valid attempt, as measured (rounding down is the rule's), else null
 * @param wind measured [m/s], or null
 * @param gap_m board gap [m], + behind the line; of a foul only if it was seen; or null
 * @param startShift_m how far the start mark was moved from the plan [m], + back
 */
public record Attempt(
    Event event,
    String athlete,
    int round,
    Result result,
    @Nullable Double distance_m,
    @Nullable Double wind,
    @Nullable Double gap_m,
    double startShift_m) {
  /** What the officials showed. */
  public enum Result {
    /** White flag. */
    VALID("o"),
    /** Red flag. */
    FOUL("x"),
    /** Not taken. */
    PASS("-");

    private final String mark;

    Result(String mark) {
      this.mark = mark;
    }

    /** As it is written on the sheet. */
    public String mark() {
      return mark;
    }
  }

  /** Refuses what cannot be. */
  public Attempt {
    athlete = athlete.strip();
    if (athlete.isEmpty() || athlete.length() > 80) {
      throw new RefusedException("An attempt needs the athlete's name, 1 to 80 characters; this one has " + athlete.length() + ".");
    }
    Limits.count("A round", round, 1, 6, "A meet has up to six.");
    if (result == Result.VALID) {
      if (distance_m == null) {
        throw new RefusedException("A valid attempt of " + athlete + " in round " + round + " has no distance. Enter it, or mark it as a foul or pass.");
      }
      event.jump(event.label(), distance_m);
      if (gap_m != null && gap_m < 0) {
        throw new RefusedException(
            "A valid attempt with a board gap of " + gap_m + " m is a contradiction: below 0 is over the line. Mark it as a foul or mend the gap.");
      }
    } else if (distance_m != null) {
      throw new RefusedException("A foul or pass of " + athlete + " in round " + round + " cannot have a distance. Leave it empty.");
    }
    if (wind != null) {
      RunLimits.wind(wind);
    }
    if (gap_m != null) {
      JumpLimits.gap(gap_m);
    }
    Limits.within("shift of the start mark", startShift_m, -5, 5, "m", "+ is back, away from the board.");
  }

  /** An attempt at the triple jump. */
  public Attempt(
      String athlete, int round, Result result, @Nullable Double distance_m, @Nullable Double wind, @Nullable Double gap_m, double startShift_m) {
    this(Event.TRIPLE_JUMP, athlete, round, result, distance_m, wind, gap_m, startShift_m);
  }

  /** The same attempt in another's name. */
  public Attempt of(String other) {
    return new Attempt(event, other, round, result, distance_m, wind, gap_m, startShift_m);
  }

  /** A valid attempt at the triple jump with nothing but its distance. */
  public static Attempt valid(String athlete, int round, double distance_m) {
    return valid(Event.TRIPLE_JUMP, athlete, round, distance_m);
  }

  /** A valid attempt with nothing but its distance. */
  public static Attempt valid(Event event, String athlete, int round, double distance_m) {
    return new Attempt(event, athlete, round, Result.VALID, distance_m, null, null, 0);
  }

  /** A foul of unknown size in the triple jump. */
  public static Attempt foul(String athlete, int round) {
    return new Attempt(athlete, round, Result.FOUL, null, null, null, 0);
  }

  /** A pass in the triple jump. */
  public static Attempt pass(String athlete, int round) {
    return new Attempt(athlete, round, Result.PASS, null, null, null, 0);
  }

  /** Official distance + gap of a valid attempt whose gap was measured [m], else null. */
  public @Nullable Double effective_m() {
    return distance_m == null || gap_m == null ? null : Double.valueOf(distance_m + gap_m);
  }
}
