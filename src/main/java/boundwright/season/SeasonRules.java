package boundwright.season;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.load.GuardSettings;
import boundwright.quantity.RefusedException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The coach's own rules. Standing of the defaults: judgement, but for the taper (Bosquet et al. 2007, read: two weeks, volume down 41 to
 * 60 %, mostly endurance evidence) and the lighter week after three rising ones (common practice).
 *
 * @param week what is wanted of a usual week, by part of the year
 * @param lighterEvery every so many weeks a lighter one, 2 to 12; 0 for none
 * @param lighterShare its share of a usual week, 0.3 to 1
 * @param taper before a main meet
 * @param testEvery weeks between two test weeks, 2 to 26; 0 for none
 * @param softContacts most contacts on a soft day, 0 to 200
 * @param noticeDays days that families want to know ahead, 0 to 14
 * @param spareShare room that is kept under the guard's refusal of a rise, as a share of the own weeks, 0 to 0.25
 * @param guard limits and scale of the load account
 * @param unplanned what simulated seasons go by
 */
public record SeasonRules(
    Map<Period.Kind, Week> week,
    int lighterEvery,
    double lighterShare,
    Taper taper,
    int testEvery,
    int softContacts,
    int noticeDays,
    double spareShare,
    GuardSettings guard,
    Unplanned unplanned) {
  /** Where the defaults come from. */
  public static final List<Source> SOURCES =
      List.of(
          new Source("taper", "Before a main meet the load falls for two weeks along an exponential, on average by 41 to 60 %; mostly endurance evidence",
              "Bosquet et al. 2007, MSSE 39:1358-1365", Standing.READ),
          new Source("lighter-week", "A lighter week after three rising ones", "common practice", Standing.COMMON_PRACTICE),
          new Source("season-weeks", "What is wanted of a week in each part of the year, test weeks, soft days, notice; all in the season's file", "the makers",
              Standing.JUDGEMENT));

  /** The defaults, with these limits and this scale of the load account. */
  public static SeasonRules usual(GuardSettings guard) {
    Map<Period.Kind, Week> week = new EnumMap<>(Period.Kind.class);
    week.put(Period.Kind.GENERAL, new Week(0.8, 2, 0, 0));
    week.put(Period.Kind.SPECIFIC, new Week(1.0, 1, 1, 0));
    week.put(Period.Kind.PRE_COMPETITION, new Week(0.9, 1, 1, 1));
    week.put(Period.Kind.COMPETITION, new Week(0.7, 1, 1, 0));
    week.put(Period.Kind.REST, new Week(0.25, 1, 0, 0));
    return new SeasonRules(week, 4, 0.7, new Taper(14, 0.41, 0.50, 0.60), 6, 40, 2, 0, guard);
  }

  /** With what usually happens unplanned. */
  public SeasonRules(
      Map<Period.Kind, Week> week,
      int lighterEvery,
      double lighterShare,
      Taper taper,
      int testEvery,
      int softContacts,
      int noticeDays,
      double spareShare,
      GuardSettings guard) {
    this(week, lighterEvery, lighterShare, taper, testEvery, softContacts, noticeDays, spareShare, guard, Unplanned.USUAL);
  }

  /** The same rules, but for what happens unplanned. */
  public SeasonRules with(Unplanned other) {
    return new SeasonRules(week, lighterEvery, lighterShare, taper, testEvery, softContacts, noticeDays, spareShare, guard, other);
  }

  /** Takes a copy; refuses rules out of range. */
  public SeasonRules {
    Map<Period.Kind, Week> all = new EnumMap<>(Period.Kind.class);
    for (Period.Kind k : Period.Kind.values()) {
      Week w = week.get(k);
      if (w == null) {
        throw new RefusedException("What is wanted of a week in " + k.label() + " is missing.");
      }
      all.put(k, w);
    }
    week = Map.copyOf(all);
    range("A lighter week every", lighterEvery, lighterEvery == 0 ? 0 : 2, 12, "weeks");
    range("The share of a lighter week", lighterShare, 0.3, 1, "");
    range("Weeks between two test weeks", testEvery, testEvery == 0 ? 0 : 2, 26, "weeks");
    range("Contacts on a soft day", softContacts, 0, 200, "contacts");
    range("Notice for families", noticeDays, 0, 14, "days");
    range("Room kept under a refusal", spareShare, 0, 0.25, "");
  }

  /** What is wanted of a week in a part of the year. */
  public Week week(Period.Kind kind) {
    Week w = week.get(kind);
    if (w == null) {
      throw new IllegalStateException("no week for " + kind);
    }
    return w;
  }

  /**
   * What is wanted of a week.
   *
   * @param share of the athlete's largest week, 0 to 1
   * @param bounds sessions of bounding, 0 to 7
   * @param combinations sessions of combinations, 0 to 7
   * @param jumps sessions of short jumps, 0 to 7
   */
  public record Week(double share, int bounds, int combinations, int jumps) {
    /** Refuses weeks that nobody has. */
    public Week {
      range("The share of the largest week", share, 0, 1, "");
      range("Sessions of bounding", bounds, 0, 7, "a week");
      range("Sessions of combinations", combinations, 0, 7, "a week");
      range("Sessions of short jumps", jumps, 0, 7, "a week");
    }

    /** How many of a kind. */
    public int sessions(SessionKind kind) {
      return switch (kind) {
        case BOUNDS -> bounds;
        case COMBINATIONS -> combinations;
        case JUMPS -> jumps;
        case TEST, MEET -> 0;
      };
    }
  }

  /**
   * How the load falls before a main meet.
   *
   * @param days that it lasts, the day of the meet included, 7 to 28
   * @param leastCut least mean cut against the four weeks before it, 0 to 0.9; less is refused
   * @param cut mean cut that is wanted
   * @param mostCut most that it should be cut
   */
  public record Taper(int days, double leastCut, double cut, double mostCut) {
    /** Refuses cuts that are out of order. */
    public Taper {
      range("The taper", days, 7, 28, "days");
      range("The least cut of the taper", leastCut, 0, 0.9, "");
      if (!(leastCut <= cut && cut <= mostCut && mostCut <= 0.95)) {
        throw new RefusedException(
            "A taper that cuts at least " + leastCut + ", usually " + cut + ", at most " + mostCut + " is out of order: each at least the one before, the last at most 0.95.");
      }
    }
  }

  private static void range(String what, double value, double least, double most, String unit) {
    if (!(value >= least && value <= most)) {
      throw new RefusedException(what + " cannot be " + shown(value) + " " + unit + ": " + shown(least) + " to " + shown(most) + ".");
    }
  }

  private static String shown(double x) {
    return x == Math.rint(x) ? String.valueOf((long) x) : String.valueOf(x);
  }
}
