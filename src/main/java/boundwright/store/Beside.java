package boundwright.store;

import boundwright.quantity.RefusedException;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Does what nobody need wait for. Until {@link #apart} is called each piece is done at once by whoever hands it in, as in a command that ends
 * with its answer; after that one thread does them one by one. Nothing handed in is lost by a kill: it is found undone when somebody asks.
 */
final class Beside implements Executor, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Beside.class);
  private static final int IDLE_S = 10;
  /** How long the end of what is being done is waited for at the end [s]; it looks between athletes whether it shall stop. */
  private static final int PATIENCE_S = 10;

  private volatile @Nullable ThreadPoolExecutor thread;

  /** From now on a thread of its own does it. */
  synchronized void apart() {
    if (thread == null) {
      ThreadPoolExecutor made =
          new ThreadPoolExecutor(
              1, 1, IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(),
              work -> {
                Thread t = new Thread(work, "learning");
                t.setDaemon(true);
                return t;
              });
      made.allowCoreThreadTimeOut(true);
      thread = made;
    }
  }

  boolean isApart() {
    return thread != null;
  }

  @Override
  public void execute(Runnable work) {
    ThreadPoolExecutor own = thread;
    if (own == null) {
      work.run();
      return;
    }
    try {
      own.execute(() -> guarded(own, work));
    } catch (RejectedExecutionException closing) {
      LOG.debug("left for the next start", closing);
    }
  }

  private static void guarded(ThreadPoolExecutor own, Runnable work) {
    try {
      work.run();
    } catch (RuntimeException e) {
      if (own.isShutdown()) {
        LOG.debug("broken off by the closing, left for the next start", e);
      } else if (e instanceof RefusedException) {
        LOG.warn("Learning beside was not done; it is done when somebody asks. {}", e.getMessage());
      } else {
        LOG.warn("Learning beside was not done; it is done when somebody asks.", e);
      }
    }
  }

  @Override
  public void close() {
    ThreadPoolExecutor own = thread;
    if (own != null) {
      own.shutdownNow();
      try {
        own.awaitTermination(PATIENCE_S, TimeUnit.SECONDS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
