package boundwright.runway;

import org.jspecify.annotations.Nullable;

/**
 * Take-off marks for a rep of any kind that ends in sand, when the places of its last contact before the sand and of its landing are jointly
 * normal ({@link MarkChances}).
 *
 * @param best_m the mark from which a rep counts most likely, to the near edge of the sand [m]
 * @param chance that it counts from there: ends in sand and keeps the last contact out of it, each by its margin; 0 to 1
 * @param window the marks from which it counts with the asked chance, or null if none does
 */
public record SandMarks(double best_m, double chance, @Nullable Window window) {
  /**
   * The marks.
   *
   * @param lastContact_m expected place of the last contact, from the mark [m]
   * @param lastSd_m its standard deviation [m], above 0
   * @param landing_m expected place of the landing [m]
   * @param landingSd_m its standard deviation [m], above 0
   * @param together_m2 covariance of the two [m2]
   */
  public static SandMarks of(
      double lastContact_m, double lastSd_m, double landing_m, double landingSd_m, double together_m2, MarkSettings asked) {
    MarkChances chances = new MarkChances(lastContact_m, lastSd_m, landing_m, landingSd_m, together_m2, asked);
    return new SandMarks(chances.best(), chances.bestChance(), chances.window().orElse(null));
  }

  /** The chance as it is shown: whole reps in a hundred, rounded down. */
  public int inHundred() {
    return InHundred.of(chance);
  }
}
