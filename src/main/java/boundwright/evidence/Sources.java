package boundwright.evidence;

import java.util.List;
import java.util.stream.Stream;

/** Every source this program stands on, with its standing. The sources page lists them in this order. */
public final class Sources {
  /** Teaching order, progression, surfaces, what is looked for. */
  public static final Source ROUTINE =
      new Source("routine", "Teaching order of the bounding routine, the rungs 0-2-4-6-8-10-12, sets of ten contacts early in "
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
          "review of block starts", Standing.READ);
  /** Eighteen steps. */
  public static final Source EIGHTEEN_STEPS =
      new Source("eighteen-steps", "18 steps = 33.83 m from a rocking start, a high-school boy", "measured run-up", Standing.READ);
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
      new Source("scatter", "Learning the scatter beside the lengths (variational Bayes)",
          "Särkkä and Nummenmaa 2009, IEEE Trans Autom Control 54:596-600", Standing.MEMORY);
  /** The coach's log. */
  public static final Source LOG =
      new Source("log", "Lengths, chances and marks of an athlete", "the reps you logged", Standing.OWN_DATA);

  /** All of them. */
  public static final List<Source> ALL =
      and(
          JumpSources.ALL,
          ROUTINE, PROJECTILE, CONTACT_BY_GAIN, CONTACT_BY_TAKE_OFF, SPRINT, FIRST_STEPS, EIGHTEEN_STEPS, REPEATABILITY, RUNWAY,
          UNITS, LEARNING, SCATTER, LOG);

  private Sources() {}

  private static List<Source> and(List<Source> more, Source... own) {
    return Stream.concat(Stream.of(own), more.stream()).toList();
  }
}
