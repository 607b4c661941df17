package boundwright.cli;

import boundwright.approach.ApproachAnswer;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunThroughEntry;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.athlete.Athlete;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the full run-up starts and is checked, and what the run-throughs say of it. */
@Command(
    name = "approach",
    description = {
      "Where the full run-up starts, the coach's and the athlete's check marks, how widely the foot falls along the",
      "runway, and whether to move the start or train the rhythm. All marks are measured from the take-off line back.",
      "Examples: boundwright approach --athlete NAME --speed 8.8",
      "          boundwright approach --athlete NAME --keep --steps 14 --start 25.40 --gap 0.12 --wind 0.8%n"
    })
final class ApproachCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "Whose run-up; any case.")
  private String athlete = "";

  @Option(names = "--event", paramLabel = "EVENT", description = "triple-jump or long-jump. Default: triple-jump.")
  private @Nullable String event;

  @Option(names = "--steps", paramLabel = "N", description = "Steps, 1 to 26. Default: those of most run-throughs, of the newest jump, or the athlete's own.")
  private @Nullable Integer steps;

  @Option(names = "--speed", paramLabel = "M/S", description = "Speed wanted at the board [m/s], instead of steps: the fewest that reach it.")
  private @Nullable Double speed;

  @Option(names = "--aim", paramLabel = "LENGTH", description = "Board gap aimed at. Default: the athlete's own best aim, or 0.08 m.")
  private @Nullable String aim;

  @Option(names = "--keep", description = "Keep a run-through: --steps and --start, and --positions or --gap.")
  private boolean keep;

  @Option(names = "--start", paramLabel = "LENGTH", description = "Start mark to take-off line.")
  private @Nullable String start;

  @Option(
      names = "--positions",
      paramLabel = "LENGTHS",
      description = "Toe to take-off line of each step in order, separated by ; (empty where not seen), the last is the board gap.")
  private @Nullable String positions;

  @Option(names = "--gap", paramLabel = "LENGTH", description = "The board gap alone, + behind the line.")
  private @Nullable String gap;

  @Option(names = "--wind", paramLabel = "M/S", description = "Wind [m/s], tail wind +.")
  private @Nullable Double wind;

  @Option(names = "--tired", paramLabel = "N", description = "How tired, 0 fresh to 10.")
  private @Nullable Double tired;

  @Option(names = "--date", paramLabel = "DAY", description = "Day of the run-through, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the run-through.")
  private String note = "";

  @Option(names = "--undo-last", description = "Take back the run-through of this athlete that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  ApproachCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      LengthUnit in = unit.in(bench);
      Athlete who = DataOptions.athlete(bench, athlete);
      if (undoLast) {
        entry(s, who, undo(bench, who), in);
      } else if (keep) {
        entry(s, who, bench.runThroughs().add(new RunThroughEntry(0, who.id(), Choices.day(date, s), Choices.event(event), run(in), note)), in);
      } else if (start != null || positions != null || gap != null) {
        throw new RefusedException("--start, --positions and --gap belong to a run-through: add --keep to keep it.");
      } else {
        ApproachAnswer answer = bench.approachDesk().answer(who, Choices.event(event), steps, speed, Choices.length(in, "aim", aim));
        if (top.json()) {
          Json.print(s.out(), RunUpAnswer.of(who, Choices.event(event), answer));
        } else {
          print(s, answer, in);
        }
      }
      return 0;
    }
  }

  private RunThrough run(LengthUnit in) {
    if (steps == null || start == null) {
      throw new RefusedException("A run-through needs its steps and its start mark: --steps N --start LENGTH.");
    }
    double from = in.read("start mark", start);
    if (positions == null) {
      return RunThrough.toGap(steps, from, Choices.length(in, "board gap", gap), wind, tired);
    }
    if (gap != null) {
      throw new RefusedException("Give --positions or --gap, not both: the last position is the board gap.");
    }
    List<Double> at = new ArrayList<>();
    for (String one : positions.split(";", -1)) {
      at.add(one.isBlank() ? Double.NaN : in.read("position of step " + (at.size() + 1), one));
    }
    return new RunThrough(steps, from, at, wind, tired);
  }

  private static RunThroughEntry undo(Workbench bench, Athlete who) {
    RunThroughEntry last =
        bench.runThroughs().runThroughs(who.id()).stream()
            .max(Comparator.comparingLong(RunThroughEntry::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no run-through to take back."));
    return bench.runThroughs().removeRunThrough(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, RunThroughEntry entry, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), RunUpAnswer.Entry.of(who.name(), entry, undoLast));
      return;
    }
    RunThrough r = entry.run();
    new MarksText(s.out(), in)
        .wrapped(
            undoLast ? "Taken back" : "Kept",
            who.name() + ", " + entry.date() + ", " + entry.event().label() + ": " + r.steps() + " steps from " + in.write(r.startMark_m()) + ", " + seen(r, in) + ".");
  }

  private static String seen(RunThrough r, LengthUnit in) {
    List<Double> toBoard = r.toBoard_m();
    double gap = toBoard.get(toBoard.size() - 1);
    return toBoard.subList(0, toBoard.size() - 1).stream().allMatch(p -> p.isNaN()) && !Double.isNaN(gap)
        ? "gap " + in.write(gap)
        : "positions " + String.join("; ", toBoard.stream().map(p -> p.isNaN() ? "-" : in.write(p)).toList());
  }

  private static void print(Surroundings s, ApproachAnswer a, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    RunUpPlan p = a.plan();
    text.line("START", in.write(p.startMark_m().p50()) + " from the take-off line, " + p.steps() + (p.steps() == 1 ? " step" : " steps"));
    text.line("Check", in.write(p.checkMark_m().p50()) + ", " + p.checkSteps() + " steps out (where the coach stands)");
    text.line("Early mark", in.write(p.earlyMark_m().p50()) + ", step " + p.earlyStep() + " (for the athlete)");
    text.line("Second last", in.write(a.secondLast_m().p50()) + ", the contact before the take-off");
    text.line("Speed", metresPerSecond(p.speed()) + " at the board");
    text.line("Aim", in.write(p.aim_m()) + " behind the line");
    text.wrapped("Start mark", a.start().words(in));
    s.out().println();
    text.wrapped("From", a.from());
    text.wrapped("How sure", "Start mark nine times in ten between " + in.write(p.startMark_m().p05()) + " and " + in.write(p.startMark_m().p95()) + ".");
    text.wrapped("", a.startFrom());
    text.wrapped("Wind", a.shiftWords(in));
    RunwaySpread spread = a.spread();
    if (spread == null) {
      text.wrapped("Spread", "The data cannot tell. " + a.spreadMissing());
      return;
    }
    text.wrapped("Steering", spread.words());
    s.out().println();
    s.out().println("Spread from run to run by step, nine times in ten between the last two:");
    for (RunwaySpread.StepSpread e : spread.each()) {
      s.out()
          .println(
              String.format(
                  Locale.ROOT,
                  "  %-14s%16s   %16s  %16s",
                  e.stepsOut() == 0 ? "board" : e.stepsOut() + " out", in.write(e.sd_m().p50()), in.write(e.sd_m().p05()), in.write(e.sd_m().p95())));
    }
  }

  private static String metresPerSecond(Estimate e) {
    return String.format(Locale.ROOT, "%.1f m/s (%.1f to %.1f)", e.p50(), e.p05(), e.p95());
  }
}
