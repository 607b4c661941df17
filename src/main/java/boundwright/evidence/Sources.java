package boundwright.evidence;

import java.util.List;
import java.util.stream.Stream;

/** Every source this program stands on, with its standing. The sources page lists them in this order. */
public final class Sources {
  /** Teaching order, progression, surfaces, what is looked for. */
  public static final Source ROUTINE =
      new Source("routine", "Teaching order of the bounding routine, approach steps 0-2-4-6-8-10-12, sets of ten contacts early in "
          + "the season, surfaces, what is looked for", "common practice", Standing.COMMON_PRACTICE);
  /** Flight of the centre of mass. */
  public static final Source PROJECTILE =
      new Source("projectile", "Flight time and distance of the centre of mass", "elementary mechanics, g = 9.81 m/s2; check values",
          Standing.WORKED);
  /** Loss of speed by gain. */
  public static final Source CONTACT_BY_GAIN =
      new Source("contact-by-gain", "Horizontal speed lost in a contact grows with the vertical speed gained",
          "Yu and Hay 1996, J Biomech 29:1283-1289", Standing.MEMORY);
  /** Loss of speed by take-off speed. */
  public static final Source CONTACT_BY_TAKE_OFF =
      new Source("contact-by-take-off", "The loss follows the vertical speed at take-off rather than the gain",
          "Allen, King and Yeadon 2013, J Biomech 46:979-983", Standing.READ);
  /** Sprint curve. */
  public static final Source SPRINT =
      new Source("sprint", "Speed and distance of an all-out start", "Furusawa, Hill and Parkinson 1927", Standing.READ);
  /** First steps. */
  public static final Source FIRST_STEPS =
      new Source("first-steps", "First steps from blocks .85-1.37 m (men), .82-1.07 m (women): run-up lengths need measured steps",
          "a review of block starts, not named", Standing.MEMORY);
  /** Eighteen steps. */
  public static final Source EIGHTEEN_STEPS =
      new Source("eighteen-steps", "18 steps = 33.83 m from a rocking start, a high-school boy", "one measured run-up, no paper named", Standing.MEMORY);
  /** Repeatability. */
  public static final Source REPEATABILITY =
      new Source("repeatability", "Standing jumps repeat to a coefficient of variation of 2.4-4.6 %",
          "Markovic et al. 2004", Standing.READ);
  /** The runway. */
  public static final Source RUNWAY =
      new Source("runway", "Runway at least 40 m", "World Athletics rules", Standing.READ);
  /** Units. */
  public static final Source UNITS =
      new Source("units", "1 ft = 0.3048 m, 1 in = 0.0254 m exactly", "international yard and pound agreement, 1959", Standing.MEMORY);
  /** The learning. */
  public static final Source LEARNING =
      new Source("learning", "Flights of a typical athlete, how far athletes differ from it, how much a day, a rep and a flight scatter",
          "first guess of the makers", Standing.JUDGEMENT);
  /** Learned scatter. */
  public static final Source SCATTER =
      new Source("scatter", "Learning the scatter beside the lengths (recursive maximum likelihood)",
          "Ljung and Söderström, Theory and Practice of Recursive Identification, 1983", Standing.MEMORY);
  /** The coach's log. */
  public static final Source LOG =
      new Source("log", "Lengths, chances and marks of an athlete", "the reps you logged", Standing.OWN_DATA);

  /** Faults and what to do about them. */
  public static final Source FAULTS =
      new Source("faults", "Faults in a bound: what they look like, likely causes, what to say and do; a fault that first shows in a "
          + "late contact is looked for one contact earlier", "common practice", Standing.COMMON_PRACTICE);
  /** The whole foot. */
  public static final Source WHOLE_FOOT =
      new Source("whole-foot", "At speed the whole foot is set down at once with the ankle held, instead of the heel leading",
          "taught in much of coach education, no paper named", Standing.MEMORY);
  /** Trend of a share. */
  public static final Source SHARE_TREND =
      new Source("share-trend", "Whether the share of reps with a fault rises or falls over the sessions (test for trend in shares)",
          "Armitage 1955, Biometrics 11:375-386", Standing.MEMORY);
  /** Kappa. */
  public static final Source KAPPA =
      new Source("kappa", "Agreement of two observers beyond chance", "Cohen 1960, Educ Psychol Meas 20:37-46", Standing.MEMORY);
  /** Error of kappa. */
  public static final Source KAPPA_ERROR =
      new Source("kappa-error", "Large-sample standard error of kappa", "Fleiss, Cohen and Everitt 1969, Psychol Bull 72:323-327",
          Standing.MEMORY);
  /** Intraclass correlation. */
  public static final Source ICC =
      new Source("icc", "Intraclass correlations of observers or of repeated tests, six forms", "Shrout and Fleiss 1979, Psychol Bull 86:420-428",
          Standing.READ);
  /** Intervals of the intraclass correlation. */
  public static final Source ICC_INTERVALS =
      new Source("icc-intervals", "95 % intervals of the intraclass correlations", "McGraw and Wong 1996, Psychol Methods 1:30-46",
          Standing.MEMORY);
  /** Typical error. */
  public static final Source TYPICAL_ERROR =
      new Source("typical-error", "Typical error of a test and smallest worthwhile change (0.2 of the spread between athletes)",
          "Hopkins 2000, Sports Med 30:1-15", Standing.READ);
  /** Minimal detectable change. */
  public static final Source DETECTABLE_CHANGE =
      new Source("detectable-change", "Minimal detectable change (95 %) = 1.96 x sqrt 2 x error of the test", "arithmetic of a normal error",
          Standing.WORKED);
  /** Share of clean reps. */
  public static final Source BETA_SHARE =
      new Source("beta-share", "True share of clean reps from the reps seen, even start (Beta 1,1)", "Bayes' rule; check values", Standing.WORKED);
  /** Sequential test. */
  public static final Source SEQUENTIAL =
      new Source("sequential", "Sequential test of the share of clean reps", "Wald's test in the form of the NIST/SEMATECH e-Handbook, 7.2 and 6.2.6",
          Standing.WORKED);
  /** Error of a hop test. */
  public static final Source HOP_ERROR =
      new Source("hop-error", "Test error is 7-11 % of a hop, 18-36 % at 11-13 years: compare a leg with its own history",
          "no paper named", Standing.MEMORY);
  /** Mixed model. */
  public static final Source MIXED_MODEL =
      new Source("mixed-model", "Trend of a test in a squad: level and slope per athlete, pooled in part (REML)",
          "Bates, Maechler, Bolker and Walker 2015, J Stat Softw 67(1):1-48", Standing.MEMORY);
  /** Reference data of the mixed model. */
  public static final Source MIXED_MODEL_CHECK =
      new Source("mixed-model-check", "Data against which the trend model is checked (not about jumping)",
          "Belenky et al. 2003, J Sleep Res 12:1-12", Standing.SECOND_HAND);
  /** Limits of test scores. */
  public static final Source TEST_LIMITS =
      new Source("test-limits", "Scores of a test outside its limits are refused as slips of the pen", "sanity limits of the makers",
          Standing.JUDGEMENT);

  /** A fault that a coach added. */
  public static final Source OWN_FAULT =
      new Source("own-fault", "A fault that this coach added, with their advice", "the coach's own words", Standing.OWN_DATA);
  /** The squad's own repeats. */
  public static final Source OWN_REPEATS =
      new Source("own-repeats", "Error of a test from repeats on two days at most two weeks apart", "the squad's own repeats", Standing.OWN_DATA);
  /** Error of a test without a published one. */
  public static final Source REPEATABILITY_CARRIED_OVER =
      new Source("repeatability-carried-over",
          "Error of the standing five and ten, taken to be that of single standing jumps until the squad's own repeats are in",
          "Markovic et al. 2004, carried over by the makers", Standing.JUDGEMENT);

  /** All of them. */
  public static final List<Source> ALL =
      and(
          JumpSources.ALL,
          ROUTINE, PROJECTILE, CONTACT_BY_GAIN, CONTACT_BY_TAKE_OFF, SPRINT, FIRST_STEPS, EIGHTEEN_STEPS, REPEATABILITY, RUNWAY,
          UNITS, LEARNING, SCATTER, LOG,
          FAULTS, WHOLE_FOOT, SHARE_TREND, KAPPA, KAPPA_ERROR, ICC, ICC_INTERVALS,
          TYPICAL_ERROR, DETECTABLE_CHANGE, BETA_SHARE, SEQUENTIAL, HOP_ERROR, MIXED_MODEL, MIXED_MODEL_CHECK, TEST_LIMITS,
          OWN_FAULT, OWN_REPEATS, REPEATABILITY_CARRIED_OVER);

  private Sources() {}

  private static List<Source> and(List<Source> more, Source... own) {
    return Stream.concat(Stream.of(own), more.stream()).toList();
  }
}
