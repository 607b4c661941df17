package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.footfall.LongDrill;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.store.Workbench;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where the tapes go for one athlete, one sequence and one rung. */
@Command(
    name = "marks",
    description = {
      "Where the tapes go: take-off mark to sand, start mark to take-off mark, and why.",
      "Example: boundwright marks --athlete NAME --sequence \"RRL RRL\" --steps 4%n"
    })
final class MarksCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "Whose marks; any case.")
  private String athlete = "";

  @Option(
      names = "--sequence",
      paramLabel = "FEET",
      description = "The contacts in order: R, L, xN repeats. \"RRL x3\".")
  private @Nullable String sequence;

  @Option(
      names = "--drill",
      paramLabel = "DRILL",
      description = "Instead of --sequence a long-jump drill off the athlete's foot: pop-up, last-two (second last step and jump), run-run-jump.")
  private @Nullable String drill;

  @Option(names = "--steps", paramLabel = "N", description = "Approach steps, 0 to 26. Default: the athlete's own.")
  private @Nullable Integer steps;

  @Option(
      names = "--surface",
      paramLabel = "WHAT",
      description = "grass, sprung floor, raised runway or track. Default: the runway of the settings.")
  private @Nullable String surface;

  @Option(names = "--chance", paramLabel = "P", description = "Chance that the rep counts, asked of a mark, 0.5 to 0.99. Default: the settings (0.9).")
  private @Nullable Double chance;

  @Option(names = "--flat", description = "No sand: the length of level ground that the rep needs.")
  private boolean flat;

  @Mixin private UnitOption unit = new UnitOption();

  MarksCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    LongDrill asked = drill == null ? null : Choices.choice("drill", drill, List.of(LongDrill.values()), LongDrill::name);
    if ((asked == null) == (sequence == null)) {
      throw new RefusedException("Say what is done: --sequence FEET, as \"RRL x3\", or --drill pop-up, last-two or run-run-jump.");
    }
    Sequence written = sequence == null ? null : Sequence.parse(sequence);
    int from = steps == null ? asked == null ? 0 : asked.steps() : Athlete.checkSteps(steps);
    try (Workbench bench = data.open(s)) {
      CoachSettings settings = Choices.settings(bench.settings().settings(), unit, chance, surface);
      Athlete who = DataOptions.athlete(bench, athlete);
      Sequence feet = written != null ? written : Objects.requireNonNull(asked).sequence(who.takeOffFoot());
      DayVerdict day = bench.loadDesk().day(who);
      if (day.held()) {
        // no tape and no dose while bounding is stopped, only the reason
        if (top.json()) {
          Json.print(s.out(), new MarksAnswer.Stopped(who.name(), true, day.reason()));
        } else {
          s.out().println(who.name() + ": no bounding. " + day.reason());
        }
        return 0;
      }
      MarkAdvice advice = bench.advisor().advise(who, feet, steps == null && asked == null ? who.rung() : from, settings);
      List<String> warnings =
          flat ? MarkAdvisor.flatWarnings(advice, settings.facility().surface(), settings) : advice.warnings();
      LogNext next =
          flat
              ? null
              : bench.advisor().whatToLog(who, feet, advice.forecast().approachSteps(), settings.facility().surface(), settings);
      List<String> wayBack = bench.backDesk().today(who);
      if (top.json()) {
        Json.print(s.out(), MarksAnswer.of(who, advice, flat, next, warnings, day, wayBack, settings.unit()));
      } else {
        new MarksText(s.out(), settings.unit()).print(who, advice, flat, next, warnings, day, wayBack);
      }
      return 0;
    }
  }
}
