package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.store.Judgement;
import boundwright.store.Workbench;
import boundwright.track.Logged;
import boundwright.track.Tap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Keeps a rep, or takes the last one back, and says where the next mark is. */
@Command(
    name = "log",
    description = {
      "Keeps one rep and says where the next mark is; or takes the rep that was logged last back.",
      "Example: boundwright log --athlete NAME --sequence \"RRL x2\" --steps 4 --outcome in --mark 12.40%n"
    })
final class LogCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "Whose rep; any case.")
  private String athlete = "";

  @Option(names = "--sequence", paramLabel = "FEET", description = "The contacts in order: R, L, xN repeats.")
  private @Nullable String sequence;

  @Option(names = "--steps", paramLabel = "N", description = "Approach steps, 0 to 26. Default: the athlete's own.")
  private @Nullable Integer steps;

  @Option(
      names = "--surface",
      paramLabel = "WHAT",
      description = "grass, sprung floor, raised runway or track. Default: the runway of the settings.")
  private @Nullable String surface;

  @Option(names = "--outcome", paramLabel = "TAP", description = "short of the sand, in the sand, late (a contact in the sand), or abandoned.")
  private @Nullable String outcome;

  @Option(
      names = "--after",
      paramLabel = "N",
      description = "The contact after which an abandoned rep broke off. Default: not known; all its contacts count as load.")
  private @Nullable Integer after;

  @Option(names = "--mark", paramLabel = "LENGTH", description = "Take-off mark to the near edge of the sand.")
  private @Nullable String mark;

  @Option(names = "--landing", paramLabel = "LENGTH", description = "Take-off mark to the landing.")
  private @Nullable String landing;

  @Option(
      names = "--footprints",
      paramLabel = "LENGTHS",
      description = "Take-off mark to contacts 2, 3, ... separated by ; (empty where not seen): \"2.10;;6.40\".")
  private @Nullable String footprints;

  @Option(
      names = "--faults",
      paramLabel = "FAULTS",
      description = "What was wrong, \"toe-up@3;upright\", or clean. Default: nobody looked.")
  private @Nullable String faults;

  @Option(names = "--date", paramLabel = "DAY", description = "Day of the rep, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Mixin private UnitOption unit = new UnitOption();

  @Option(names = "--sure", description = "Take a mark far from the advised one without asking.")
  private boolean sure;

  @Option(names = "--undo-last", description = "Take back the rep of this athlete that was logged last.")
  private boolean undoLast;

  LogCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      CoachSettings settings = Choices.settings(bench.settings().settings(), unit, null, surface);
      Athlete who = DataOptions.athlete(bench, athlete);
      Logged logged =
          undoLast ? undo(bench, who, settings) : bench.track().log(who, new Tap(null, rep(s, who, settings), sure), settings);
      Rep rep = logged.rep();
      // On disk from here on: whatever happens to the next mark, the coach must read that the rep is kept.
      if (!top.json()) {
        print(s, who, rep, settings.unit());
      }
      DayVerdict day = bench.loadDesk().day(who);
      MarkAdvice next = day.held() ? null : logged.next();
      String noNext = day.held() ? "no bounding. " + day.reason() : logged.noNext();
      LogNext toLog =
          next == null
              ? null
              : bench.advisor().whatToLog(who, rep.sequence(), rep.approachSteps(), settings.facility().surface(), settings);
      List<String> wayBack = bench.backDesk().today(who);
      if (top.json()) {
        RepAnswer said = RepAnswer.of(who.name(), rep);
        Json.print(
            s.out(),
            new Answer(
                undoLast ? null : said,
                undoLast ? said : null,
                next == null ? null : MarksAnswer.of(who, next, false, toLog, next.warnings(), day, wayBack, settings.unit()),
                noNext));
      } else if (next == null) {
        s.out().println("No next mark: " + noNext);
      } else {
        new MarksText(s.out(), settings.unit()).print(who, next, false, toLog, next.warnings(), day, wayBack);
      }
      return 0;
    }
  }

  /** What {@code log --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(
      @Nullable RepAnswer kept, @Nullable RepAnswer takenBack, @Nullable MarksAnswer next, @Nullable String noNextBecause) {}

  /** Logged last means the largest number in the store, whatever its date. */
  private Logged undo(Workbench bench, Athlete who, CoachSettings settings) {
    if (sequence != null || outcome != null || after != null || mark != null || landing != null || footprints != null || faults != null) {
      throw new RefusedException("--undo-last takes a rep back and keeps none. Run log again without it to keep a rep.");
    }
    Rep last =
        bench.reps().inOrder(who.id()).stream()
            .max(Comparator.comparingLong(Rep::id))
            .orElseThrow(() -> new RefusedException(who.name() + " has no rep to take back."));
    return bench.track().undo(who, last.id(), settings);
  }

  private Rep rep(Surroundings s, Athlete who, CoachSettings settings) {
    if (sequence == null) {
      throw new RefusedException("The rep has no sequence. Say what was done, for example --sequence \"RRL x2\".");
    }
    LengthUnit in = settings.unit();
    Sequence feet = Sequence.parse(sequence);
    Judgement judgement = Judgement.read(faults == null ? "" : faults).within(feet);
    Outcome tap = outcome == null ? null : Choices.outcome(outcome);
    return new Rep(
        0,
        who.id(),
        Choices.day(date, s),
        feet,
        steps == null ? who.rung() : steps,
        settings.facility().surface(),
        footprints == null ? List.of() : prints(in, footprints),
        landing == null ? null : (Double) in.read("landing", landing),
        tap,
        after,
        mark == null ? null : (Double) in.read("take-off mark", mark),
        judgement.judged(),
        judgement.faults());
  }

  private static List<Double> prints(LengthUnit in, String written) {
    if (written.isBlank()) {
      return List.of();
    }
    List<Double> out = new ArrayList<>();
    for (String one : written.split(";", -1)) {
      out.add(one.isBlank() ? Double.NaN : in.read("footprint of contact " + (out.size() + 2), one));
    }
    return out;
  }

  private void print(Surroundings s, Athlete who, Rep rep, LengthUnit in) {
    MarksText text = new MarksText(s.out(), in);
    text.line(
        undoLast ? "Taken back" : "Kept",
        who.name() + ", " + rep.date() + ": " + rep.sequence().text() + " from "
            + (rep.approachSteps() == 0 ? "standing" : rep.approachSteps() + " steps") + " on " + rep.surface().label()
            + (rep.outcome() == null ? "" : ", " + rep.outcome().label())
            + (rep.brokeOffAfter() == null ? "" : " after contact " + rep.brokeOffAfter())
            + (rep.abandoned() ? " (" + rep.contactsDone().size() + " contacts count as load)" : "")
            + (rep.markToSand_m() == null ? "" : ", mark " + in.write(rep.markToSand_m()))
            + (rep.landing_m() == null ? "" : ", landing " + in.write(rep.landing_m()))
            + (rep.footprints_m().isEmpty() ? "" : ", footprints " + String.join("; ", rep.footprints_m().stream()
                .map(f -> f.isNaN() ? "-" : in.write(f)).toList()))
            + (rep.judged() ? ", " + (rep.faults().isEmpty() ? "clean" : String.join(", ", rep.faults())) : "") + ".");
    s.out().println();
    s.out().flush();
  }
}
