package boundwright.machine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.Set;

/** A file that holds a secret and is meant for its owner alone. */
public final class OwnersFile {
  private static final Set<PosixFilePermission> OWNERS = Set.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

  private OwnersFile() {}

  /** Whether anybody but its owner may read, write or run a file; false where the system knows no such rights. */
  public static boolean openToOthers(Path file) throws IOException {
    return Files.getFileStore(file).supportsFileAttributeView("posix") && !OWNERS.containsAll(Files.getPosixFilePermissions(file));
  }
}
