package boundwright.store;

import boundwright.quantity.RefusedException;
import boundwright.store.backup.Backups;
import boundwright.store.backup.Copy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;

/** Copies the database of an open store into one file while it is in use. */
public final class Backup {
  private final Workbench workbench;

  /** Backs up this store. */
  public Backup(Workbench workbench) {
    this.workbench = workbench;
  }

  /**
   * Makes a backup.
   *
   * @param target the file to make, or a folder in which a file named after the day and the time is made
   * @return the file that was made
   * @throws RefusedException if it could not be made whole; the store and every older backup are as they were
   */
  public Path backup(Path target) {
    Path asked = target.toAbsolutePath();
    Path file = Files.isDirectory(asked) ? asked.resolve(Backups.name(LocalDateTime.now(workbench.clock()), ".db")) : asked;
    Copy.make(file, workbench.database()::copyInto);
    return file;
  }
}
