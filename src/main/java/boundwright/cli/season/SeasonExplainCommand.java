package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.why.DayReasons;
import boundwright.season.why.Unmet;
import boundwright.season.why.Why;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Says why. */
@Command(
    name = "explain",
    description = {
      "Says which rule stands against each wish and what giving way would cost; of one day, what shaped it.",
      "Example: boundwright season explain season.json plan.json --athlete \"Mabel Cordgrass\" --date 2027-03-02%n"
    })
final class SeasonExplainCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private SeasonFiles files = new SeasonFiles();

  @Parameters(index = "0", paramLabel = "FILE", description = "The season.")
  private String file = "";

  @Parameters(index = "1", paramLabel = "PLAN", description = "Its plan.")
  private String plan = "";

  @Option(names = "--athlete", paramLabel = "NAME", description = "Only of this athlete.")
  private @Nullable String athlete;

  @Option(names = "--date", paramLabel = "DATE", description = "Why this day of the athlete is as it is.")
  private @Nullable String date;

  SeasonExplainCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (date != null && athlete == null) {
      throw new RefusedException("A day is somebody's: add --athlete NAME to --date " + date + ".");
    }
    return files.with(
        top, file,
        asked -> {
          SeasonInput season = asked.season();
          SeasonPlan of = SeasonFiles.plan(s, plan);
          List<List<Climb>> climbs = Happened.climbs(of, season);
          Why why = new Why(season, new SeasonPlanner(season, climbs, null, of, Done.nothing(season), 1).published());
          Member m = athlete == null ? null : SeasonMendCommand.member(season, athlete);
          if (date != null && m != null) {
            day(s, why.day(m.id(), asked.day(date, s)));
          } else {
            unmet(s, why.unmet().stream().filter(u -> m == null || u.athlete().equals(m.name())).toList());
          }
          return 0;
        });
  }

  private void day(Surroundings s, DayReasons d) {
    if (top.json()) {
      Json.print(s.out(), new PlanAnswer.Day(d.athlete(), d.date().toString(), Told.session(d.session()), d.shaped()));
      return;
    }
    s.out().println(d.date() + "  " + d.athlete() + ": " + Told.day(d.session()));
    d.shaped().forEach(x -> s.out().println("  " + x));
  }

  private void unmet(Surroundings s, List<Unmet> all) {
    if (top.json()) {
      Json.print(s.out(), new PlanAnswer.Unmet(all.stream().map(SeasonExplainCommand::wish).toList()));
      return;
    }
    s.out().println(all.isEmpty() ? "Every wish is met." : all.size() == 1 ? "1 wish is not met:" : all.size() + " wishes are not met:");
    for (Unmet u : all) {
      s.out().println(u.from() + "  " + u.athlete() + ": " + u.wish() + ". " + u.stands() + (u.nearest() == null ? "." : " (on " + u.nearest() + ": " + u.cost().said() + ")."));
    }
  }

  private static PlanAnswer.Wish wish(Unmet u) {
    LocalDate nearest = u.nearest();
    return new PlanAnswer.Wish(
        u.athlete(), u.from().toString(), u.wish(), u.stands(), nearest == null ? null : nearest.toString(), Told.session(u.instead()), u.cost().said());
  }
}
