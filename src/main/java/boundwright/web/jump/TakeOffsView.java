package boundwright.web.jump;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.load.DayVerdict;
import boundwright.picture.strip.RunwayStrip;
import boundwright.picture.strip.TakeOffStrip;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpRep;
import boundwright.web.page.Sent;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Take-offs in a row of an athlete.
 *
 * @param athlete who
 * @param unit the coach's unit
 * @param asked what is shown and logged
 * @param refused why what the address asked was not taken, or empty
 * @param day what the load says
 * @param wayBack what the stage of a leg on its way back allows today, a sentence each
 * @param marks the marks, or null while jumping is stopped
 * @param reps as kept, oldest first
 * @param sent a refused form, or nothing
 * @param token makes a double tap one entry
 * @param said what was just done, or empty
 * @param undo number of the rep just kept, or 0
 * @param today the day, for the date field
 */
public record TakeOffsView(
    Athlete athlete,
    LengthUnit unit,
    Asked asked,
    String refused,
    DayVerdict day,
    List<String> wayBack,
    @Nullable RunJumpMarks marks,
    List<RunJumpRep> reps,
    Sent sent,
    String token,
    String said,
    long undo,
    String today) {

  /**
   * What is shown and logged.
   *
   * @param pattern feet and rhythm
   * @param steps of the run-up
   * @param sand whether it ends in the sand
   */
  public record Asked(RunJumps pattern, int steps, boolean sand) {
    /** What the athlete did last, or the usual form off their own foot. */
    static Asked usual(Athlete athlete, List<RunJumpRep> reps) {
      if (reps.isEmpty()) {
        return new Asked(new RunJumps(athlete.takeOffFoot(), RunJumps.USUAL_RUNNING, RunJumps.USUAL_JUMPS), athlete.rung(), true);
      }
      RunJumpRep last = reps.get(reps.size() - 1);
      return new Asked(last.pattern(), last.steps(), last.inSand());
    }
  }

  static String address(Athlete athlete) {
    return "/athlete/" + athlete.id() + "/take-offs";
  }

  /** Where the forms are sent. */
  public String action() {
    return address(athlete);
  }

  /** The marks, where they are shown. */
  public RunJumpMarks shown() {
    return Objects.requireNonNull(marks);
  }

  /** The picture for a desk. */
  public RunwayStrip wide() {
    return TakeOffStrip.of(shown(), unit, RunwayStrip.Width.WIDE);
  }

  /** The picture for a phone. */
  public RunwayStrip narrow() {
    return TakeOffStrip.of(shown(), unit, RunwayStrip.Width.NARROW);
  }

  /** Right and left. */
  public List<Foot> feet() {
    return List.of(Foot.values());
  }

  /** Running steps to choose from. */
  public List<Integer> runnings() {
    return IntStream.rangeClosed(1, RunJumps.MOST_RUNNING).boxed().toList();
  }

  /** Running steps in the words of the list. */
  public String running(int steps) {
    RunJumps p = new RunJumps(asked.pattern.first(), steps, 2);
    return steps + (steps == RunJumps.USUAL_RUNNING ? ": run, run, jump" : ": every " + (steps == 1 ? "2nd" : p.every() + "th") + " contact");
  }

  /** Numbers of take-offs to choose from. */
  public List<Integer> counts() {
    return IntStream.rangeClosed(2, RunJumps.MOST_JUMPS).boxed().toList();
  }

  /** Nine reps in ten. */
  public String interval(Estimate e) {
    return unit.write(e.p05()) + " to " + unit.write(e.p95());
  }

  /** The kept reps, newest first. */
  public List<RunJumpRep> newestFirst() {
    List<RunJumpRep> out = new ArrayList<>(reps);
    Collections.reverse(out);
    return out;
  }
}
