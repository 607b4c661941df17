package boundwright.clip.scan;

import boundwright.clip.film.Film;
import boundwright.clip.film.Frame;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/**
 * Decodes a few frames ahead in a thread of its own. The pictures' buffers go round: the reader gives each back when it is
 * done with it.
 */
final class Ahead implements AutoCloseable {
  private static final int FRAMES = 6;

  /** What comes through the queue: a frame, or the end, or what went wrong. */
  private record Item(@Nullable Frame frame, @Nullable RuntimeException why) {}

  private final Film film;
  private final BlockingQueue<Item> ready = new ArrayBlockingQueue<>(FRAMES + 1);
  private final BlockingQueue<byte[]> free = new ArrayBlockingQueue<>(FRAMES);
  private final Thread thread;
  private final long promised;
  private volatile boolean stopped;

  Ahead(Film film) {
    this.film = film;
    promised = film.promisedFrames();
    for (int i = 0; i < FRAMES; i++) {
      free.add(film.buffer());
    }
    thread = new Thread(this::decode, "decode");
    thread.setDaemon(true);
    thread.start();
  }

  private void decode() {
    try {
      while (!stopped) {
        Frame frame = film.next(free.take());
        if (frame == null) {
          break;
        }
        ready.put(new Item(frame, null));
      }
      ready.put(new Item(null, null));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException e) {
      // the queue has room for it once the reader has taken one, and the reader always takes
      try {
        ready.put(new Item(null, e));
      } catch (InterruptedException stop) {
        Thread.currentThread().interrupt();
      }
    }
  }

  /** The next frame, or null after the last. */
  @Nullable Frame next() {
    try {
      Item item = ready.take();
      if (item.why != null) {
        throw item.why;
      }
      return item.frame;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while reading a film", e);
    }
  }

  /** Hands back the buffer of a frame that is done with. */
  void giveBack(Frame frame) {
    free.add(frame.picture().rgb());
  }

  int perMille(Frame frame) {
    return promised <= 0 ? 0 : (int) Math.min(1000, 1000L * (frame.index() + 1) / promised);
  }

  /** Ends the thread; afterwards the film belongs to the caller alone. */
  void stop() {
    stopped = true;
    thread.interrupt();
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  boolean brokenOff() {
    return film.brokenOff();
  }

  @Override
  public void close() {
    stop();
  }
}
