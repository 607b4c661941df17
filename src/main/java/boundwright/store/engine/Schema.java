package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import boundwright.store.backup.Private;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.function.IntConsumer;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteException;

/**
 * Brings a database file to the schema of this program before anybody reads it, and refuses a file that is not ours to
 * touch. A database that is up to date is only looked at: no migration tool is started and no lock is taken, so a second
 * program can read while a first one writes. An empty file gets the newest schema at once ({@link ReadySchema}).
 */
public final class Schema {
  /** The database's name in its data folder. */
  public static final String FILE_NAME = "boundwright.db";
  /** Number of the newest script in {@code db/migration}. */
  public static final int NEWEST = 28;

  private static final String LOCATION = "classpath:db/migration";
  /** Held while the scripts run, so that two programs started at once do not both run them. */
  private static final String LOCK_NAME = "boundwright.lock";

  private Schema() {}

  /**
   * Makes or updates the schema.
   *
   * @param looking opens connections that only look
   * @param source opens connections that may write
   * @param before told the number of the schema that comes, before a database that holds something is changed
   */
  static void bringUpToDate(Path file, SQLiteDataSource looking, SQLiteDataSource source, IntConsumer before) {
    StoreTrouble trouble = new StoreTrouble(file);
    try {
      if (version(file, looking) < NEWEST) {
        migrate(file, looking, source, before);
      }
    } catch (SQLiteException e) {
      throw trouble.said(e);
    } catch (FlywayException e) {
      throw trouble.said(e);
    } catch (SQLException | IOException e) {
      throw new RefusedException(
          "The database " + file + " could not be prepared: " + e.getMessage() + ". Check the folder, or give another with --data.", e);
    }
  }

  private static synchronized void migrate(Path file, SQLiteDataSource looking, SQLiteDataSource source, IntConsumer before)
      throws SQLException, IOException {
    Path lockFile = file.resolveSibling(LOCK_NAME);
    Private.file(lockFile);
    try (FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = channel.lock()) {
      int seen = lock.isValid() ? version(file, looking) : NEWEST;
      if (seen < NEWEST) {
        String ready = seen == 0 ? ReadySchema.script() : null;
        if (ready != null) {
          try (Connection c = source.getConnection()) {
            ReadySchema.into(c, ready);
          }
          return;
        }
        if (seen > 0) {
          before.accept(NEWEST);
        }
        flyway(source).migrate();
      }
    }
  }

  /** The migration tool on this database. */
  public static Flyway flyway(SQLiteDataSource source) {
    return configured(source).load();
  }

  private static FluentConfiguration configured(SQLiteDataSource source) {
    return Flyway.configure().dataSource(source).locations(LOCATION).failOnMissingLocations(true).loggers("slf4j");
  }

  /**
   * Makes a database without rows of its own as a program of before would have.
   *
   * @param folder where; no database is there
   * @param version number of the newest script that it has seen
   */
  public static void make(Path folder, int version) {
    if (version < 1 || version > NEWEST) {
      throw new RefusedException(
          "The file is of version " + version + ", and this program knows 1 to " + NEWEST + ". Nothing was taken. " + (version > NEWEST ? "Run the newer program." : "Give a file that boundwright export --everything wrote."));
    }
    makeFile(folder.resolve(FILE_NAME), version);
  }

  /** As {@link #make}, of any name; the file is empty or missing. */
  static void makeFile(Path file, int version) {
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
    try {
      configured(source).target(String.valueOf(version)).load().migrate();
    } catch (FlywayException e) {
      throw new StoreTrouble(file).said(e);
    }
  }

  /** Number of the newest script the database has seen, 0 if it is new. */
  private static int version(Path file, SQLiteDataSource looking) throws SQLException {
    try (Connection c = looking.getConnection();
        Statement s = c.createStatement()) {
      boolean ours = one(s, "SELECT count(*) FROM sqlite_schema WHERE name = 'flyway_schema_history'") > 0;
      if (!ours) {
        if (one(s, "SELECT count(*) FROM sqlite_schema") > 0) {
          throw new RefusedException(
              "The file " + file + " is a database of another program. Nothing in it was changed. Give another folder with --data.");
        }
        return 0;
      }
      int seen = one(s, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE success");
      if (seen > NEWEST) {
        throw new RefusedException(
            "The database " + file + " was written by a newer boundwright (its version " + seen + ", this program knows up to "
                + NEWEST + "). Nothing in it was changed. Run the newer program, or give another folder with --data.");
      }
      return seen;
    }
  }

  private static int one(Statement s, String sql) throws SQLException {
    try (ResultSet r = s.executeQuery(sql)) {
      return r.next() ? r.getInt(1) : 0;
    }
  }

  /** Makes the folder if it is missing, readable by its owner only where the system can say so: it holds names of minors. */
  static void makeFolder(Path dir) {
    if (Files.exists(dir) && !Files.isDirectory(dir)) {
      throw new RefusedException("The data folder " + dir + " is a file. Give the name of a folder with --data; it is made if it is missing.");
    }
    try {
      if (!Files.exists(dir)) {
        if (dir.getFileSystem().supportedFileAttributeViews().contains("posix")) {
          Files.createDirectories(
              dir,
              PosixFilePermissions.asFileAttribute(
                  PosixFilePermissions.fromString("rwx------")));
        } else {
          Files.createDirectories(dir);
        }
      }
    } catch (IOException | UnsupportedOperationException e) {
      throw new RefusedException(
          "The data folder " + dir + " cannot be made: " + e.getMessage() + ". Check that you may write there, or give another with --data.", e);
    }
    if (!Files.isWritable(dir)) {
      throw new RefusedException(
          "The data folder " + dir + " can only be read, not written. Nothing was kept. Allow writing to it, or give another with --data.");
    }
  }
}
