package boundwright.clip.scan;

import boundwright.clip.film.Frame;
import boundwright.clip.film.StillCoder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Writes the frames as pictures for the page while the film is read, in a thread of its own, so that stepping from frame to
 * frame needs no video reader in the browser and is exact. Pictures wider than {@value #WIDE} pixels are made smaller.
 */
public final class Stills implements AutoCloseable {
  /** Widest picture [px]. */
  public static final int WIDE = 960;
  private static final int WAITING = 4;
  private static final String FULL = "full.txt";

  /** A frame on its way and what is to be run when it is done with; the last one has no frame. */
  private record Job(@Nullable Frame frame, Runnable done) {}

  private final Path folder;
  private final BlockingQueue<Job> jobs = new ArrayBlockingQueue<>(WAITING);
  private final AtomicReference<@Nullable Exception> trouble = new AtomicReference<>();
  private final Thread thread;
  private boolean sized;

  /** Pictures into this folder, which is made if need be. */
  public Stills(Path folder) {
    this.folder = folder;
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    thread = new Thread(this::write, "stills");
    thread.setDaemon(true);
    thread.start();
  }

  /** The file of a frame. */
  public static Path file(Path folder, int frame) {
    return folder.resolve(String.format(Locale.ROOT, "%05d.jpg", frame));
  }

  /**
   * Size of the film's own picture.
   *
   * @param width [px]
   * @param height [px]
   */
  public record Full(int width, int height) {}

  /** Writes down how large the film's own pictures are, because a still may be smaller. */
  public static void full(Path folder, Full size) {
    try {
      Files.writeString(folder.resolve(FULL), size.width + " " + size.height);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The size of the film's own pictures, empty where none was written down. */
  public static Optional<Full> full(Path folder) {
    Path file = folder.resolve(FULL);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      Matcher m = Pattern.compile("([0-9]{1,5}) ([0-9]{1,5})").matcher(Files.readString(file).strip());
      return m.matches() ? Optional.of(new Full(Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2)))) : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes a frame; {@code done} runs, in another thread, when its picture may be used again. */
  void take(Frame frame, Runnable done) throws InterruptedException {
    if (!sized) {
      full(folder, new Full(frame.picture().width(), frame.picture().height()));
      sized = true;
    }
    jobs.put(new Job(frame, done));
  }

  private void write() {
    StillCoder coder = null;
    try {
      for (Job job = jobs.take(); job.frame != null; job = jobs.take()) {
        if (trouble.get() != null) {
          job.done.run();
          continue;
        }
        try {
          if (coder == null) {
            coder = new StillCoder(job.frame.picture().width(), job.frame.picture().height(), WIDE);
          }
          coder.take(job.frame.picture());
        } catch (RuntimeException e) {
          trouble.set(e);
        }
        job.done.run();
        if (coder != null && trouble.get() == null) {
          try {
            Files.write(file(folder, job.frame.index()), coder.jpeg());
          } catch (IOException | RuntimeException e) {
            trouble.set(e);
          }
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      if (coder != null) {
        coder.close();
      }
    }
  }

  /** Waits until all are written. */
  @Override
  public void close() {
    try {
      jobs.put(new Job(null, () -> {}));
      thread.join();
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
    }
    Exception e = trouble.get();
    if (e != null) {
      throw new IllegalStateException("the pictures of the film could not be written", e);
    }
  }
}
