package boundwright.store;

import boundwright.athlete.Surface;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Takes two clips in, begins to read the first and says so; made to be killed then. */
final class ReadingProgram {
  private ReadingProgram() {}

  /** Takes the data folder, in which there is an athlete. */
  @SuppressWarnings("SystemOut") // a program
  public static void main(String[] args) throws InterruptedException {
    FakeScan scan = new FakeScan();
    try (Workbench w = Workbench.open(Path.of(args[0]), Fixtures.CLOCK, scan)) {
      long athlete = w.athletes().all().get(0).id();
      for (String film : new String[] {"hold", "good"}) {
        w.clips()
            .take(
                athlete, null, "a.mov", new ByteArrayInputStream(film.getBytes(StandardCharsets.UTF_8)), null, 0, Surface.GRASS, null);
      }
      w.clips().start();
      scan.nextHeld();
      System.out.println("reading");
      Thread.sleep(600_000);
    }
  }
}
