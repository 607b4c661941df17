package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import javax.sql.DataSource;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;

/**
 * The line in which the writers of this process wait for each other. Writes that wait share one transaction and so one wait for the disk
 * ({@link Group}); a write inside a write of the same thread joins it, and if the inner one fails only the inner one is undone. Failures
 * are the engine's own; {@link Database} says them in words.
 */
final class WriteLine {
  private final Jdbi jdbi;
  private final Engine engine;
  private final int patience_ms;
  private final ReentrantLock writers = new ReentrantLock(true);
  /** The transaction that the next in line may join; touched by the head of the line only. */
  private @Nullable Group open;
  @SuppressWarnings("ThreadLocalUsage") // one per database: a thread may write to two of them
  private final ThreadLocal<@Nullable Transaction> writing = new ThreadLocal<>();

  /**
   * @param engine told of every commit
   * @param patience_ms how long a writer waits in line [ms]
   */
  WriteLine(Jdbi jdbi, Engine engine, int patience_ms) {
    this.jdbi = jdbi;
    this.engine = engine;
    this.patience_ms = patience_ms;
  }

  /** The open write of a thread. */
  private static final class Transaction {
    private final Handle handle;
    private final long count;
    private int depth;
    private @Nullable RuntimeException lost;

    /** @param count how many transactions the store has kept when this one is */
    Transaction(Handle handle, long count) {
      this.handle = handle;
      this.count = count;
    }
  }

  /** The open write of this thread, or null. */
  @Nullable Handle ofThisThread() {
    Transaction joined = writing.get();
    return joined == null ? null : joined.handle;
  }

  /**
   * A connection for a library that writes by itself: it holds the place at the head of the line until it is closed, by the
   * thread that asked for it. Inside a write of this thread it is the write's own, and closing it does nothing.
   */
  Connection connection(DataSource pool) throws SQLException {
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
    private volatile @Nullable Throwable failed;

    Group(Transaction transaction) {
      this.transaction = transaction;
    }

    boolean mayGrow() {
      return transaction.lost == null && writes < MOST && System.nanoTime() - begun_ns < LONGEST_NS;
    }
  }

  /**
   * Writes; joins the write of this thread if there is one.
   *
   * @param shared whether others may wait for the same commit
   */
  <T> T write(Function<Handle, T> work, boolean shared) {
    Transaction joined = writing.get();
    return joined == null ? inLine(work, shared) : inside(joined, work);
  }

  private <T> T inLine(Function<Handle, T> work, boolean shared) {
    waitInLine();
    Group group;
    T answer;
    try {
      if (!shared) {
        settleOpen();
      }
      group = open;
      if (group == null) {
        group = new Group(begun());
        open = group;
      }
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

  /**
   * Begins a transaction with its count, and so with the row of that count: whoever comes after, from this process or another, waits for it
   * to be kept or undone and then reads what was kept. In SQLite the file is locked from the beginning anyway.
   */
  private Transaction begun() {
    Handle handle = jdbi.open();
    try {
      handle.begin();
      return new Transaction(handle, handle.createQuery("UPDATE written SET count = count + 1 RETURNING count").mapTo(Long.class).one());
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
        handle.commit();
        engine.kept(group.transaction.count, group.writes);
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
      group.settled.countDown();
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
}
