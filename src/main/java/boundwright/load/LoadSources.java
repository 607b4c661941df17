package boundwright.load;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.List;

/** Where the guard's default limits and the load figures come from. */
public final class LoadSources {
  /** In season. */
  public static final Source SESSION_IN_SEASON =
      new Source("contacts-session", "Contacts in a session: beginner 80-100, intermediate 100-120, advanced 120-140",
          "Potach and Chu, NSCA Essentials, 4th ed. 2016", Standing.SECOND_HAND);
  /** Off-season and pre-season. */
  public static final Source SESSION_BY_SEASON =
      new Source("contacts-season", "Contacts in a session by season: off-season 60-100 / 100-150 / 120-200, pre-season 100-250 / "
          + "150-300 / 150-450", "Chu, Jumping into Plyometrics, 1998", Standing.MEMORY);
  /** Children. */
  public static final Source GROWING =
      new Source("growing", "Children start at 50-60 jumps a session, twice a week, for 8-10 weeks",
          "Johnson et al. 2011, JSCR 25:2623-2633", Standing.READ);
  /** No shock under 16. */
  public static final Source NO_SHOCK =
      new Source("no-shock", "No shock-intensity plyometrics under 16", "Allerheiligen and Rogers 1995", Standing.READ);
  /** Spacing. */
  public static final Source SPACING =
      new Source("spacing", "48-72 hours between sessions", "plyometric guidelines, no paper named", Standing.MEMORY);
  /** Ramp. */
  public static final Source RAMP =
      new Source("ramp", "A weekly rise of 10 % is custom, not proven (Buist et al. 2008); over 30 % in two weeks was riskier in novice "
          + "runners (Nielsen et al. 2014)", "Buist et al. 2008; Nielsen et al. 2014", Standing.SECOND_HAND);
  /** Single-leg series. */
  public static final Source SERIES =
      new Source("series", "The further back the start, the fewer single-leg series and the more combinations", "common practice",
          Standing.COMMON_PRACTICE);
  /** Surface. */
  public static final Source SURFACE =
      new Source("surface", "Level grass best, sprung floor or raised runway good, the track only if it must be, never concrete",
          "common practice", Standing.COMMON_PRACTICE);
  /** Pain. */
  public static final Source PAIN =
      new Source("pain", "Pain 0-2 safe, 3-5 acceptable, above 5 too much; settled by next morning. Studied in adults with an assessed "
          + "Achilles tendon: not for bone pain, swelling, growth areas or minors",
          "Thomee 1997; Silbernagel et al. 2007", Standing.MEMORY);
  /** Stop and refer. */
  public static final Source REFER =
      new Source("refer", "Pain on one bony spot, at night or at rest, that climbs in the session, swelling, giving way, a pop, cannot hop "
          + "on the leg: stop and refer to licensed medical staff", "the usual signs to stop, no paper named", Standing.MEMORY);
  /** Hard sessions. */
  public static final Source HARD =
      new Source("hard", "What counts as a hard session, and the floor of the weekly rise", "first guess of the makers", Standing.JUDGEMENT);
  /** Mean force. */
  public static final Source MEAN_FORCE =
      new Source("mean-force", "Mean vertical force of a contact by impulse; contact times .139/.157/.177 s",
          "impulse and momentum; Perttunen et al. 2000, J Sports Sci 18:363-370", Standing.READ);
  /** Session load. */
  public static final Source SESSION_LOAD =
      new Source("session-load", "Session load = rating x minutes; monotony = mean / SD of seven days; strain = sum x monotony",
          "Foster 1998", Standing.MEMORY);
  /** EWMA. */
  public static final Source EWMA =
      new Source("ewma", "Exponentially weighted mean of daily load, L = 2 / (N + 1); a description, never a gate (the ratio is largely "
          + "arithmetic: Lolli et al. 2019; Impellizzeri et al. 2021, read)", "Williams et al. 2017", Standing.READ);

  /** All of them, for the sources page. */
  public static final List<Source> ALL =
      List.of(SESSION_IN_SEASON, SESSION_BY_SEASON, GROWING, NO_SHOCK, SPACING, RAMP, SERIES, SURFACE, PAIN, REFER, HARD, MEAN_FORCE,
          SESSION_LOAD, EWMA);

  private LoadSources() {}
}
