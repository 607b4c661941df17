package boundwright.store;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteDataSource;

/**
 * Copies the whole store into one file while it is in use. The copy is made under a passing name, checked from its first page
 * to its last, brought to the disk, and only then given its name; a file that is there already is never replaced.
 */
public final class Backup {
  private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss");

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
    Path file =
        Files.isDirectory(asked) ? asked.resolve("boundwright-" + LocalDateTime.now(workbench.clock()).format(STAMP) + ".db") : asked;
    Path folder = file.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new RefusedException("No backup was made: the folder " + folder + " is not there. Make it, or give another.");
    }
    refuseExisting(file);
    Path part = null;
    try {
      part = Files.createTempFile(folder, "boundwright", ".part");
      workbench.database().copyInto(part);
      check(part);
      try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      refuseExisting(file);
      return Files.move(part, file);
    } catch (FileAlreadyExistsException e) {
      throw existing(file, e);
    } catch (IOException e) {
      throw new RefusedException("No backup was made in " + folder + ": " + e.getMessage() + ". The store is as it was. Try another folder.", e);
    } finally {
      remove(part);
    }
  }

  /** Refuses a file that is not a whole database. */
  static void check(Path copy) {
    // Not a read-only connection: on one of those the engine's check passes over the schema's own rules.
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + copy.toAbsolutePath());
    String found;
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      found = first(s, "PRAGMA integrity_check");
      if ("ok".equals(found)) {
        found = first(s, "SELECT CASE count(*) WHEN 0 THEN 'no schema' ELSE 'ok' END FROM flyway_schema_history");
      }
    } catch (SQLException e) {
      throw new RefusedException("No backup was made: the copy could not be read back (" + e.getMessage() + "). The store is as it was. Try another disk.", e);
    }
    if (!"ok".equals(found)) {
      throw new RefusedException(
          "No backup was made: the copy is not whole (" + found + "). The store is as it was. Try another disk, and export the reps to a file as well.");
    }
  }

  private static String first(Statement s, String sql) throws SQLException {
    try (ResultSet r = s.executeQuery(sql)) {
      return r.next() ? String.valueOf(r.getString(1)) : "nothing";
    }
  }

  private static void refuseExisting(Path file) {
    if (Files.exists(file)) {
      throw existing(file, null);
    }
  }

  private static RefusedException existing(Path file, @Nullable Exception e) {
    String said = "No backup was made: " + file + " is there already and is never replaced. Give another name, or a folder.";
    return e == null ? new RefusedException(said) : new RefusedException(said, e);
  }

  private static void remove(@Nullable Path part) {
    if (part != null) {
      try {
        Files.deleteIfExists(part);
      } catch (IOException e) {
        throw new RefusedException("The unfinished copy " + part + " could not be removed. It is no backup; delete it by hand.", e);
      }
    }
  }
}
