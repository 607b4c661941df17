package boundwright.cli.person;

import boundwright.athlete.Athlete;
import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.cli.WhoseOption;
import boundwright.footfall.Foot;
import boundwright.load.back.BackStep;
import boundwright.load.back.Stages;
import boundwright.quantity.RefusedException;
import boundwright.readiness.back.BackDesk;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Begins, shows, steps and ends the way back of a leg. */
@Command(
    name = "back",
    description = {
      "The way back of a leg after days off: stages of its former week, what each asks, a range of dates.",
      "What: show (default), begin, step, end. None begins while a medical hold stands, and nobody is allowed anything by it.",
      "Example: boundwright back begin --athlete NAME --leg left --from 2026-05-14%n"
    })
public final class BackCommand implements Callable<Integer> {
  private enum What {
    SHOW,
    BEGIN,
    STEP,
    END;

    private String label() {
      return switch (this) {
        case SHOW -> "show";
        case BEGIN -> "begin";
        case STEP -> "step";
        case END -> "end";
      };
    }
  }

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Parameters(arity = "0..1", paramLabel = "WHAT", description = "show, begin, step or end. Default: show.")
  private String what = "show";

  @Mixin private WhoseOption whose = new WhoseOption();

  @Option(names = "--leg", paramLabel = "LEG", description = "With begin: right or left.")
  private @Nullable String leg;

  @Option(names = "--from", paramLabel = "DAY", description = "With begin: first day, as 2026-05-14. Default: today.")
  private @Nullable String from;

  @Option(names = "--start", paramLabel = "PERCENT", description = "With begin: of the former week, 10 to 90. Default: 30.")
  private @Nullable Double start;

  @Option(names = "--growth", paramLabel = "PERCENT", description = "With begin: a week, 2 to 30. Default: 10.")
  private @Nullable Double growth;

  @Option(
      names = "--former",
      paramLabel = "N",
      description = "With begin: the leg's week before the days off, in standing-bound contacts. Default: from the log.")
  private @Nullable Double former;

  @Option(names = "--id", paramLabel = "N", description = "With step and end: the number of the way back.")
  private @Nullable Long id;

  @Option(names = "--to", paramLabel = "on|back", description = "With step: to the next stage, or the one before.")
  private @Nullable String to;

  @Option(names = "--by", paramLabel = "WHO", description = "Who steps or ends it; with begin who allowed it, where no medical hold was ended.")
  private @Nullable String by;

  @Option(names = "--note", paramLabel = "TEXT", description = "With step: why. No diagnosis.")
  private String note = "";

  @Option(names = "--why", paramLabel = "TEXT", description = "With end: why. No diagnosis.")
  private @Nullable String why;

  @Option(names = "--on", paramLabel = "DAY", description = "With end: first day on which it no longer holds. Default: today.")
  private @Nullable String on;

  /** Under this command. */
  public BackCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      Athlete who = whose.in(bench);
      switch (Choices.choice("word", what, List.of(What.values()), What::label)) {
        case SHOW -> only("show", leg, from, start, growth, former, id, to, by, why, on);
        case BEGIN -> begin(bench.backDesk(), who, s);
        case STEP -> step(bench.backDesk(), who);
        case END -> end(bench.backDesk(), who, s);
      }
      BackAnswer answer = BackAnswer.of(bench, who);
      if (top.json()) {
        Json.print(s.out(), answer);
      } else {
        answer.print(s.out());
      }
      return 0;
    }
  }

  private void begin(BackDesk desk, Athlete who, Surroundings s) {
    only("begin", id, to, why, on);
    if (leg == null) {
      throw new RefusedException("A way back is of one leg: --leg right or --leg left. Nothing was begun.");
    }
    Foot foot = Choices.choice("leg", leg, List.of(Foot.values()), Foot::label);
    LocalDate day = Choices.anyDay(from, s);
    if (day.isAfter(s.today())) {
      throw new RefusedException("The day " + day + " has not come yet; today is " + s.today() + ". Begin it on the day. Nothing was begun.");
    }
    Stages stages = new Stages(start == null ? Stages.USUAL.startShare() : start / 100, growth == null ? Stages.USUAL.growth() : growth / 100);
    desk.begin(who, new BackDesk.Beginning(foot, day, stages, former, by));
  }

  private void step(BackDesk desk, Athlete who) {
    only("step", leg, from, start, growth, former, why, on);
    if (id == null || to == null || by == null) {
      throw new RefusedException("A step needs the number, the way and who steps: --id 2 --to on --by NAME. Nothing was changed.");
    }
    desk.step(who, id, Choices.choice("way", to, List.of(BackStep.Kind.values()), BackStep.Kind::label), by, note);
  }

  private void end(BackDesk desk, Athlete who, Surroundings s) {
    only("end", leg, from, start, growth, former, to);
    if (id == null || by == null || why == null) {
      throw new RefusedException("An end needs the number, who ends it and why: --id 2 --by NAME --why TEXT. Nothing was changed.");
    }
    desk.end(who, id, Choices.day(on, s), by, why);
  }

  private static void only(String word, @Nullable Object... others) {
    for (Object o : others) {
      if (o != null) {
        throw new RefusedException("An option that was given does not go with " + word + ": see boundwright back --help. Nothing was changed.");
      }
    }
  }
}
