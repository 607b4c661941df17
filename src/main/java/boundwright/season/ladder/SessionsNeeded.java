package boundwright.season.ladder;

/**
 * What is known of how many sessions were needed.
 *
 * @param over more than this, at least 0
 * @param within at most this; infinite where it is not known
 */
record SessionsNeeded(double over, double within) {
  /** More sessions at one approach than this tell nothing more (over a year of two a week; judgement). */
  static final int MOST = 120;

  SessionsNeeded {
    if (!(over >= 0 && over < within)) {
      throw new IllegalArgumentException("needed more than " + over + " and at most " + within + " sessions");
    }
  }
}
