package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.runway.Beginning;
import boundwright.runway.DayPlan;
import boundwright.runway.Opener;
import boundwright.runway.Tapes;
import java.util.List;

/**
 * The tapes of the day.
 *
 * @param tapes which, with the proof
 * @param unit the coach's unit
 * @param plan the drills that they are for
 * @param squad how many athletes
 * @param notSimply those whose day is not simply allowed; who is held has no tape
 */
public record TapesView(Tapes tapes, LengthUnit unit, DayPlan plan, int squad, List<Who> notSimply) {
  /** An athlete with the one verdict of their day. */
  public record Who(Athlete athlete, DayVerdict day) {}

  /** Why no mark works for a wish, and the first way out. */
  public String why(Tapes.Wish wish) {
    String first = wish.advice().warnings().isEmpty() ? "" : wish.advice().warnings().get(0);
    List<Opener> openers = wish.advice().openers();
    return openers.isEmpty() ? first : (first + " " + openers.get(0).said()).strip();
  }

  /** The marks that work, in words; of a beginning, how often a rep from its tape lands in the sand. */
  public String works(Tapes.Wish wish) {
    Beginning beginning = wish.advice().beginning();
    return beginning == null ? "works from " + worksFrom(wish) : beginning.odds() + " land in the sand, " + beginning.soon();
  }

  /** The marks that work, or of a beginning those that are as good; in words. */
  public String worksFrom(Tapes.Wish wish) {
    Beginning beginning = wish.advice().beginning();
    if (beginning != null) {
      return unit.write(beginning.from_m()) + " to " + unit.write(beginning.to_m());
    }
    return wish.advice().window() == null
        ? "nowhere"
        : unit.write(wish.advice().window().min_m()) + " to " + unit.write(wish.advice().window().max_m());
  }
}
