package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import java.security.SecureRandom;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Keeps a season in the data folder, and publishes its plan. */
@Command(
    name = "keep",
    description = {
      "Keeps the file of a season in the data folder, as the page does; with --publish, its plan too, after the same check.",
      "Example: boundwright season keep season.json --publish plan.json%n"
    })
final class SeasonKeepCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Parameters(paramLabel = "FILE", description = "The season. Its athletes are found by their names.")
  private String file = "";

  @Option(names = "--publish", paramLabel = "PLAN", description = "A plan of it, as boundwright season plan wrote it.")
  private @Nullable String plan;

  SeasonKeepCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      SeasonInput season = SeasonFiles.season(s, bench, file);
      SeasonPlan of = plan == null ? null : byName(bench, SeasonFiles.plan(s, plan));
      SeasonDesk desk = new SeasonDesk(bench.seasons(), () -> SeasonFiles.work(bench), s.clock(), new SecureRandom());
      Kept kept =
          bench.together(
              () -> {
                long id = desk.keep(season);
                if (of != null) {
                  desk.publish(id, of);
                }
                return bench.seasons().byId(id).orElseThrow();
              });
      if (top.json()) {
        Json.print(s.out(), SeasonCommand.Line.of(kept));
      } else {
        s.out().println(kept.name() + " is kept." + (of == null ? "" : " Version " + kept.published() + " is published."));
      }
      return 0;
    }
  }

  /** The plan with the numbers of the data folder, whatever numbers it was made with. */
  private static SeasonPlan byName(Workbench bench, SeasonPlan plan) {
    List<SeasonPlan.Year> years =
        plan.years().stream()
            .map(y -> new SeasonPlan.Year(DataOptions.athlete(bench, y.athlete()).id(), y.athlete(), y.days(), y.climbs(), y.wanted()))
            .toList();
    return new SeasonPlan(plan.name(), plan.version(), years);
  }
}
