package boundwright.store;

import boundwright.quantity.RefusedException;
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
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * One open database file. All reading and writing of the store goes through {@link #read} and {@link #write}, which turn
 * the engine's failures into sentences. A write is all or nothing; a write inside a write of the same thread joins it, and if the
 * inner one fails only the inner one is undone. Writers of this process wait in line for each other; another process is waited for
 * as long as the busy timeout. Writes that wait in line share one transaction and so one wait for the disk ({@link Group}); each
 * is on disk when it returns.
 */
final class Database implements AutoCloseable {
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
  private final int patience_ms;
  private final ReentrantLock writers = new ReentrantLock(true);
  private final LogKeeper log;
  private final @Nullable InUse use;
  private final @Nullable Answered answered;
  private final AtomicLong told = new AtomicLong();
  /** The transaction that the next in line may join; touched by the head of the line only. */
  private @Nullable Group open;
  @SuppressWarnings("ThreadLocalUsage") // one per database: a thread may write to two of them
  private final ThreadLocal<@Nullable Transaction> writing = new ThreadLocal<>();

  /** The open write of a thread. */
  private static final class Transaction {
    private final Handle handle;
    private int depth;
    private @Nullable RuntimeException lost;

    Transaction(Handle handle) {
      this.handle = handle;
    }
  }

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
    this.patience_ms = patience_ms;
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

  /** Reads; inside a write of this thread it sees what was written so far. */
  <T> T read(Function<Handle, T> work) {
    Transaction joined = writing.get();
    try {
      if (joined != null) {
        return work.apply(joined.handle);
      }
      try (Handle handle = jdbi.open()) {
        return work.apply(handle);
      }
    } catch (RuntimeException e) {
      throw trouble.said(e);
    }
  }

  /** Writes, all or nothing, on disk when it returns; joins the write of this thread if there is one. */
  <T> T write(Function<Handle, T> work) {
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
    return told.get();
  }

  /** As {@link #write}, for what takes long (an import, say): nobody else's answer waits for it in the same transaction. */
  <T> T writeLong(Function<Handle, T> work) {
    return write(work, false, true);
  }

  private <T> T write(Function<Handle, T> work, boolean shared, boolean counted) {
    Transaction joined = writing.get();
    try {
      return joined == null ? inLine(work, shared, counted) : inside(joined, work);
    } catch (RuntimeException e) {
      throw trouble.said(e);
    }
  }

  /**
   * Folds the log beside the database into it and cuts it to nothing, so that what was deleted is gone from there too. Inside a
   * write nothing happens: the log is folded in later then.
   */
  void foldLog() {
    if (writing.get() == null) {
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
    Transaction joined = writing.get();
    if (joined != null) {
      return LentConnection.of(joined.handle.getConnection(), () -> {});
    }
    waitInLine();
    try {
      settleOpen();
      Connection own = pool.getConnection();
      return LentConnection.of(
          own,
          () -> {
            try {
              own.close();
            } finally {
              told.incrementAndGet();
              writers.unlock();
            }
          });
    } catch (SQLException | RuntimeException | Error e) {
      writers.unlock();
      throw e;
    }
  }

  /**
   * A transaction that writes share: begun by one at the head of the line, joined by those who wait behind, committed by the last. Each
   * has a savepoint of its own, so that one that is refused is undone alone; if the commit fails all of them have failed, and none
   * was answered before.
   */
  private static final class Group {
    private static final int MOST = 16;
    private static final long LONGEST_NS = 20_000_000;

    private final Transaction transaction;
    private final long begun_ns = System.nanoTime();
    private final CountDownLatch settled = new CountDownLatch(1);
    private int writes;
    private boolean counted;
    private volatile @Nullable Throwable failed;

    Group(Transaction transaction) {
      this.transaction = transaction;
    }

    boolean mayGrow() {
      return transaction.lost == null && writes < MOST && System.nanoTime() - begun_ns < LONGEST_NS;
    }
  }

  private <T> T inLine(Function<Handle, T> work, boolean shared, boolean counted) {
    waitInLine();
    Group group;
    T answer;
    try {
      if (!shared) {
        settleOpen();
      }
      group = open;
      if (group == null) {
        group = new Group(new Transaction(begun()));
        open = group;
      }
      group.counted |= counted;
      try {
        answer = joined(group, work);
      } finally {
        if (!shared || !group.mayGrow() || !writers.hasQueuedThreads()) {
          settle(group);
        }
      }
    } finally {
      writers.unlock();
    }
    waitUntilSettled(group);
    return answer;
  }

  private Handle begun() {
    Handle handle = jdbi.open();
    try {
      handle.begin();
      return handle;
    } catch (RuntimeException | Error e) {
      undo(handle, e);
      try {
        handle.close();
      } catch (RuntimeException again) {
        e.addSuppressed(again);
      }
      throw e;
    }
  }

  private <T> T joined(Group group, Function<Handle, T> work) {
    writing.set(group.transaction);
    try {
      group.writes++;
      return inside(group.transaction, work);
    } finally {
      writing.remove();
    }
  }

  private void settleOpen() {
    Group group = open;
    if (group != null) {
      settle(group);
    }
  }

  /** Commits, or undoes what cannot be committed, and tells everybody who waits. Called at the head of the line. */
  private void settle(Group group) {
    open = null;
    try (Handle handle = group.transaction.handle) {
      RuntimeException lost = group.transaction.lost;
      if (lost != null) {
        group.failed = lost;
        undo(handle, lost);
        return;
      }
      try {
        long count = counted(handle);
        handle.commit();
        says(count);
        log.committed(group.writes);
      } catch (RuntimeException | Error e) {
        group.failed = e;
        undo(handle, e);
      }
    } catch (RuntimeException | Error e) {
      // what was committed before stays committed; what was not has its own reason already
      Throwable before = group.failed;
      if (before != null) {
        before.addSuppressed(e);
      }
    } finally {
      if (group.counted) {
        told.incrementAndGet();
      }
      group.settled.countDown();
    }
  }

  /** One transaction more, told in the transaction itself. */
  private long counted(Handle handle) {
    return answered == null ? 0 : handle.createQuery("UPDATE written SET count = count + 1 RETURNING count").mapTo(Long.class).one();
  }

  private void says(long count) {
    Answered counter = answered;
    if (counter != null) {
      try {
        counter.says(count);
      } catch (IOException tooFew) {
        // what was committed is kept all the same; the file may say too few, and the next commit writes it again
      }
    }
  }

  private void waitUntilSettled(Group group) {
    boolean interrupted = false;
    while (true) {
      try {
        if (group.settled.await(Group.LONGEST_NS, TimeUnit.NANOSECONDS)) {
          break;
        }
      } catch (InterruptedException e) {
        interrupted = true;
      }
      // The one who stood behind may have gone away: then the transaction is settled by whoever still waits for it.
      if (writers.tryLock()) {
        try {
          if (open == group) {
            settle(group);
          }
        } finally {
          writers.unlock();
        }
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    Throwable failed = group.failed;
    if (failed instanceof Error error) {
      throw error;
    }
    if (failed != null) {
      throw (RuntimeException) failed;
    }
  }

  private static <T> T inside(Transaction outer, Function<Handle, T> work) {
    String savepoint = "inner" + ++outer.depth;
    outer.handle.savepoint(savepoint);
    try {
      T answer = work.apply(outer.handle);
      if (outer.lost != null) {
        throw outer.lost;
      }
      outer.handle.releaseSavepoint(savepoint);
      return answer;
    } catch (RuntimeException | Error e) {
      if (e == outer.lost) {
        throw e;
      }
      try {
        outer.handle.rollbackToSavepoint(savepoint);
      } catch (JdbiException again) {
        // A full disk can end the whole transaction and the savepoint with it: the outer write must not go on as if nothing were.
        e.addSuppressed(again);
        outer.lost = e instanceof RuntimeException r ? r : again;
      }
      throw e;
    } finally {
      outer.depth--;
    }
  }

  private static void undo(Handle handle, Throwable why) {
    try {
      if (handle.isInTransaction()) {
        handle.rollback();
      }
    } catch (JdbiException again) {
      why.addSuppressed(again);
    }
  }

  private void waitInLine() {
    try {
      if (!writers.tryLock(patience_ms, TimeUnit.MILLISECONDS)) {
        throw new RefusedException(
            "A long write (an import, say) is still going on after " + patience_ms / 1000
                + " s. Nothing of this entry was kept. Wait until it is done and try again.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new RefusedException("The program is being closed. Nothing of this entry was kept.", e);
    }
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
