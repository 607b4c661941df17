package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Folds the engine's log into the database now and then, beside the writers: left to itself the engine does it inside the commit of
 * whoever happens to fill the log, who then waits some ten times as long. Nothing that was committed depends on it.
 */
final class LogKeeper implements AutoCloseable {
  /** From so many pages on the engine folds the log inside a commit after all. */
  static final int LAST_RESORT_PAGES = 10_000;
  /** So many writes fill the log by about 3 MB (a tap keeps some 60 kB of what was learned). */
  private static final int EVERY_WRITES = 50;

  private final Runnable fold;
  private final AtomicInteger since = new AtomicInteger();
  private final ExecutorService hand =
      Executors.newSingleThreadExecutor(
          r -> {
            Thread t = new Thread(r, "boundwright-log");
            t.setDaemon(true);
            return t;
          });

  /** @param fold folds what can be folded without holding anybody up */
  LogKeeper(Runnable fold) {
    this.fold = fold;
  }

  /** So many writes were committed. */
  void committed(int writes) {
    if (since.addAndGet(writes) >= EVERY_WRITES) {
      since.set(0);
      try {
        hand.execute(this::foldNow);
      } catch (RejectedExecutionException closing) {
        // the engine folds the log itself when the last connection is closed
      }
    }
  }

  private void foldNow() {
    try {
      fold.run();
    } catch (RefusedException later) {
      // another program reads or writes: the next time will do, or the engine's own last resort
    }
  }

  @Override
  public void close() {
    hand.shutdownNow();
  }
}
