package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.store.Workbench;
import picocli.CommandLine.Option;

/** Of whom: what the commands about one athlete share. */
public final class WhoseOption {
  @Option(names = "--athlete", required = true, paramLabel = "NAME", description = "Whose; any case.")
  private String athlete = "";

  /**
   * The athlete of this name.
   *
   * @throws boundwright.quantity.RefusedException if there is none; names that are near are listed
   */
  public Athlete in(Workbench bench) {
    return DataOptions.athlete(bench, athlete);
  }
}
