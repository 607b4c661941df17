package boundwright.store;

import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.Stills;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/**
 * Reads made-up films: a file whose text says what happens. {@code good} is read; {@code hold} is read half way and on once
 * {@link #goOn} is released; {@code bad} is refused; {@code broken} hits a fault of the program.
 */
final class FakeScan implements ClipDesk.Scan {
  static final FoundClip FOUND = SqlClipsTest.found("RRL RRL", 3);

  /** Texts of the films in the order in which their reading began. */
  final List<String> begun = new CopyOnWriteArrayList<>();
  /** Orders as they came. */
  final List<ScanOrder> orders = new CopyOnWriteArrayList<>();
  /** One permit lets one held film be read to its end. */
  final Semaphore goOn = new Semaphore(0);

  private final BlockingQueue<String> held = new LinkedBlockingQueue<>();

  @Override
  public FoundClip scan(ScanOrder order, ClipDesk.Progress progress) throws InterruptedException {
    String text = text(order.film());
    begun.add(text);
    orders.add(order);
    progress.at(500);
    if (text.startsWith("hold")) {
      held.add(text);
      goOn.acquire();
    }
    if (text.startsWith("bad")) {
      throw new RefusedException("The film is dark.");
    }
    if (text.startsWith("broken")) {
      throw new IllegalStateException("a made-up fault");
    }
    stills(order);
    progress.at(1000);
    return FOUND;
  }

  private static String text(Path film) {
    try {
      return Files.readString(film);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void stills(ScanOrder order) {
    Path folder = order.stills();
    if (folder == null) {
      return;
    }
    try {
      Files.createDirectories(folder);
      for (int i = 0; i < FOUND.track().frames(); i++) {
        Files.writeString(Stills.file(folder, FOUND.firstFrame() + i), "picture");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Waits until the next held film is read half way. */
  String nextHeld() throws InterruptedException {
    String text = held.poll(60, TimeUnit.SECONDS);
    if (text == null) {
      throw new AssertionError("no film was held; begun: " + begun);
    }
    return text;
  }
}
