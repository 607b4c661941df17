package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Surroundings;
import boundwright.quantity.RefusedException;
import boundwright.season.SeasonInput;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints the file of a season that is kept. */
@Command(
    name = "file",
    description = {"Prints the file of a season in the data folder, as it stands now.", "Example: boundwright season file > season.json%n"})
final class SeasonFileCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Parameters(arity = "0..1", paramLabel = "N", description = "Number of the season. Default: the latest.")
  private @Nullable Long season;

  SeasonFileCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      long id = SeasonFiles.kept(bench.seasons(), season).id();
      SeasonInput in = bench.seasons().input(id).orElseThrow(() -> new RefusedException("The season " + id + " is not there any more. boundwright season lists them."));
      s.out().print(SeasonFile.write(in, bench.care().guard(), ""));
      s.out().flush();
      return 0;
    }
  }
}
