package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.OutFile;
import boundwright.cli.Surroundings;
import boundwright.demo.DemoSeason;
import boundwright.load.GuardSettings;
import boundwright.store.season.SeasonFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** An invented season to begin with. */
@Command(
    name = "example",
    description = {"Writes an invented season to begin with.", "Example: boundwright season example --out season.json%n"})
final class SeasonExampleCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Option(names = "--out", paramLabel = "FILE", description = "Where to. Default: printed.")
  private @Nullable String out;

  @Option(names = "--force", description = "Replaces the file if it is there.")
  private boolean force;

  SeasonExampleCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    String text = SeasonFile.write(DemoSeason.from(s.today(), GuardSettings.DEFAULT), GuardSettings.DEFAULT, DemoSeason.NOTE);
    String to = out;
    if (to == null) {
      s.out().println(text);
      return 0;
    }
    Path file = s.path(to);
    OutFile.write(file, text.getBytes(StandardCharsets.UTF_8), force);
    s.out().println("Written to " + file.getFileName() + ". Everybody in it is invented.");
    return 0;
  }
}
