package boundwright.cli.installed;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Json;
import boundwright.web.licences.Shipped;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** Prints what ships under which licence. */
@Command(name = "licences", description = {"Prints what ships with the program, under which licences, and how their terms are kept.", "Example: boundwright licences%n"})
public final class LicencesCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  public LicencesCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    if (top.json()) {
      Json.print(top.surroundings().out(), Shipped.libraries());
    } else {
      top.surroundings().out().print(Shipped.text());
    }
    return 0;
  }
}
