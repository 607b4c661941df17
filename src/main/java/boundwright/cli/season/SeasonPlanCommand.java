package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.SeasonPlanner;
import boundwright.season.solve.SeasonSolver;
import boundwright.season.year.Level;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans a season. */
@Command(
    name = "plan",
    description = {
      "Plans a season from its file: what everybody does on each day, nothing that the limits of load refuse.",
      "Example: boundwright season plan season.json --seconds 20 --out plan.json%n"
    })
final class SeasonPlanCommand implements Callable<Integer> {
  private static final int MOST_SECONDS = 3600;

  private final BoundwrightCommand top;

  @Mixin private SeasonFiles files = new SeasonFiles();

  @Parameters(paramLabel = "FILE", description = "The season, see boundwright season example.")
  private String file = "";

  @Option(names = "--published", paramLabel = "PLAN", description = "A plan that holds now and should change little.")
  private @Nullable String published;

  @Option(names = "--seconds", paramLabel = "N", description = "How long to search, 0 to 3600. Default: 20. Ctrl-C ends it with nothing written.")
  private int seconds = 20;

  @Option(names = "--seed", paramLabel = "N", description = "Another number searches otherwise. Default: 1.")
  private long seed = 1;

  @Mixin private PlanOut out = new PlanOut();

  SeasonPlanCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (seconds < 0 || seconds > MOST_SECONDS) {
      throw new RefusedException("A search of " + seconds + " s is out of range: 0 to " + MOST_SECONDS + ". 20 is usual.");
    }
    out.check(s);
    return files.with(
        top, file,
        asked -> {
          long start = System.nanoTime();
          SeasonPlan before = published == null ? null : SeasonFiles.plan(s, published);
          SeasonPlanner planner = asked.work().planner(asked.season(), before, asked.done().today(), seed);
          Progress progress = new Progress(s, !top.json(), start);
          SeasonPlanner.Planned planned = planner.plan(Duration.ofSeconds(seconds), progress);
          PlanAnswer.Planned answer = PlanAnswer.of(planner, planned, progress.first_s);
          Path to = answer.refused().isEmpty() ? out.write(s, planned.plan()) : null;
          if (top.json()) {
            Json.print(s.out(), answer);
          } else {
            print(s, answer, to);
          }
          return answer.refused().isEmpty() ? 0 : 2;
        });
  }

  /** Says when the first plan stands, and now and then how it gets better. */
  private static final class Progress implements SeasonSolver.Listener {
    private static final double EVERY_S = 5;

    private final Surroundings s;
    private final boolean says;
    private final long start;
    private double first_s = -1;
    private double said_s;

    Progress(Surroundings s, boolean says, long start) {
      this.s = s;
      this.says = says;
      this.start = start;
    }

    @Override
    public void better(long[] total) {
      double now = (System.nanoTime() - start) / 1e9;
      boolean first = first_s < 0;
      if (first) {
        first_s = now;
      }
      if (says && (first || now - said_s > EVERY_S)) {
        said_s = now;
        s.err().printf(
            Locale.ROOT, "%5.1f s  wishes not met %d, off the load wanted %,d, cautions %,d%n", now, Level.WISHES.of(total), Level.OFF.of(total),
            Level.CAUTIONS.of(total));
        s.err().flush();
      }
    }
  }

  private static void print(Surroundings s, PlanAnswer.Planned a, @Nullable Path to) {
    s.out().printf(Locale.ROOT, "%s: %d athletes, %,d days with work, %,d standing-bound contacts wanted.%n", a.season(), a.athletes(), a.days(), a.wanted_standingBounds());
    a.score().stream().skip(1).forEach(x -> s.out().println("  " + PlanAnswer.said(x)));
    if (a.refused().isEmpty()) {
      s.out().println(to == null ? "No day is refused. Nothing was written: name a file with --out." : "No day is refused. Written to " + to.getFileName() + ".");
    } else {
      a.refused().forEach(r -> s.out().println("  " + r.athlete() + ", " + r.date() + ": " + r.said()));
      s.out().println("Nothing was written, because these days are refused.");
    }
  }
}
