package boundwright.store.engine;

import boundwright.store.backup.Answered;
import boundwright.store.backup.Backups;
import boundwright.store.backup.Catalogue;
import boundwright.store.backup.Copy;
import boundwright.store.backup.Everything;
import boundwright.store.backup.Leftovers;
import boundwright.store.backup.SqliteCatalogue;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import javax.sql.DataSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** A store in one SQLite file. */
final class SqliteEngine implements Engine {
  private static final int READERS = 4;

  private final Path file;
  private final StoreTrouble trouble;
  private final HikariDataSource pool;
  private final LogKeeper log;
  private final Answered answered;

  private SqliteEngine(Path file, HikariDataSource pool) {
    this.file = file;
    this.trouble = new StoreTrouble(file);
    this.pool = pool;
    this.log = new LogKeeper(() -> fold("PASSIVE"));
    this.answered = Answered.of(file);
  }

  /** Opens the file in a folder and brings its schema up to date; before that a backup is made, and a loss is noticed. */
  static SqliteEngine open(Path dir, Database.Tuning tuning, Clock clock) {
    Path file = dir.resolve(Schema.FILE_NAME);
    SqliteLibrary.ready();
    Answered.compare(file);
    Leftovers.keepPrivate(file);
    SQLiteDataSource source = source(file, tuning);
    Schema.bringUpToDate(file, looking(file, tuning), source, next -> new Backups(dir, clock).beforeMigration(Copy.from(file), next));
    HikariConfig pooled = new HikariConfig();
    pooled.setPoolName("boundwright");
    pooled.setDataSource(source);
    pooled.setMaximumPoolSize(READERS + 1);
    pooled.setMinimumIdle(1);
    pooled.setMaxLifetime(0);
    pooled.setConnectionInitSql("PRAGMA wal_autocheckpoint = " + LogKeeper.LAST_RESORT_PAGES);
    pooled.setConnectionTimeout(Math.max(1_000, tuning.busyTimeout_ms() * 2L));
    // The file was opened a moment ago by the schema; what fails from here on is said by read and write.
    pooled.setInitializationFailTimeout(-1);
    return new SqliteEngine(file, new HikariDataSource(pooled));
  }

  /** Connections that may write. */
  static SQLiteDataSource source(Path file, Database.Tuning tuning) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(tuning.busyTimeout_ms());
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    // FULL, not NORMAL: in WAL mode only FULL brings every commit to the disk before it is answered.
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.enforceForeignKeys(true);
    // An erased person is overwritten, not only unlinked.
    config.setPragma(SQLiteConfig.Pragma.SECURE_DELETE, "true");
    if (tuning.mostPages() > 0) {
      config.setMaxPageCount(tuning.mostPages());
    }
    return source(file, config);
  }

  /** Connections that change nothing of a file that may not be ours, not even its journal mode. */
  private static SQLiteDataSource looking(Path file, Database.Tuning tuning) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(tuning.busyTimeout_ms());
    return source(file, config);
  }

  private static SQLiteDataSource source(Path file, SQLiteConfig config) {
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
    return source;
  }

  @Override
  public DataSource source() {
    return pool;
  }

  @Override
  public Catalogue catalogue() {
    return new SqliteCatalogue();
  }

  @Override
  public void kept(long count, int writes) {
    try {
      answered.says(count);
    } catch (IOException tooFew) {
      // what was committed is kept all the same; the file may say too few, and the next commit writes it again
    }
    log.committed(writes);
  }

  /** Folds the log beside the database into it and cuts it to nothing, so that what was deleted is gone from there too. */
  @Override
  public void foldLog() {
    fold("TRUNCATE");
  }

  private void fold(String how) {
    try (Connection c = pool.getConnection();
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("PRAGMA wal_checkpoint(" + how + ")")) {
      r.next();
    } catch (SQLException e) {
      throw said(new IllegalStateException(e));
    }
  }

  @Override
  public void copyInto(Path copy) {
    try (Connection c = pool.getConnection();
        PreparedStatement s = c.prepareStatement("VACUUM INTO ?")) {
      s.setString(1, copy.toString());
      s.execute();
    } catch (SQLException e) {
      throw trouble.saidOfCopy(new IllegalStateException(e), copy);
    }
  }

  @Override
  public int tell(Everything.Which which, Everything.Listener to) {
    return Everything.tell(file, which, to);
  }

  @Override
  public RuntimeException said(RuntimeException e) {
    return trouble.said(e);
  }

  @Override
  public void close() {
    log.close();
    pool.close();
    answered.close();
  }
}
