package boundwright.cli;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.jspecify.annotations.Nullable;

/**
 * Writes a file whole or not at all: first beside its place, then moved there in one step, so that a full disk or a kill
 * leaves what was there before. A file that is there is replaced only when that was asked.
 */
public final class OutFile {
  private OutFile() {}

  /** Refuses before any work is done. */
  public static void check(Path file, boolean force) {
    if (Files.isDirectory(file)) {
      throw new RefusedException(file + " is a folder. Name a file in it with --out.");
    }
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new RefusedException("There is no folder " + folder + " to write " + file.getFileName() + " in. Make it first.");
    }
    if (!force && Files.exists(file)) {
      throw new RefusedException(file + " is there already and was left as it is. Choose another name, or add --force to replace it.");
    }
  }

  /** Writes the file. */
  public static void write(Path file, byte[] bytes, boolean force) {
    check(file, force);
    Path folder = file.toAbsolutePath().getParent();
    Path beside = null;
    try {
      beside = Files.createTempFile(folder, ".boundwright", ".part");
      Files.write(beside, bytes);
      try {
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException e) {
      discard(beside, e);
      throw new RefusedException(
          "The file " + file + " could not be written (" + e.getMessage() + "). Nothing was replaced. Check the disk and the folder.", e);
    }
  }

  private static void discard(@Nullable Path beside, IOException why) {
    if (beside != null) {
      try {
        Files.deleteIfExists(beside);
      } catch (IOException again) {
        why.addSuppressed(again);
      }
    }
  }
}
