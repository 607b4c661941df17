package boundwright.store;

import boundwright.store.backup.Answered;
import boundwright.store.backup.Backups;
import boundwright.store.backup.InUse;
import boundwright.store.backup.Leftovers;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * One open database file. All reading and writing of the store goes through {@link #read} and {@link #write}, which turn
 * the engine's failures into sentences. A write is all or nothing; a write inside a write of the same thread joins it, and if the
 * inner one fails only the inner one is undone. Writers of this process wait in line for each other ({@link WriteLine}); another process is
 * waited for as long as the busy timeout. Each write is on disk when it returns.
 */
final class Database implements Transactions, AutoCloseable {
  /** How long another process is waited for [ms]. */
  static final int BUSY_TIMEOUT_MS = 5_000;

  private static final int READERS = 4;

  /**
   * What tests turn to reach an error sooner.
   *
   * @param busyTimeout_ms how long another process is waited for [ms]
   * @param mostPages size at which the disk counts as full [pages], 0 for the engine's own limit
   */
  record Tuning(int busyTimeout_ms, int mostPages) {
    static final Tuning USUAL = new Tuning(BUSY_TIMEOUT_MS, 0);
  }

  private final Path file;
  private final StoreTrouble trouble;
  private final HikariDataSource pool;
  private final Jdbi jdbi;
  private final LogKeeper log;
  private final WriteLine line;
  private final @Nullable InUse use;
  private final @Nullable Answered answered;

  /**
   * A database whose tables are there.
   *
   * @param file what sentences call it
   * @param patience_ms how long a writer of this process waits in line [ms]
   */
  Database(Path file, HikariDataSource pool, int patience_ms) {
    this(file, pool, patience_ms, null, null);
  }

  private Database(Path file, HikariDataSource pool, int patience_ms, @Nullable InUse use, @Nullable Answered answered) {
    this.use = use;
    this.answered = answered;
    this.file = file;
    this.trouble = new StoreTrouble(file);
    this.pool = pool;
    this.jdbi = Jdbi.create(pool);
    this.log = new LogKeeper(() -> read(h -> h.createQuery("PRAGMA wal_checkpoint(PASSIVE)").mapTo(Integer.class).first()));
    this.line = new WriteLine(jdbi, log, answered, patience_ms);
  }

  /**
   * Opens the database in {@code dir}, which is made if it is missing, and brings its schema up to date; before that a backup is made, what a
   * kill left over is put in order, and a loss is noticed.
   */
  static Database open(Path dir, Tuning tuning, Clock clock) {
    Schema.makeFolder(dir);
    Leftovers.settle(dir);
    InUse use = InUse.shared(dir);
    try {
      Path file = dir.resolve(Schema.FILE_NAME);
      Answered.compare(file);
      Leftovers.keepPrivate(file);
      SQLiteDataSource source = source(file, tuning);
      Schema.bringUpToDate(file, looking(file, tuning), source, next -> new Backups(dir, clock).beforeMigration(file, next));
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
      return new Database(file, new HikariDataSource(pooled), tuning.busyTimeout_ms() * 6, use, Answered.of(file));
    } catch (RuntimeException | Error e) {
      use.close();
      throw e;
    }
  }

  /** Connections that may write. */
  static SQLiteDataSource source(Path file, Tuning tuning) {
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
  private static SQLiteDataSource looking(Path file, Tuning tuning) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(tuning.busyTimeout_ms());
    return source(file, config);
  }

  private static SQLiteDataSource source(Path file, SQLiteConfig config) {
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file.toAbsolutePath());
    return source;
  }

  /** The database file. */
  Path file() {
    return file;
  }

  /**
   * Changes whenever anything is written, by this process or another; reading it costs two looks at the folder. Two different stamps do
   * not say that something readers see has changed.
   */
  String stamp() {
    return stamp(file) + " " + stamp(file.resolveSibling(file.getFileName() + "-wal"));
  }

  private static String stamp(Path path) {
    try {
      return Files.size(path) + "@" + Files.getLastModifiedTime(path).to(TimeUnit.NANOSECONDS);
    } catch (IOException e) {
      return "-";
    }
  }

  @Override
  public <T> T read(Function<Handle, T> work) {
    Handle joined = line.ofThisThread();
    try {
      if (joined != null) {
        return work.apply(joined);
      }
      try (Handle handle = jdbi.open()) {
        return work.apply(handle);
      }
    } catch (RuntimeException e) {
      throw trouble.said(e);
    }
  }

  @Override
  public <T> T write(Function<Handle, T> work) {
    return write(work, true, true);
  }

  /** As {@link #write}, for what the caller tells those who must know of by itself: {@link #told} does not count it. */
  <T> T writeUntold(Function<Handle, T> work) {
    return write(work, true, false);
  }

  /**
   * How many transactions of this process may have changed what a reader sees, but for {@link #writeUntold}. What is read after this
   * number was asked is of this number or newer.
   */
  long told() {
    return line.told();
  }

  /** As {@link #write}, for what takes long (an import, say): nobody else's answer waits for it in the same transaction. */
  <T> T writeLong(Function<Handle, T> work) {
    return write(work, false, true);
  }

  private <T> T write(Function<Handle, T> work, boolean shared, boolean counted) {
    try {
      return line.write(work, shared, counted);
    } catch (RuntimeException e) {
      throw trouble.said(e);
    }
  }

  /**
   * Folds the log beside the database into it and cuts it to nothing, so that what was deleted is gone from there too. Inside a
   * write nothing happens: the log is folded in later then.
   */
  void foldLog() {
    if (line.ofThisThread() == null) {
      read(h -> h.createQuery("PRAGMA wal_checkpoint(TRUNCATE)").mapTo(Integer.class).first());
    }
  }

  /** Copies the database as it stands now into {@code copy}, an empty or missing file; writers are not held up. */
  void copyInto(Path copy) {
    try (Handle handle = jdbi.open()) {
      handle.execute("VACUUM INTO ?", copy.toString());
    } catch (RuntimeException e) {
      throw trouble.saidOfCopy(e, copy);
    }
  }

  /**
   * A connection for a library that writes by itself: it holds the place at the head of the line until it is closed, by the
   * thread that asked for it. Inside a write of this thread it is the write's own, and closing it does nothing.
   */
  Connection connectionInLine() throws SQLException {
    return line.connection(pool);
  }

  @Override
  public void close() {
    log.close();
    pool.close();
    Answered counter = answered;
    if (counter != null) {
      counter.close();
    }
    InUse held = use;
    if (held != null) {
      held.close();
    }
  }
}
