package boundwright.clip.scan;

import java.time.Duration;

/**
 * Ends a child process when the thread that reads its answer is interrupted, which a read from a pipe does not notice, and when
 * nothing has come from it for too long: a child that hangs must not hold up the films behind it.
 */
public final class ChildWatch {
  private static final int EVERY_MS = 100;

  private final Process child;
  private final Thread reader = Thread.currentThread();
  private final Duration patience;
  private volatile long heard = System.nanoTime();
  private volatile boolean tooSilent;

  private ChildWatch(Process child, Duration patience) {
    this.child = child;
    this.patience = patience;
  }

  /** Watches a child for the calling thread, until the child ends. */
  public static ChildWatch of(Process child, Duration patience) {
    ChildWatch watch = new ChildWatch(child, patience);
    Thread thread = new Thread(watch::run, "scan-watch");
    thread.setDaemon(true);
    thread.start();
    return watch;
  }

  private void run() {
    while (child.isAlive()) {
      tooSilent = System.nanoTime() - heard > patience.toNanos();
      if (tooSilent || reader.isInterrupted()) {
        child.destroyForcibly();
        return;
      }
      try {
        Thread.sleep(EVERY_MS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  /** Something came from the child. */
  public void heard() {
    heard = System.nanoTime();
  }

  /** Whether the child was ended because nothing came from it. */
  public boolean endedIt() {
    return tooSilent;
  }
}
