package boundwright.season.year;

/** Single rules of a line as it is, for tests outside of this package. */
public final class RulesForTests {
  private RulesForTests() {}

  /** Whether seven days up to a day are kept beside the own weeks. */
  public static boolean ownWeeks(YearLine l, int t) {
    return YearRules.ownWeeksRefused(l, t, l.chosen(t)) == 0;
  }

  /** Whether a day is far enough from the last hard session. */
  public static boolean spacing(YearLine l, int t) {
    return YearRules.spacingRefused(l, t, l.chosen(t)) == 0;
  }

  /** Whether the load falls before a main meet. */
  public static boolean taper(YearLine l, int i) {
    return YearRules.taperRefused(l, l.problem().tapers[i], 0) == 0;
  }
}
