package boundwright.season.ladder;

import boundwright.quantity.RefusedException;

/**
 * How often an athlete came.
 *
 * @param came days with a rep
 * @param missed days on which they were tapped away
 */
public record Turnout(int came, int missed) {
  /** Nothing known. */
  public static final Turnout UNKNOWN = new Turnout(0, 0);

  /** What is believed beforehand: nine of ten, as if ten days had been seen (judgement). */
  private static final double PRIOR_CAME = 9;
  private static final double PRIOR_DAYS = 10;

  /** Refuses counts below none. */
  public Turnout {
    if (came < 0 || missed < 0) {
      throw new RefusedException("An athlete came " + came + " times and missed " + missed + ": neither can be below 0.");
    }
  }

  /** The share of days to come on which they will come, 0 to 1: the mean of a beta posterior. */
  public double share() {
    return (came + PRIOR_CAME) / (came + missed + PRIOR_DAYS);
  }
}
