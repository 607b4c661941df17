package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Choices;
import boundwright.cli.Surroundings;
import boundwright.demo.DemoSeason;
import boundwright.load.GuardSettings;
import boundwright.store.season.SeasonFile;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** An invented season as a file. */
@Command(
    name = "example",
    description = {"Prints the file of an invented season, to begin one's own with; docs/season-file.md says what stands in it.", "Example: boundwright season example > season.json%n"})
final class SeasonExampleCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Option(names = "--from", paramLabel = "DAY", description = "Begins on the first Monday from this day on. Default: today.")
  private @Nullable String from;

  SeasonExampleCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    s.out().print(SeasonFile.write(DemoSeason.from(Choices.anyDay(from, s), GuardSettings.DEFAULT), GuardSettings.DEFAULT, DemoSeason.NOTE));
    return 0;
  }
}
