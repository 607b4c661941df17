package boundwright.clip.session;

import boundwright.clip.scan.ChildJava;
import boundwright.clip.scan.ChildWatch;
import boundwright.quantity.RefusedException;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/** Cuts a film in a child process. */
public final class CutProcess {
  /** Heap of the child [MB]: a picture of 4096 x 2304, small ones, the stills of who runs now. */
  private static final int HEAP_MB = 256;
  private static final Duration PATIENCE = Duration.ofMinutes(15);

  private CutProcess() {}

  /**
   * Cuts and waits. An interrupt of the waiting thread ends the child.
   *
   * @return how many looks the network took
   * @throws RefusedException if the film is refused, or the child ended without an answer
   * @throws InterruptedException if the cutting was called off
   */
  public static int cut(CutOrder order, Cutter.Listener listener) throws InterruptedException {
    return answer(start(order), String.valueOf(order.film().getFileName()), PATIENCE, listener);
  }

  static int answer(Process child, String film, Duration patience, Cutter.Listener listener) throws InterruptedException {
    ChildWatch watch = ChildWatch.of(child, patience);
    try (DataInputStream in = new DataInputStream(new BufferedInputStream(child.getInputStream()))) {
      return answer(in, watch, listener);
    } catch (IOException e) {
      if (Thread.interrupted()) {
        throw new InterruptedException("the cutting was called off");
      }
      child.waitFor();
      if (watch.endedIt()) {
        throw new RefusedException(
            "Looking through " + film + " came to a standstill and was stopped. Have it looked through again: it goes on where it was.", e);
      }
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "Looking through %s ended without an answer (code %d). What was found is kept. Have it looked through again: it goes on where it"
                  + " was; if it ends there again, save the film as H.264 and take that.",
              film, child.exitValue()),
          e);
    } finally {
      child.destroyForcibly();
    }
  }

  private static int answer(DataInputStream in, ChildWatch watch, Cutter.Listener listener) throws IOException {
    while (true) {
      int kind = in.readUnsignedByte();
      watch.heard();
      if (kind == CutChild.REACHED) {
        listener.reached(in.readDouble(), in.readDouble());
      } else if (kind == CutChild.REP) {
        listener.rep(CutBytes.read(in));
      } else if (kind == CutChild.REFUSED) {
        throw new RefusedException(in.readUTF());
      } else if (kind == CutChild.END) {
        return in.readInt();
      } else {
        throw new EOFException("an answer of unknown kind " + kind);
      }
    }
  }

  private static Process start(CutOrder order) {
    Path stills = order.stills();
    return ChildJava.start(
        HEAP_MB,
        CutChild.class,
        List.of(
            order.film().toAbsolutePath().toString(), order.weights().toAbsolutePath().toString(), Double.toString(order.from_s()),
            stills == null ? "" : stills.toAbsolutePath().toString()),
        "looks through films");
  }
}
