package boundwright.season.desk;

import boundwright.quantity.RefusedException;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Long work about a season that goes on behind the pages, one at a time, until it is done or stopped. Safe to use from many threads.
 *
 * @param <P> what is known of the work while it goes on
 */
final class Background<P> implements AutoCloseable {
  private final String name;
  private final String busy;
  private final String again;
  private final ExecutorService thread;
  private @Nullable Job<P> job;

  /**
   * @param name of the work, as in <i>The search broke off</i>
   * @param busy what another season is while this work goes on, as in <i>planned</i>
   * @param again what to do where it broke off, a sentence
   */
  Background(String name, String busy, String again) {
    this.name = name;
    this.busy = busy;
    this.again = again;
    this.thread =
        Executors.newSingleThreadExecutor(
            r -> {
              Thread t = new Thread(r, "season " + name);
              t.setDaemon(true);
              return t;
            });
  }

  /** Work that was begun last. */
  static final class Job<P> {
    private final long season;
    private final P known;
    private volatile String failed = "";
    private volatile boolean over;
    private boolean stopped;
    private @Nullable Runnable stopper;

    private Job(long season, P known) {
      this.season = season;
      this.known = known;
    }

    P known() {
      return known;
    }

    boolean over() {
      return over;
    }

    /** Why there is no answer, or empty. */
    String failed() {
      return failed;
    }

    /** From now on this ends the work early; at once if it was stopped before. */
    synchronized void endsBy(Runnable end) {
      stopper = end;
      if (stopped) {
        end.run();
      }
    }

    private synchronized void stop() {
      stopped = true;
      if (stopper != null) {
        stopper.run();
      }
    }

    private synchronized void end() {
      over = true;
      stopper = null;
    }
  }

  /** Refuses while the work goes on about another season; whether it goes on about this one. */
  synchronized boolean goesOn(long season) {
    Job<P> now = job;
    if (now == null || now.over) {
      return false;
    }
    if (now.season != season) {
      throw new RefusedException("Another season is being " + busy + ". Wait until it is done, or stop it there.");
    }
    return true;
  }

  /** Begins, unless it goes on about this season already; refuses as {@link #goesOn}. */
  synchronized void start(long season, P known, Consumer<Job<P>> work) {
    if (!goesOn(season)) {
      Job<P> next = new Job<>(season, known);
      job = next;
      thread.execute(() -> run(next, work));
    }
  }

  private void run(Job<P> next, Consumer<Job<P>> work) {
    try {
      work.accept(next);
    } catch (RefusedException e) {
      next.failed = String.valueOf(e.getMessage());
    } catch (RuntimeException e) {
      next.failed = "The " + name + " broke off: " + e.getMessage() + ". What is published stays. " + again;
    } finally {
      next.end();
    }
  }

  /** Ends the work about a season early. */
  synchronized void stop(long season) {
    Job<P> now = job;
    if (now != null && now.season == season) {
      now.stop();
    }
  }

  /** The work about a season that goes on or failed last; empty if none does and none did. */
  synchronized Optional<Job<P>> of(long season) {
    return Optional.ofNullable(job).filter(j -> j.season == season && !(j.over && j.failed.isEmpty()));
  }

  /** Ends what goes on. */
  @Override
  public void close() {
    synchronized (this) {
      Job<P> now = job;
      if (now != null) {
        now.stop();
      }
    }
    thread.shutdown();
  }
}
