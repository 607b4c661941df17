package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.load.DayVerdict;
import boundwright.runway.DayPlan;
import boundwright.web.page.Figures;
import java.util.List;

/**
 * The squad of the day.
 *
 * @param plan the drills
 * @param date today in words
 * @param chosen number of the drill whose marks are shown, 1 for the first; 0 if the plan has none
 * @param lines one for each athlete
 * @param marked whether marks are shown: the chosen drill ends in sand
 */
public record SquadView(DayPlan plan, String date, int chosen, List<Line> lines, boolean marked) {
  /**
   * One athlete.
   *
   * @param athlete who
   * @param steps the steps they do the drill from, in words
   * @param mark the mark to the sand, in figures and units; empty if there is none
   * @param note the marks that work in words, or why there is none
   * @param open whether a mark works
   * @param day the one verdict of the day
   */
  public record Line(Athlete athlete, String steps, List<Figures.Part> mark, String note, boolean open, DayVerdict day) {}
}
