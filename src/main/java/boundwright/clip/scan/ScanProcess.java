package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.quantity.RefusedException;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;

/** Scans a film in a child process. */
public final class ScanProcess {
  /** Heap of the child [MB]: a few pictures of 4096 x 2304 and the points. */
  private static final int HEAP_MB = 384;
  /** Fetching the networks' weights may take 10 minutes in which nothing is told. */
  private static final Duration PATIENCE = Duration.ofMinutes(15);
  /** No answer is larger [bytes]. */
  private static final int MOST_BYTES = 64 << 20;

  private ScanProcess() {}

  /**
   * Scans and waits. An interrupt of the waiting thread ends the child.
   *
   * @param progress told per mille done, 0 to 1000
   * @throws RefusedException if the film is refused, or the child ended without an answer
   * @throws InterruptedException if the thread was interrupted: the scan was called off
   */
  public static FoundClip scan(ScanOrder order, IntConsumer progress) throws InterruptedException {
    return answer(start(order), String.valueOf(order.film().getFileName()), PATIENCE, progress);
  }

  /** The answer of a child, which is ended when it says nothing for so long. */
  static FoundClip answer(Process child, String film, Duration patience, IntConsumer progress) throws InterruptedException {
    ChildWatch watch = ChildWatch.of(child, patience);
    try (DataInputStream in = new DataInputStream(new BufferedInputStream(child.getInputStream()))) {
      return answer(in, watch, progress);
    } catch (IOException e) {
      if (Thread.interrupted()) {
        throw new InterruptedException("the scan was called off");
      }
      child.waitFor();
      if (watch.endedIt()) {
        throw new RefusedException(
            String.format(
                Locale.ROOT, "Reading %s came to a standstill: nothing happened for %d minutes, so it was stopped. Read the clip again; if it stands still again, save the film as H.264 and take that.",
                film, patience.toMinutes()),
            e);
      }
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "Reading %s ended without an answer (code %d). The film is damaged in a way that stops the reader, or memory ran out: copy it from the phone again, or film shorter.",
              film, child.exitValue()),
          e);
    } finally {
      child.destroyForcibly();
    }
  }

  private static FoundClip answer(DataInputStream in, ChildWatch watch, IntConsumer progress) throws IOException {
    while (true) {
      int kind = in.readUnsignedByte();
      watch.heard();
      if (kind == ScanChild.PROGRESS) {
        progress.accept(in.readInt());
      } else if (kind == ScanChild.REFUSED) {
        throw new RefusedException(in.readUTF());
      } else if (kind == ScanChild.FOUND) {
        int n = in.readInt();
        if (n < 0 || n > MOST_BYTES) {
          throw new EOFException("an answer of " + n + " bytes");
        }
        return FoundBytes.read(in.readNBytes(n));
      } else {
        throw new EOFException("an answer of unknown kind " + kind);
      }
    }
  }

  private static Process start(ScanOrder order) {
    Box box = order.box();
    Path stills = order.stills();
    return ChildJava.start(
        HEAP_MB,
        ScanChild.class,
        List.of(
            order.film().toAbsolutePath().toString(), order.weights().toAbsolutePath().toString(), order.size().name(),
            Integer.toString(order.threads()), Boolean.toString(order.skip()), Integer.toString(order.boxFrame()),
            box == null ? "" : String.format(Locale.ROOT, "%f,%f,%f,%f", box.x(), box.y(), box.width(), box.height()),
            stills == null ? "" : stills.toAbsolutePath().toString(), Double.toString(order.stretch().from_s()),
            Double.toString(order.stretch().to_s())),
        "reads films");
  }
}
