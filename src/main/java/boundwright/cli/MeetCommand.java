package boundwright.cli;

import boundwright.meet.MeetSheet;
import boundwright.store.Workbench;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Meets: without a command of its own it lists them. */
@Command(
    name = "meet",
    description = {
      "Meets: attempts as they happen, ranks, and what the next attempt is for. Alone, or with --list, lists the meets.",
      "Rivals go by a label such as a bib number. Examples:",
      "  boundwright meet new --name \"Club evening\" --for \"women, international\"",
      "  boundwright meet new --name \"Club heptathlon\" --combined heptathlon",
      "  boundwright meet enter --athlete NAME",
      "  boundwright meet attempt --who NAME --distance 12.31 --wind 0.8 --gap 0.11",
      "  boundwright meet aim --athlete NAME%n"
    })
final class MeetCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--list", description = "List the meets, newest first.")
  private boolean list;

  private MeetCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** The command with its own commands. */
  static CommandLine with(BoundwrightCommand top) {
    return new CommandLine(new MeetCommand(top))
        .addSubcommand(new MeetNewCommand(top))
        .addSubcommand(new MeetEnterCommand(top))
        .addSubcommand(new MeetAttemptCommand(top))
        .addSubcommand(new MeetUndoCommand(top))
        .addSubcommand(new MeetRanksCommand(top))
        .addSubcommand(new MeetAimCommand(top))
        .addSubcommand(new MeetDayCommand(top));
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      List<MeetSheet> all = bench.meets().all();
      list(s, all);
      if (!top.json() && !list) {
        s.out().println("Commands: new, enter, attempt, undo, ranks, aim, day; each has --help.");
      }
      return 0;
    }
  }

  private void list(Surroundings s, List<MeetSheet> all) {
    if (top.json()) {
      Json.print(s.out(), all.stream().map(MeetJson.Head::of).toList());
      return;
    }
    if (all.isEmpty()) {
      s.out().println("There is no meet here yet. Begin one: boundwright meet new --name NAME.");
    }
    for (MeetSheet m : all) {
      s.out()
          .println(
              String.format(
                  Locale.ROOT, "%4d  %s  %s, %s, %s: %d on the list, %d attempts", m.id(), m.date(), m.name(), m.event().label(), m.competition(), m.entrants().size(), m.attempts().size()));
    }
  }
}
