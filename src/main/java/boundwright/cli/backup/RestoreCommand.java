package boundwright.cli.backup;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.Surroundings;
import boundwright.quantity.Notes;
import boundwright.store.Workbench;
import boundwright.store.backup.Restore;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Brings a backup back. */
@Command(
    name = "restore",
    description = {
      "Brings a backup back into the data folder; what is there now is kept aside. Close boundwright first.",
      "Whoever was erased stays erased. FILE: from the folder backups, or one that boundwright backup FILE wrote.%n"
    })
public final class RestoreCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();
  @Mixin private Passphrase passphrase = new Passphrase();

  @Parameters(paramLabel = "FILE", description = "The backup.")
  private String file = "";

  /** @param top the command above */
  public RestoreCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code restore --json} prints; described in {@code docs/formats-json.md}. */
  record Answer(String data, long athletes, long reps, int erasedAgain, boolean films, String before) {}

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    Path folder = data.folderAlone(s);
    Restore.Result r = Workbench.restoring(folder, s.clock()).from(s.path(file), () -> passphrase.read(s, false));
    Answer a = new Answer(folder.toString(), r.counts().of("athlete"), r.counts().of("rep"), r.erasedAgain(), r.films(), r.aside().toString());
    if (top.json()) {
      Json.print(s.out(), a);
      return 0;
    }
    s.out().println(
        "Brought back into " + folder + ": " + Notes.counted(a.athletes(), "athlete") + ", " + Notes.counted(a.reps(), "rep")
            + (a.films() ? ", with the films." : ". Films that were here stayed."));
    if (a.erasedAgain() > 0) {
      s.out().println(Notes.counted(a.erasedAgain(), "athlete") + " of the backup had been erased and " + (a.erasedAgain() == 1 ? "was" : "were") + " erased again.");
    }
    s.out().println("What was here before is in " + a.before() + ". Delete it when you no longer need it.");
    return 0;
  }
}
