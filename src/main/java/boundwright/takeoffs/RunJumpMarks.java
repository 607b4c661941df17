package boundwright.takeoffs;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.runway.AdviceWarnings;
import boundwright.runway.AdviceWords;
import boundwright.runway.CoachSettings;
import boundwright.runway.InHundred;
import boundwright.runway.MarkSettings;
import boundwright.runway.SandMarks;
import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Where the tapes of repeated take-offs go.
 *
 * @param pattern what is asked
 * @param steps of the run-up
 * @param takeOffs each take-off in order
 * @param landing where the last one lands, from the first mark [m]
 * @param sand the mark before the sand and its chance; null on the flat
 * @param settings what was asked of a mark
 * @param runUp start mark to first take-off
 * @param needed_m start mark to the sand, on the flat to the landing, at the 95 % point [m]
 * @param fewer how many take-offs would do where no mark reaches what is asked; null else, and where none would
 * @param reps of this kind with a measured place that it rests on
 * @param warnings what the coach must know before taping, most important first
 */
public record RunJumpMarks(
    RunJumps pattern,
    int steps,
    List<TakeOffMark> takeOffs,
    Estimate landing,
    @Nullable SandMarks sand,
    MarkSettings settings,
    RunUp runUp,
    double needed_m,
    @Nullable Fewer fewer,
    int reps,
    List<String> warnings) {
  /** Takes copies. */
  public RunJumpMarks {
    takeOffs = List.copyOf(takeOffs);
    warnings = List.copyOf(warnings);
  }

  /**
   * One take-off.
   *
   * @param jump 1 for the first, which is at the mark
   * @param foot it is off
   * @param fromMark_m from the first mark, forward, nine reps in ten [m]
   * @param toSand_m tape of it, back from the near edge of the sand [m]; null on the flat
   */
  public record TakeOffMark(int jump, Foot foot, Estimate fromMark_m, @Nullable Double toSand_m) {}

  /**
   * Fewer take-offs with which a mark reaches what is asked.
   *
   * @param jumps how many, 2 or more
   * @param window the marks that work
   */
  public record Fewer(int jumps, Window window) {}

  static RunJumpMarks of(RunJumpModel model, RunJumps pattern, int steps, boolean inSand, RunUp runUp, CoachSettings settings) {
    RunJumpModel.Told told = model.told(pattern, steps, inSand);
    int n = pattern.jumps();
    SandMarks sand = inSand ? sand(told, settings.marks()) : null;
    Double mark = sand == null ? null : (Double) sand.best_m();
    List<TakeOffMark> out = new ArrayList<>();
    for (int jump = 1; jump <= n; jump++) {
      Estimate at = jump == 1 ? Estimate.normal(0, told.mark()) : told.places().get(jump - 2);
      out.add(new TakeOffMark(jump, pattern.foot(jump), at, mark == null ? null : (Double) (mark - at.p50())));
    }
    Estimate landing = told.places().get(n - 1);
    double needed = runUp.length().p95() + (mark == null ? landing.p95() : mark);
    Fewer fewer = sand == null || sand.window() != null ? null : fewer(model, pattern, steps, settings.marks());
    return new RunJumpMarks(
        pattern, steps, out, landing, sand, settings.marks(), runUp, needed, fewer, model.measured(),
        warnings(landing, sand, steps, model.measured(), runUp, needed, settings));
  }

  static SandMarks sand(RunJumpModel.Told told, MarkSettings asked) {
    return SandMarks.of(
        told.lastTakeOff().mean(), told.lastTakeOff().sd(), told.landing().mean(), told.landing().sd(), told.together(), asked);
  }

  private static @Nullable Fewer fewer(RunJumpModel model, RunJumps pattern, int steps, MarkSettings asked) {
    for (int n = pattern.jumps() - 1; n >= 2; n--) {
      Window w = sand(model.told(pattern.times(n), steps, true), asked).window();
      if (w != null) {
        return new Fewer(n, w);
      }
    }
    return null;
  }

  private static List<String> warnings(
      Estimate landing, @Nullable SandMarks sand, int steps, int reps, RunUp runUp, double needed, CoachSettings settings) {
    List<String> out = new ArrayList<>();
    if (settings.facility().surface() == Surface.CONCRETE) {
      out.add(AdviceWarnings.CONCRETE);
    }
    double there = sand == null ? settings.facility().flat_m() : settings.facility().runway_m();
    if (needed > there) {
      out.add(AdviceWarnings.tooShort(sand != null, needed, "take-offs", settings));
    }
    double pit = settings.facility().pit_m();
    // before any rep next to nothing is known of the landing, and its far end says so and nothing of the pit
    if (sand != null && landing.p95() - sand.best_m() > pit && (reps > 0 || landing.p50() - sand.best_m() > pit)) {
      out.add(AdviceWarnings.pastTheSand("take-offs", settings));
    }
    if (steps > 0 && runUp.measured() == 0) {
      out.add("The start mark is a guess from typical steps. Measure one run-up of " + steps + " steps and enter it.");
    }
    return out;
  }

  /** Whether the last take-off ends in the sand. */
  public boolean inSand() {
    return sand != null;
  }

  /** The chance that was asked of the rep, in whole reps in a hundred. */
  public int askedInHundred() {
    return InHundred.asked(settings.chance());
  }

  /** How sure the end is, in sentences. */
  public String sure(LengthUnit unit) {
    return AdviceWords.few(reps)
        + "Nine landings in ten between " + unit.write(landing.p05()) + " and " + unit.write(landing.p95()) + " from the first mark.";
  }

  /** What it rests on, in a sentence. */
  public String from() {
    return reps == 0
        ? "No rep of this kind is measured yet: flights as from their last flight off a short run, running steps as in their run-up; a first guess."
        : "From " + Notes.counted(reps, "measured rep") + " of take-offs in a row, whatever the run-up and rhythm.";
  }

  /** Where no mark reaches what was asked, what to do, in sentences; empty else. */
  public String instead(LengthUnit unit) {
    if (sand == null || sand.window() != null) {
      return "";
    }
    String no = AdviceWarnings.noMark(settings) + " ";
    String measure = "Measure take-off marks and landings of a few reps, on the flat or from here.";
    return fewer == null
        ? no + measure
        : no + "With " + fewer.jumps() + " take-offs marks work from " + unit.write(fewer.window().min_m()) + " to " + unit.write(fewer.window().max_m()) + ". " + measure;
  }

  /** The run-up in words: {@code from 4 steps}. */
  public String fromSteps() {
    return Athlete.fromSteps(steps);
  }

  /** The chance from the best mark in words. */
  public String chanceSaid() {
    return InHundred.said(Objects.requireNonNull(sand).inHundred());
  }
}
