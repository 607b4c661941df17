package boundwright.cli.season;

import boundwright.cli.BoundwrightCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import org.jspecify.annotations.Nullable;

/** The season. */
@Command(name = "season", description = "Plans a season, mends the plan when life happens, and writes it for others.")
public final class SeasonCommand implements Runnable {
  private final BoundwrightCommand top;

  @Spec private @Nullable CommandSpec spec;

  private SeasonCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** The command with its own. */
  public static CommandLine with(BoundwrightCommand top) {
    return new CommandLine(new SeasonCommand(top))
        .addSubcommand(new SeasonExampleCommand(top))
        .addSubcommand(new SeasonPlanCommand(top))
        .addSubcommand(new SeasonMendCommand(top))
        .addSubcommand(new SeasonExplainCommand(top));
  }

  @Override
  public void run() {
    CommandSpec shown = spec;
    if (shown != null) {
      shown.commandLine().usage(top.surroundings().out());
    }
  }
}
