package boundwright.store.backup;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;

/** Files that only their owner can read: names, pain and films of minors. Where the system knows no such rights nothing is done. */
public final class Private {
  private static final Set<PosixFilePermission> FILE = PosixFilePermissions.fromString("rw-------");
  private static final Set<PosixFilePermission> FOLDER = PosixFilePermissions.fromString("rwx------");
  /** What of a data folder is the program's own; what else lies there is nobody's business here. */
  private static final List<String> OWN_FOLDERS = List.of("clips", "sessions", "backups", "keys");

  private Private() {}

  private static boolean known(Path path) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix");
  }

  /** Makes a folder, and those above it, that only its owner can open. */
  public static Path folder(Path folder) throws IOException {
    return known(folder) ? Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(FOLDER)) : Files.createDirectories(folder);
  }

  /** Makes a file that only its owner can read, if it is missing. */
  public static void file(Path file) throws IOException {
    if (!Files.exists(file)) {
      if (known(file)) {
        Files.createFile(file, PosixFilePermissions.asFileAttribute(FILE));
      } else {
        Files.createFile(file);
      }
    }
  }

  /** Takes everybody else's rights away from the program's own files in a data folder. */
  public static void tighten(Path dataFolder) throws IOException {
    if (!known(dataFolder)) {
      return;
    }
    try (var files = Files.newDirectoryStream(dataFolder, "boundwright.*")) {
      for (Path file : files) {
        own(file, FILE);
      }
    }
    for (String name : OWN_FOLDERS) {
      Path folder = dataFolder.resolve(name);
      // one that nobody else can open hides what is in it: thousands of pictures need not be asked at every start
      if (Files.isDirectory(folder) && !Files.getPosixFilePermissions(folder).equals(FOLDER)) {
        Files.walkFileTree(
            folder,
            new SimpleFileVisitor<>() {
              @Override
              public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes a) throws IOException {
                own(dir, FOLDER);
                return FileVisitResult.CONTINUE;
              }

              @Override
              public FileVisitResult visitFile(Path file, BasicFileAttributes a) throws IOException {
                own(file, FILE);
                return FileVisitResult.CONTINUE;
              }

              @Override
              public FileVisitResult visitFileFailed(Path file, IOException e) {
                return FileVisitResult.CONTINUE; // it went away meanwhile
              }
            });
      }
    }
  }

  private static void own(Path path, Set<PosixFilePermission> wished) throws IOException {
    if (Files.exists(path) && !Files.isSymbolicLink(path)
        && !Files.readAttributes(path, PosixFileAttributes.class).permissions().equals(wished)) {
      Files.setPosixFilePermissions(path, wished);
    }
  }
}
