package boundwright.load;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.List;

/** Where the default limits and the load figures come from. */
public final class LoadSources {
  /** By level of experience. */
  public static final Source SESSION_BY_LEVEL =
      new Source("contacts-session", "Contacts in a session by level of experience, not by season: beginner 80-100, intermediate 100-120, "
          + "advanced 120-140. No range for the competition season was found, so these are asked in season",
          "Potach and Chu, NSCA Essentials, 4th ed. 2016", Standing.SECOND_HAND);
  /** Off-season and pre-season. */
  public static final Source SESSION_BY_SEASON =
      new Source("contacts-season", "Contacts in a session by season: off-season 60-100 / 100-150 / 120-200, pre-season 100-250 / "
          + "150-300 / 150-450; none in season", "Chu, Jumping into Plyometrics, 1998", Standing.MEMORY);
  /** Children. */
  public static final Source GROWING =
      new Source("growing", "Children start at 50-60 jumps a session, twice a week, for 8-10 weeks",
          "Johnson et al. 2011, JSCR 25:2623-2633", Standing.READ);
  /** After the start. */
  public static final Source GROWING_STEPS =
      new Source("growing-steps", "No source says that the care for growing athletes ends after those weeks: the limit rises by 10 contacts "
          + "every 4 weeks, to the lowest limit of the level", "the makers", Standing.JUDGEMENT);
  /** Fast growth. */
  public static final Source FAST_GROWTH =
      new Source("fast-growth-limits", "While somebody grows faster than the setting, and until the limits have risen again from its end, the limits are "
          + "those with which a growing athlete starts. Complaints that go with growth come most often in the spurt (scoping review, Br J Sports Med "
          + "2024;58:1001, read); that lower limits help is not shown", "the makers", Standing.JUDGEMENT);
  /** No shock under 16. */
  public static final Source NO_SHOCK =
      new Source("no-shock", "No shock-intensity plyometrics under 16", "Allerheiligen and Rogers 1995", Standing.READ);
  /** Spacing. */
  public static final Source SPACING =
      new Source("spacing", "48-72 hours between plyometric sessions", "Potach and Chu, NSCA Essentials, 4th ed. 2016", Standing.MEMORY);
  /** Own weeks. */
  public static final Source OWN_WEEKS =
      new Source("own-weeks", "Seven days beside the athlete's own weeks: caution from 10 % above (custom, not proven: Buist et al. 2008), "
          + "refused from 30 % (over 30 % in two weeks was worse for novice runners: Nielsen et al. 2014). Own weeks count as 120 "
          + "standing-bound contacts at least, two sessions of 60 (judgement)", "Buist et al. 2008; Nielsen et al. 2014", Standing.SECOND_HAND);
  /** The weight of a contact. */
  public static final Source WEIGHT =
      new Source("contact-weight", "A contact weighs its mean force over that of a standing bound, to a power of 4 to 9, a fatigue exponent "
          + "used for bone. It describes; it is not a risk", "Edwards 2018, Exerc Sport Sci Rev 46:224-231", Standing.MEMORY);
  /** Contact times. */
  public static final Source CONTACT_TIMES =
      new Source("contact-times", "Contact time .24 s from standing falling to .17 s from a full run-up; elite full jumps stay "
          + ".139/.157/.177 s (Perttunen et al. 2000, read) and other athletes longer", "the makers", Standing.JUDGEMENT);
  /** Other work. */
  public static final Source OTHER_WORK =
      new Source("other-work", "What a sprint step, a set of weights, a landing from a box and an hour of sport count for a leg", "the makers",
          Standing.JUDGEMENT);
  /** The way back of a leg. */
  public static final Source WAY_BACK =
      new Source("way-back", "After days off a leg begins with a share of its former week and grows by a part a week: from 30 % at 15 % "
          + "ln(1/.3)/ln 1.15 = 8.61, so 9 weeks, at 10 % 12.63, so 13 (worked). Share, growth, two clean days a stage, and three days between "
          + "from two thirds on; who may bound again, licensed medical staff say", "the makers", Standing.JUDGEMENT);
  /** When a way back may reach the former week. */
  public static final Source BACK_DATES =
      new Source("back-dates", "The range of dates: 1000 simulated ways, eight in ten of them in it; how often a loaded day is clean, a pain too much and a planned day "
          + "missed begin at nine in ten (worth ten days), one in four (worth four) and one in ten (worth ten), and are learned from the log", "the makers", Standing.JUDGEMENT);
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
      new Source("hard", "What counts as a hard session", "the makers", Standing.JUDGEMENT);
  /** Mean force. */
  public static final Source MEAN_FORCE =
      new Source("mean-force", "Mean vertical force of a contact over body weight: 1 + (speed down + speed up) / (g x contact time), exact by "
          + "impulse", "impulse and momentum; check value 2.6, 1.9 m/s, .157 s: 3.922", Standing.WORKED);
  /** Session load. */
  public static final Source SESSION_LOAD =
      new Source("session-load", "Session load = rating x minutes; monotony = mean / SD of seven days; strain = sum x monotony",
          "Foster 1998", Standing.MEMORY);
  /** EWMA. */
  public static final Source EWMA =
      new Source("ewma", "Exponentially weighted mean of daily load, L = 2 / (N + 1); a description, never a limit (the ratio is largely "
          + "arithmetic: Lolli et al. 2019; Impellizzeri et al. 2021, read)", "Williams et al. 2017", Standing.READ);

  /** All of them, for the sources page. */
  public static final List<Source> ALL =
      List.of(SESSION_BY_LEVEL, SESSION_BY_SEASON, GROWING, GROWING_STEPS, FAST_GROWTH, NO_SHOCK, SPACING, OWN_WEEKS, WAY_BACK, BACK_DATES, WEIGHT, MEAN_FORCE, CONTACT_TIMES,
          OTHER_WORK, SERIES, SURFACE, PAIN, REFER, HARD, SESSION_LOAD, EWMA);

  private LoadSources() {}
}
