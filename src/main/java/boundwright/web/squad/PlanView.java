package boundwright.web.squad;

import java.util.List;

/**
 * The plan of the day as a form.
 *
 * @param title as written
 * @param rows one for each drill
 * @param said what was just done, or empty
 */
public record PlanView(String title, List<Row> rows, String said) {
  /**
   * A drill as written.
   *
   * @param sequence in letters
   * @param steps empty for each athlete's own rung
   * @param sets as written
   * @param reps as written
   * @param inSand whether the last flight ends in sand
   * @param refused why it cannot be taken, or empty
   * @param contacts contacts per leg in words, or empty when refused
   */
  public record Row(
      String sequence, String steps, String sets, String reps, boolean inSand, String refused, String contacts) {}
}
