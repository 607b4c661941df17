package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.quantity.RefusedException;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntConsumer;

/** Scans a film in a child process. */
public final class ScanProcess {
  /** Heap of the child [MB]: a few pictures of 4096 x 2304 and the points. */
  private static final int HEAP_MB = 384;
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
    Process child = start(order);
    Thread caller = Thread.currentThread();
    try (DataInputStream in = new DataInputStream(new BufferedInputStream(child.getInputStream()))) {
      // a read from a pipe does not notice an interrupt, so another thread turns it into the child's end
      Thread watch = new Thread(() -> endWhenInterrupted(caller, child), "scan-watch");
      watch.setDaemon(true);
      watch.start();
      return answer(in, progress);
    } catch (IOException e) {
      if (Thread.interrupted()) {
        throw new InterruptedException("the scan was called off");
      }
      child.waitFor();
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "Reading %s ended without an answer (code %d). The film is damaged in a way that stops the reader, or memory ran out: copy it from the phone again, or film shorter.",
              order.film().getFileName(), child.exitValue()),
          e);
    } finally {
      child.destroyForcibly();
    }
  }

  private static void endWhenInterrupted(Thread caller, Process child) {
    while (child.isAlive()) {
      if (caller.isInterrupted()) {
        child.destroyForcibly();
        return;
      }
      try {
        Thread.sleep(100);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
  }

  private static FoundClip answer(DataInputStream in, IntConsumer progress) throws IOException {
    while (true) {
      int kind = in.readUnsignedByte();
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
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx" + HEAP_MB + "m", "-XX:+UseSerialGC",
                "-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), ScanChild.class.getName()));
    command.addAll(
        List.of(
            order.film().toAbsolutePath().toString(), order.weights().toAbsolutePath().toString(), order.size().name(),
            Integer.toString(order.threads()), Boolean.toString(order.skipInFlight()), Integer.toString(order.boxFrame()),
            box == null ? "" : String.format(Locale.ROOT, "%f,%f,%f,%f", box.x(), box.y(), box.width(), box.height()),
            stills == null ? "" : stills.toAbsolutePath().toString()));
    try {
      return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    } catch (IOException e) {
      throw new RefusedException("The process that reads films could not be started: " + e.getMessage() + ".", e);
    }
  }
}
