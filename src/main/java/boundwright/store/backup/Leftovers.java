package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** What a program that was killed may have left in a data folder. */
public final class Leftovers {
  /** Where what browsers send waits until it is taken. */
  private static final String ARRIVING = "arriving";

  private static final List<String> FOLDERS = List.of(ARRIVING, "backups", "clips", "sessions", ".");

  private Leftovers() {}

  /** The folder of what arrives; made if it is missing. */
  public static Path arriving(Path folder) {
    try {
      return Private.folder(folder.resolve(ARRIVING)).toAbsolutePath();
    } catch (IOException e) {
      throw new RefusedException("The folder " + folder.resolve(ARRIVING) + " cannot be made: " + e.getMessage() + ". Allow writing to the data folder.", e);
    }
  }

  /** Finishes a restore that had come to its last step, and deletes what only was on its way. Where somebody else has the folder open nothing is done. */
  public static void settle(Path folder) {
    InUse alone;
    try {
      alone = InUse.alone(folder);
    } catch (RefusedException others) {
      return; // what lies there may be theirs
    }
    try (alone) {
      Restore.finish(folder);
      for (String name : FOLDERS) {
        Path place = folder.resolve(name);
        if (Files.isDirectory(place)) {
          sweep(place, name.equals(ARRIVING));
        }
      }
    } catch (IOException e) {
      throw new RefusedException("What was left over in " + folder + " could not be removed: " + e.getMessage() + ". Allow writing to the folder.", e);
    }
  }

  private static void sweep(Path place, boolean all) throws IOException {
    try (Stream<Path> files = Files.list(place)) {
      for (Path file : files.filter(f -> Files.isRegularFile(f) && (all || isPart(f))).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  private static boolean isPart(Path file) {
    return String.valueOf(file.getFileName()).matches("\\.?(boundwright|arriving|erasing|leaving).*\\.part");
  }

  /** Makes the database's file, and takes everybody else's rights away from the program's files beside it. */
  public static void keepPrivate(Path database) {
    Path folder = database.toAbsolutePath().getParent();
    try {
      Private.file(database);
      if (folder != null) {
        Private.tighten(folder);
      }
    } catch (IOException e) {
      // a folder of somebody else, who alone may say who reads it: what is wrong with it is said when it is read or written
    }
  }
}
