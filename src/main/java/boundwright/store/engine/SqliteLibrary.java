package boundwright.store.engine;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Keeps the database's native library beside the program. Without that the driver unpacks it into the temporary folder at each start and
 * compares it byte by byte, a twentieth of the start, and a kill leaves it there. Nothing needs it: where it cannot be kept, or cannot be loaded
 * from there, the driver does as always.
 */
public final class SqliteLibrary {
  /** The system property of the launchers that names the folder; without it nothing is kept. */
  public static final String PROPERTY = "boundwright.native";
  private static final String DRIVER = "org.sqlite.lib.path";

  private SqliteLibrary() {}

  /** Before the driver is first asked for a connection. */
  static void ready() {
    String folder = System.getProperty(PROPERTY, "");
    if (!folder.isEmpty() && System.getProperty(DRIVER) == null) {
      Path kept = kept(Path.of(folder));
      if (Files.isRegularFile(kept)) {
        System.setProperty(DRIVER, String.valueOf(kept.getParent()));
      }
    }
  }

  /** The library of this version of the driver, unpacked if it was not; there may be none at the answer. */
  static Path kept(Path folder) {
    String name = LibraryLoaderUtil.getNativeLibName();
    Path place = folder.resolve("sqlite-" + SQLiteJDBCLoader.getVersion());
    Path kept = place.resolve(name);
    if (Files.exists(kept)) {
      return kept;
    }
    try (InputStream in = SqliteLibrary.class.getResourceAsStream(LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name)) {
      if (in != null) {
        Files.createDirectories(place);
        // another start may do the same at this moment: whole or not at all
        Path whole = Files.createTempFile(place, name, ".part");
        try {
          Files.copy(in, whole, StandardCopyOption.REPLACE_EXISTING);
          Files.move(whole, kept, StandardCopyOption.ATOMIC_MOVE);
        } finally {
          Files.deleteIfExists(whole);
        }
      }
    } catch (IOException e) {
      return kept; // a folder that may not be written to
    }
    return kept;
  }
}
