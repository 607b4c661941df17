package boundwright.web.squad;

import boundwright.athlete.Surface;
import java.time.LocalDate;
import java.util.List;

/**
 * The plan of one day as the sheet it will be, and the plan of the day after it beside.
 *
 * @param day which day
 * @param name the day in words: {@code Today, Tue 12 May 2026}
 * @param title as written
 * @param place as written; empty for the place of the settings
 * @param surface name of the surface of that place
 * @param usualPlace the place of the settings with its surface
 * @param rows one for each drill
 * @param sums what stands below the sheet
 * @param said what was just done, or why nothing was, or empty
 * @param own whether the day has a plan of its own; otherwise this is the usual one
 * @param next the plan of the day after, printed
 * @param copies plans that can be copied here
 */
public record PlanView(
    LocalDate day,
    String name,
    String title,
    String place,
    Surface surface,
    String usualPlace,
    List<Row> rows,
    Sums sums,
    String said,
    boolean own,
    Printed next,
    List<Copy> copies) {
  /**
   * A drill as written.
   *
   * @param sequence in letters
   * @param steps empty for each athlete's own rung
   * @param sets as written
   * @param reps as written
   * @param inSand whether the last flight ends in sand
   * @param refused why it cannot be taken, or empty
   * @param right contacts of the right leg over the drill, or 0 when refused
   * @param left contacts of the left leg over the drill, or 0 when refused
   */
  public record Row(
      String sequence, String steps, String sets, String reps, boolean inSand, String refused, int right, int left) {}

  /**
   * What stands below the sheet: contacts of each leg, and the one verdict of each athlete with this plan.
   *
   * @param right contacts of the right leg
   * @param left contacts of the left leg
   * @param here for how many athletes it was judged; 0: it was not
   * @param allowed for how many it is simply allowed
   * @param concerns what is said of the others, those for whom the same is said together
   * @param refused drills that cannot be read, with the reason; nothing is kept then
   */
  public record Sums(int right, int left, int here, int allowed, List<Concern> concerns, List<String> refused) {}

  /**
   * What is said of some athletes.
   *
   * @param answer caution or refused
   * @param names who
   * @param said why
   */
  public record Concern(String answer, String names, String said) {}

  /**
   * A plan as it is printed.
   *
   * @param day which day
   * @param name the day in words
   * @param title as written, may be empty
   * @param place where, or empty
   * @param drills a line each
   * @param right contacts of the right leg
   * @param left contacts of the left leg
   * @param own whether the day has a plan of its own
   */
  public record Printed(
      LocalDate day, String name, String title, String place, List<Line> drills, int right, int left, boolean own) {}

  /** A drill as it is printed: the sequence, and how it is done. */
  public record Line(String sequence, String how) {}

  /** A plan that can be copied: the action that does it, and its name. */
  public record Copy(String action, String name) {}
}
