package boundwright.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What is asked of one session. */
@Command(
    name = "session",
    description = {"One session: who runs when.", "Example: boundwright session order%n"})
final class SessionCommand implements Runnable {
  private final BoundwrightCommand top;

  @Spec private @Nullable CommandSpec spec;

  private SessionCommand(BoundwrightCommand top) {
    this.top = top;
  }

  static CommandLine with(BoundwrightCommand top) {
    return new CommandLine(new SessionCommand(top)).addSubcommand(new SessionOrderCommand(top));
  }

  @Override
  public void run() {
    CommandSpec shown = spec;
    if (shown != null) {
      shown.commandLine().usage(top.surroundings().out());
    }
  }
}
