package boundwright.clip.session;

import boundwright.clip.Box;
import java.util.List;
import java.util.Locale;

/**
 * One rep that a session's film shows.
 *
 * @param from_s where reading begins, by the film's own times [s]; the athlete stands in {@code box} in the first frame from here on
 * @param to_s where reading ends [s]
 * @param run_s where the run was first seen to be one [s]
 * @param box round the athlete at {@code from_s} [px of the picture as shown]
 * @param toTheRight whether the athlete runs to the right of the picture
 * @param speed of the hips in trunk-and-leg lengths a second, the middle of the run
 * @param bounce how far the hips rise at most between two contacts, in the same lengths
 * @param landed whether the run was seen to end, not only to leave the picture
 * @param sure how sure it is that this is a rep, 0 to 1 (judgement)
 * @param clothes for telling shirts apart within this film
 * @param stills times of the pictures kept [s]
 */
public record FilmRep(
    double from_s, double to_s, double run_s, Box box, boolean toTheRight, double speed, double bounce, boolean landed, double sure,
    Clothes clothes, List<Double> stills) {
  /** Copies the times. */
  public FilmRep {
    stills = List.copyOf(stills);
  }

  /** Where in the film, which way and how sure, as page and command line say it: {@code 0:03.4 to 0:06.2, to the right, 97 % sure}. */
  public String said() {
    return String.format(
        Locale.ROOT, "%s to %s, to the %s, %.0f %% sure", at(run_s), at(to_s), toTheRight ? "right" : "left", 100 * sure)
        + (landed ? "" : ", landing not seen");
  }

  private static String at(double seconds) {
    long tenths = Math.round(10 * seconds);
    long s = tenths / 10;
    String minutes = s >= 3600 ? String.format(Locale.ROOT, "%d:%02d", s / 3600, s / 60 % 60) : Long.toString(s / 60);
    return String.format(Locale.ROOT, "%s:%02d.%d", minutes, s % 60, tenths % 10);
  }
}
