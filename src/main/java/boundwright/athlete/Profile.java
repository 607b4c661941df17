package boundwright.athlete;

import java.util.List;

/**
 * All that is known of an athlete before the first rep.
 *
 * @param athlete who
 * @param knownMarks standing tests and best marks, oldest first
 * @param runUps measured run-ups, oldest first
 * @param growingFast whether they grow faster than the setting, by their heights
 */
public record Profile(Athlete athlete, List<KnownMark> knownMarks, List<MeasuredRunUp> runUps, boolean growingFast) {
  /** Takes copies. */
  public Profile {
    knownMarks = List.copyOf(knownMarks);
    runUps = List.copyOf(runUps);
  }

  /** Of whom no heights are known. */
  public Profile(Athlete athlete, List<KnownMark> knownMarks, List<MeasuredRunUp> runUps) {
    this(athlete, knownMarks, runUps, false);
  }

  /** A profile with nothing but the athlete. */
  public static Profile bare(Athlete athlete) {
    return new Profile(athlete, List.of(), List.of());
  }
}
