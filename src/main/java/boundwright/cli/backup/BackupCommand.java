package boundwright.cli.backup;

import boundwright.cli.BoundwrightCommand;
import boundwright.cli.DataOptions;
import boundwright.cli.Json;
import boundwright.cli.OutFile;
import boundwright.cli.Surroundings;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.backup.BackupDesk;
import boundwright.store.backup.Counts;
import boundwright.store.backup.Kept;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.SecureRandom;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a backup, in the data folder or out of it. */
@Command(
    name = "backup",
    description = {
      "Makes a backup while everything stays open. Alone: in the data folder, as is done by itself each day.",
      "With FILE: one that leaves the folder, sealed with a passphrase in the open format age-encryption.org/v1,",
      "with what was put right in clips and, if that is set, the films.%n"
    })
public final class BackupCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();
  @Mixin private Passphrase passphrase = new Passphrase();

  @Parameters(paramLabel = "FILE", arity = "0..1", description = "The file to write, or a folder in which it gets a name of its own. Never replaces one.")
  private @Nullable String file;

  @Option(names = "--films", negatable = true, description = "Take the films along, or not. Default: as set under Settings, Backup.")
  private @Nullable Boolean films;

  @Option(names = "--plain", description = "Do not seal it: whoever has the file reads names, pain and holds.")
  private boolean plain;

  /** @param top the command above */
  public BackupCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** What {@code backup --json} prints; described in {@code docs/formats-json.md}. */
  record Answer(String file, boolean sealed, long athletes, long reps, long files) {}

  @Override
  public Integer call() throws IOException {
    Surroundings s = top.surroundings();
    try (Workbench bench = data.open(s)) {
      BackupDesk desk = bench.backups();
      if (file == null) {
        Kept made = desk.now();
        tell(s, answer(made.file(), false, made.counts(), 1));
        return 0;
      }
      Path asked = s.path(file);
      Path to = Files.isDirectory(asked) ? asked.resolve(desk.name(!plain)) : asked;
      OutFile.check(to, false);
      boolean along = films == null ? desk.settings().films() : films;
      BackupDesk.Gone gone = plain ? write(to, out -> desk.packed(out, along)) : sealed(s, desk, to, along);
      tell(s, answer(to, !plain, gone.counts(), gone.files()));
      return 0;
    }
  }

  private static Answer answer(Path file, boolean sealed, Counts counts, int files) {
    return new Answer(file.toString(), sealed, counts.of("athlete"), counts.of("rep"), files);
  }

  private BackupDesk.Gone sealed(Surroundings s, BackupDesk desk, Path to, boolean along) {
    char[] secret = BackupDesk.checkedPassphrase(passphrase.read(s, true));
    return write(to, out -> desk.sealed(out, secret, along, new SecureRandom()));
  }

  private interface Writer {
    BackupDesk.Gone to(OutputStream out) throws IOException;
  }

  /** Written beside its place and moved there whole, so that a full disk leaves no half backup under a good name. */
  private static BackupDesk.Gone write(Path to, Writer writer) {
    Path part = to.resolveSibling(to.getFileName() + ".part");
    try {
      try {
        BackupDesk.Gone gone = writer.to(Files.newOutputStream(part));
        Files.move(part, to, StandardCopyOption.ATOMIC_MOVE);
        return gone;
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (IOException e) {
      throw new RefusedException("No backup was made: " + to + " could not be written (" + e.getMessage() + "). The data are as they were. Free some space, or take another disk.", e);
    }
  }

  private void tell(Surroundings s, Answer a) {
    if (top.json()) {
      Json.print(s.out(), a);
      return;
    }
    s.out().println(
        "Backup made and looked through: " + a.file() + " (" + Notes.counted(a.athletes(), "athlete") + ", " + Notes.counted(a.reps(), "rep")
            + (a.files() == 1 ? "" : ", " + a.files() + " files") + ").");
    if (a.sealed()) {
      s.out().println("Keep the passphrase where you find it in a year: without it nobody opens this file, not even this program.");
    }
  }
}
