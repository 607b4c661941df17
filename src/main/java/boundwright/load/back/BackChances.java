package boundwright.load.back;

/**
 * What is known of how the days of a way back go: counts of the athlete's own log added to what is taken before anything is known
 * (judgement: nine loaded days in ten are clean, worth ten days; one pain in four is too much, worth four; one planned day in ten is missed,
 * worth ten). Chances of days, never of injuries.
 *
 * @param clean loaded days of the leg on which nothing was felt beyond what is safe, at least 0
 * @param felt loaded days with more than that, at least 0
 * @param tooMuch those of them on which it was too much, 0 to {@code felt}
 * @param came planned days on which they came, at least 0
 * @param missed planned days on which they did not, at least 0
 */
public record BackChances(int clean, int felt, int tooMuch, int came, int missed) {
  /** Nothing logged. */
  public static final BackChances NONE = new BackChances(0, 0, 0, 0, 0);

  private static final double PRIOR_CLEAN = 9;
  private static final double PRIOR_FELT = 1;
  private static final double PRIOR_TOO_MUCH = 1;
  private static final double PRIOR_ACCEPTABLE = 3;
  private static final double PRIOR_CAME = 9;
  private static final double PRIOR_MISSED = 1;

  /** Mean chance that a loaded day is clean, 0 to 1. */
  public double cleanShare() {
    return (PRIOR_CLEAN + clean) / (PRIOR_CLEAN + PRIOR_FELT + clean + felt);
  }

  /** Mean chance that a planned day is missed, 0 to 1. */
  public double missedShare() {
    return (PRIOR_MISSED + missed) / (PRIOR_MISSED + PRIOR_CAME + came + missed);
  }

  /** First and second parameter of the distribution of the chance that a loaded day is clean. */
  double[] ofClean() {
    return new double[] {PRIOR_CLEAN + clean, PRIOR_FELT + felt};
  }

  /** Likewise that a pain which is not safe is too much. */
  double[] ofTooMuch() {
    return new double[] {PRIOR_TOO_MUCH + tooMuch, PRIOR_ACCEPTABLE + felt - tooMuch};
  }

  /** Likewise that a planned day is missed. */
  double[] ofMissed() {
    return new double[] {PRIOR_MISSED + missed, PRIOR_CAME + came};
  }
}
