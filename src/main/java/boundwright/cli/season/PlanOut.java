package boundwright.cli.season;

import boundwright.cli.OutFile;
import boundwright.cli.Surroundings;
import boundwright.season.SeasonPlan;
import boundwright.store.season.PlanFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where a plan is written. */
final class PlanOut {
  @Option(names = "--out", paramLabel = "PLAN", description = "Where the plan is written.")
  private @Nullable String out;

  @Option(names = "--force", description = "Replaces the file if it is there.")
  private boolean force;

  /** Refuses before any work is done. */
  void check(Surroundings s) {
    Path to = file(s);
    if (to != null) {
      OutFile.check(to, force);
    }
  }

  /** Writes the plan if a file was named; says the file's name, or null if none was. */
  @Nullable Path write(Surroundings s, SeasonPlan plan) {
    Path to = file(s);
    if (to != null) {
      OutFile.write(to, PlanFile.write(plan).getBytes(StandardCharsets.UTF_8), force);
    }
    return to;
  }

  private @Nullable Path file(Surroundings s) {
    String named = out;
    return named == null ? null : s.path(named);
  }
}
