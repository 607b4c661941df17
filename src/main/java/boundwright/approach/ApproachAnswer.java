package boundwright.approach;

import boundwright.approach.board.StartAdvice;
import boundwright.approach.run.LearnedShifts;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.StepModel;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An athlete's full run-up: where it starts and is checked, how widely the foot falls, and what to do about it.
 *
 * @param runs run-throughs as kept, oldest first
 * @param plan start and check marks
 * @param model lengths of the steps, from which the picture takes each foot's place
 * @param spread spread by step and where steering starts, or null when the data cannot tell
 * @param spreadMissing why there is no spread, with the least that is needed; null when there is one
 * @param start whether to move the start mark or train the rhythm; its verdict says when the data cannot tell
 * @param startFrom what that rests on, a sentence
 * @param shifts how wind and tiredness change this athlete's run-up; silent until told
 * @param from what the plan rests on, a sentence
 */
public record ApproachAnswer(
    List<RunThroughEntry> runs,
    RunUpPlan plan,
    StepModel model,
    @Nullable RunwaySpread spread,
    @Nullable String spreadMissing,
    StartAdvice start,
    String startFrom,
    LearnedShifts shifts,
    String from) {
  /** Takes a copy. */
  public ApproachAnswer {
    runs = List.copyOf(runs);
  }

  /** Where the second last contact falls, from the take-off line [m]: the tape for drills of the last two steps. */
  public Estimate secondLast_m() {
    return model.between(plan.steps() - 1, plan.steps(), plan.steps()).plus(plan.aim_m());
  }

  /** The sentence for the coach about wind and tiredness. */
  public String shiftWords(LengthUnit unit) {
    String wind =
        shifts.windTold()
            ? "Per m/s of tail wind more than usual the start goes " + way(unit, shifts.wind_m().p50()) + "."
            : "The data cannot tell what wind does to this run-up";
    String tired =
        shifts.tirednessTold()
            ? "Per point of tiredness it goes " + way(unit, shifts.tiredness_m().p50()) + "."
            : shifts.windTold() ? "The data cannot tell what tiredness does." : ", nor tiredness: log both with each run-through.";
    return wind + (shifts.windTold() ? " " : shifts.tirednessTold() ? ". " : "") + tired;
  }

  private static String way(LengthUnit unit, double metres) {
    return unit.write(Math.abs(metres)) + (metres > 0 ? " back" : " forward");
  }
}
