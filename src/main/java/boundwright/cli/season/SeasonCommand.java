package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.season.SeasonRepository.Kept;
import boundwright.store.Workbench;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Seasons: without a command of its own it lists them. */
@Command(
    name = "season",
    description = {
      "Plans a season, mends the plan when life happens, says why and how sure, and writes calendars. Alone, lists the seasons.",
      "Examples:",
      "  boundwright season example > season.json",
      "  boundwright season plan season.json --out plan.json",
      "  boundwright season keep season.json --publish plan.json",
      "  boundwright season calendar --athlete NAME --out name.ics%n"
    })
public final class SeasonCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  private SeasonCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** The command with its own commands. */
  public static CommandLine with(BoundwrightCommand top) {
    return new CommandLine(new SeasonCommand(top))
        .addSubcommand(new SeasonExampleCommand(top)).addSubcommand(new SeasonPlanCommand(top)).addSubcommand(new SeasonMendCommand(top))
        .addSubcommand(new SeasonExplainCommand(top)).addSubcommand(new SeasonConflictsCommand(top)).addSubcommand(new SeasonCalendarCommand(top))
        .addSubcommand(new SeasonKeepCommand(top)).addSubcommand(new SeasonFileCommand(top))
        .addSubcommand(new SeasonSimulateCommand(top));
  }

  /**
   * A season in JSON.
   *
   * @param first first day, as 2026-09-28
   * @param last last day
   * @param published newest version, 0 for none
   */
  record Line(long id, String name, String first, String last, int published) {
    static Line of(Kept k) {
      return new Line(k.id(), k.name(), k.first().toString(), k.last().toString(), k.published());
    }
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      List<Kept> all = bench.seasons().all();
      if (top.json()) {
        Json.print(s.out(), all.stream().map(Line::of).toList());
        return 0;
      }
      if (all.isEmpty()) {
        s.out().println("There is no season here yet. Begin one on the page Season; or begin with boundwright season example, and keep your file with boundwright season keep.");
      }
      for (Kept k : all) {
        s.out()
            .println(
                String.format(
                    Locale.ROOT, "%4d  %s, %s to %s, %s", k.id(), k.name(), k.first(), k.last(), k.published() == 0 ? "not published" : "version " + k.published()));
      }
      return 0;
    }
  }
}
