package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * Makes a copy of a database that is whole or not there: made under a passing name that only its owner can read, checked from its first
 * page to its last, counted, brought to the disk, and only then given its name. A file that is there already is never replaced.
 */
public final class Copy {
  private Copy() {}

  /** Copies a database, as it stands at one moment, into an empty file. */
  @FunctionalInterface
  public interface Maker {
    /**
     * Copies.
     *
     * @param part an empty file
     * @throws RefusedException if it cannot be done
     */
    void into(Path part);
  }

  /** Copies a file that is no database open in this program; others may be writing to it. */
  public static Maker from(Path database) {
    return part -> {
      try (Connection c = Counts.looking(database);
          PreparedStatement s = c.prepareStatement("VACUUM INTO ?")) {
        s.setString(1, part.toString());
        s.execute();
      } catch (SQLException e) {
        throw new RefusedException("No backup was made of " + database + " (" + e.getMessage() + "). It is as it was. Free some space, or look at the disk.", e);
      }
    };
  }

  /**
   * Makes a copy.
   *
   * @param file the file to make; its folder is there
   * @return what it holds
   * @throws RefusedException if it could not be made whole; the store and every older backup are as they were
   */
  public static Counts make(Path file, Maker maker) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new RefusedException("No backup was made: the folder " + folder + " is not there. Make it, or give another.");
    }
    refuseExisting(file);
    Path part = null;
    try {
      part = Files.createTempFile(folder, "boundwright", ".part");
      maker.into(part);
      Counts counts = check(part);
      force(part);
      refuseExisting(file);
      Files.move(part, file);
      return counts;
    } catch (FileAlreadyExistsException e) {
      throw existing(file, e);
    } catch (IOException e) {
      throw new RefusedException("No backup was made in " + folder + ": " + e.getMessage() + ". The store is as it was. Try another folder.", e);
    } finally {
      remove(part);
    }
  }

  /** Brings a file to the disk. */
  static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  /**
   * Looks through a copy and counts what it holds; refuses a file that is not a whole database.
   *
   * @return what it holds
   */
  public static Counts check(Path copy) {
    // Not a read-only connection: on one of those the engine's check passes over the schema's own rules.
    SQLiteDataSource source = new SQLiteDataSource(new SQLiteConfig());
    source.setUrl("jdbc:sqlite:" + copy.toAbsolutePath());
    String found;
    Counts counts = null;
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      found = first(s, "PRAGMA integrity_check");
      if ("ok".equals(found)) {
        found = first(s, "SELECT CASE count(*) WHEN 0 THEN 'no schema' ELSE 'ok' END FROM flyway_schema_history");
      }
      if ("ok".equals(found)) {
        counts = Counts.of(c);
      }
    } catch (SQLException e) {
      throw new RefusedException("No backup was made: the copy could not be read back (" + e.getMessage() + "). The store is as it was. Try another disk.", e);
    }
    if (counts == null) {
      throw new RefusedException(
          "No backup was made: the copy is not whole (" + found + "). The store is as it was. Try another disk, and export the reps to a file as well.");
    }
    return counts;
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
