package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.load.DayVerdict;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.SandMarks;
import boundwright.store.Workbench;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpRep;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the tapes go when take-offs are repeated down the runway with running steps between them, and the reps of it. */
@Command(
    name = "take-offs",
    description = {
      "Run, run, jump over and over down the runway: where each take-off falls, where the rep ends, how sure that is.",
      "Each take-off lands on the free leg; running steps are no bounds and no load. Only what was made is kept.",
      "Examples: boundwright take-offs --athlete NAME --jumps 4 --steps 4",
      "          boundwright take-offs --athlete NAME --jumps 4 --steps 4 --keep --at \"5.40;10.95;16.60\" --landing 20.70%n"
    })
final class TakeOffsCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--jumps", paramLabel = "N", description = "Take-offs in the rep, 2 to 12. Default: 4.")
  private int jumps = RunJumps.USUAL_JUMPS;

  @Option(
      names = "--running",
      paramLabel = "N",
      description = "Running steps from a landing to the next take-off, 1 to 8. Default: 2, a take-off every third contact off the feet in turn; an odd number keeps the foot.")
  private int running = RunJumps.USUAL_RUNNING;

  @Option(names = "--foot", paramLabel = "FOOT", description = "First take-off: right or left. Default: the athlete's own.")
  private @Nullable String foot;

  @Option(names = "--steps", paramLabel = "N", description = "Approach steps, 0 to 26. Default: the athlete's own.")
  private @Nullable Integer steps;

  @Option(names = "--flat", description = "No sand: the last one lands on the free leg.")
  private boolean flat;

  @Option(names = "--surface", paramLabel = "WHAT", description = "grass, sprung floor, raised runway or track. Default: the runway of the settings.")
  private @Nullable String surface;

  @Option(names = "--chance", paramLabel = "P", description = "Chance that the rep counts, asked of a mark, 0.5 to 0.99. Default: the settings (0.9).")
  private @Nullable Double chance;

  @Option(names = "--keep", description = "Keep a rep: what was made, with --at and --landing where it was measured.")
  private boolean keep;

  @Option(names = "--at", paramLabel = "LENGTHS", description = "First mark to take-offs 2, 3, ... separated by ; (empty where not seen): \"5.40;;16.60\".")
  private @Nullable String at;

  @Option(names = "--landing", paramLabel = "LENGTH", description = "First mark to the last landing.")
  private @Nullable String landing;

  @Option(names = "--date", paramLabel = "DAY", description = "Day of the rep, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the rep.")
  private String note = "";

  @Option(names = "--undo-last", description = "Take back the rep of this kind that was kept last.")
  private boolean undoLast;

  @Mixin private UnitOption unit = new UnitOption();

  TakeOffsCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (undoLast && keep) {
      throw new RefusedException("--undo-last takes a rep back and keeps none. Run take-offs again without it to keep a rep.");
    }
    if (!keep && (at != null || landing != null || date != null || !note.isEmpty())) {
      throw new RefusedException("--at, --landing, --date and --note belong to a rep: add --keep to keep it.");
    }
    try (Workbench bench = data.open(s)) {
      CoachSettings settings = Choices.settings(bench.settings().settings(), unit, chance, surface);
      Athlete who = whose.in(bench);
      if (undoLast) {
        entry(s, who, undo(bench, who), settings.unit());
        return 0;
      }
      Foot first = foot == null ? who.takeOffFoot() : Choices.choice("foot", foot, List.of(Foot.values()), Foot::label);
      RunJumps pattern = new RunJumps(first, running, jumps);
      int from = steps == null ? who.rung() : Athlete.checkSteps(steps);
      if (keep) {
        entry(s, who, bench.runJumps().add(rep(s, who, pattern, from, settings)), settings.unit());
      } else {
        marks(s, bench, who, pattern, from, settings);
      }
      return 0;
    }
  }

  private RunJumpRep rep(Surroundings s, Athlete who, RunJumps pattern, int from, CoachSettings settings) {
    LengthUnit in = settings.unit();
    return new RunJumpRep(
        0, who.id(), Choices.day(date, s), pattern, from, settings.facility().surface(), !flat,
        at == null ? List.of() : RunJumpRep.read(in, List.of(at.split(";", -1))), Choices.length(in, "landing", landing), note);
  }

  private static RunJumpRep undo(Workbench bench, Athlete who) {
    RunJumpRep last =
        bench.runJumps().runJumps(who.id()).stream()
            .max(Comparator.comparingLong(RunJumpRep::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no rep of take-offs in a row to take back."));
    return bench.runJumps().removeRunJump(who.id(), last.id()).orElse(last);
  }

  private void entry(Surroundings s, Athlete who, RunJumpRep rep, LengthUnit in) {
    if (top.json()) {
      Json.print(s.out(), TakeOffsAnswers.Entry.of(who, rep, undoLast));
    } else {
      new MarksText(s.out(), in).wrapped(undoLast ? "Taken back" : "Kept", who.name() + ", " + rep.date() + ", " + rep.said(in) + ".");
    }
  }

  private void marks(Surroundings s, Workbench bench, Athlete who, RunJumps pattern, int from, CoachSettings settings) {
    DayVerdict day = bench.loadDesk().day(who);
    if (day.held()) {
      // no tape and no dose while jumping is stopped, only the reason
      if (top.json()) {
        Json.print(s.out(), new MarksAnswer.Stopped(who.name(), true, day.reason()));
      } else {
        s.out().println(who.name() + ": no take-offs. " + day.reason());
      }
      return;
    }
    RunJumpMarks m = bench.runJumpDesk().marks(who, pattern, from, !flat, settings);
    List<String> wayBack = bench.backDesk().today(who);
    if (top.json()) {
      Json.print(s.out(), TakeOffsAnswers.Answer.of(who, m, day, wayBack, settings.unit()));
    } else {
      print(s, who, m, day, wayBack, settings.unit());
    }
  }

  private static void print(Surroundings s, Athlete who, RunJumpMarks m, DayVerdict day, List<String> wayBack, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    SandMarks sand = m.sand();
    if (sand == null) {
      text.ground(m.needed_m());
    } else {
      text.line("MARK", in.write(sand.best_m()) + " from the sand" + (sand.window() == null ? " (the best there is)" : ""));
      text.works(sand.window(), m.askedInHundred());
      text.chance(sand.inHundred(), m.needed_m());
    }
    text.start(m.steps(), m.runUp().length());
    s.out().println();
    text.wrapped("Feet", m.pattern().said());
    s.out().println(who.name() + ", " + m.pattern().title() + ".");
    s.out().println("From the first mark, nine reps in ten between the next two" + (sand == null ? ":" : "; last, the tape back from the sand:"));
    for (RunJumpMarks.TakeOffMark t : m.takeOffs()) {
      Double tape = t.toSand_m();
      row(s, String.valueOf(t.jump()), t.foot().label(), t.fromMark_m(), tape == null ? "" : in.write(tape), in);
    }
    row(s, "", "landing", m.landing(), "", in);
    s.out().println();
    if (!m.instead(in).isEmpty()) {
      text.wrapped("Or else", m.instead(in));
    }
    text.wrapped("How sure", m.sure(in));
    text.wrapped("From", m.from());
    m.warnings().forEach(w -> text.wrapped("Take care", w));
    text.load(day, wayBack);
  }

  private static void row(Surroundings s, String jump, String what, Estimate e, String tape, LengthUnit in) {
    s.out().println(String.format(Locale.ROOT, "  %2s  %-8s%14s   %12s  %12s  %14s", jump, what, in.write(e.p50()), in.write(e.p05()), in.write(e.p95()), tape).stripTrailing());
  }
}
