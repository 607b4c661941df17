package boundwright.store.engine;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.AbstractExecutorService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * The hands of a program that read films, whichever queue they wait in: as many films at once as there are hands, and who asked first is
 * served first. A queue asks for one film at a time, so that queues take turns.
 */
public final class FilmHands {
  private static final long IDLE_S = 10;

  private final int hands;
  private final ThreadPoolExecutor pool;

  /** @param hands films that are read at once */
  public FilmHands(int hands) {
    this.hands = hands;
    this.pool =
        new ThreadPoolExecutor(
            hands, hands, IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(),
            work -> {
              Thread thread = new Thread(work, "clips");
              thread.setDaemon(true);
              return thread;
            });
    pool.allowCoreThreadTimeOut(true);
  }

  int hands() {
    return hands;
  }

  /** The hands as one queue sees them: when it closes, only its own work ends. */
  ExecutorService lent() {
    return new Lent();
  }

  private final class Lent extends AbstractExecutorService {
    private final Deque<Runnable> waiting = new ArrayDeque<>();
    private final List<Thread> busy = new ArrayList<>();
    private boolean shut;

    @Override
    public synchronized void execute(Runnable work) {
      if (shut) {
        throw new RejectedExecutionException("The queue was closed.");
      }
      waiting.add(work);
      pool.execute(this::next);
    }

    private void next() {
      Runnable work;
      synchronized (this) {
        work = waiting.poll();
        if (work == null) {
          return;
        }
        busy.add(Thread.currentThread());
      }
      try {
        work.run();
      } finally {
        synchronized (this) {
          busy.remove(Thread.currentThread());
          // what was meant for this work must not hit the next queue's
          Thread.interrupted();
          notifyAll();
        }
      }
    }

    /** What was not begun is not begun any more: it is in the database, and another queue's film may be long. */
    @Override
    public synchronized void shutdown() {
      shut = true;
      waiting.clear();
    }

    @Override
    public synchronized List<Runnable> shutdownNow() {
      shut = true;
      List<Runnable> left = List.copyOf(waiting);
      waiting.clear();
      busy.forEach(Thread::interrupt);
      return left;
    }

    @Override
    public synchronized boolean isShutdown() {
      return shut;
    }

    @Override
    public synchronized boolean isTerminated() {
      return shut && busy.isEmpty() && waiting.isEmpty();
    }

    @Override
    public synchronized boolean awaitTermination(long timeout, TimeUnit unit) throws InterruptedException {
      long end = System.nanoTime() + unit.toNanos(timeout);
      for (long left = end - System.nanoTime(); !isTerminated() && left > 0; left = end - System.nanoTime()) {
        TimeUnit.NANOSECONDS.timedWait(this, left);
      }
      return isTerminated();
    }
  }
}
