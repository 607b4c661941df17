package boundwright.browser;

import boundwright.athlete.Surface;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.Setup;
import boundwright.clip.truth.TrueClip;
import boundwright.demo.DemoSquad;
import boundwright.footfall.Sequence;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Serves an invented squad with made-up clips on port 7199, to be looked at: {@code java ... ClipShots FOLDER}; ends when FOLDER/stop is there. */
final class ClipShots {
  private ClipShots() {}

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    Path data = folder.resolve("data");
    boolean fresh = !Files.exists(data);
    Files.createDirectories(data);
    try (Workbench bench = Workbench.open(data, Clock.system(ZoneId.systemDefault()), new MadeUpScan(1))) {
      bench.clips().start();
      if (fresh) {
        fill(bench);
      }
      try (WebServer server = WebServer.start(bench, "127.0.0.1", 7199)) {
        while (server.port() > 0 && !Files.exists(folder.resolve("stop"))) {
          Thread.sleep(500);
        }
      }
    }
  }

  private static void fill(Workbench bench) throws InterruptedException {
    DemoSquad.fill(bench);
    long athlete = bench.athletes().all().get(0).id();
    long other = bench.athletes().all().get(1).id();
    take(bench, athlete, "slow RRL 3 120", Sequence.parse("RRL"));
    take(bench, athlete, "RRLRRL 7 120", Sequence.parse("RRL x2"));
    take(bench, other, "RRLRRL 11 120", null);
    take(bench, athlete, "nobody", Sequence.parse("RRL x2"));
    while (bench.clips().all().stream().anyMatch(c -> c.state() == ClipState.WAITING || c.state() == ClipState.READING)) {
      Thread.sleep(200);
    }
    for (long id : List.of(2L, 3L)) {
      TrueClip clip = MadeUpScan.clip(id == 2 ? "RRLRRL 7 120" : "RRLRRL 11 120");
      bench.clips().setup(id, new Setup(clip.marks(), new Setup.Pole(clip.poleFoot(), clip.poleTop(), clip.pole_m()), List.of(), 1, DeLeva.FEMALE));
    }
  }

  private static void take(Workbench bench, long athlete, String film, @Nullable Sequence sequence) {
    bench.clips().take(athlete, null, "rep.mp4", new ByteArrayInputStream(film.getBytes(StandardCharsets.UTF_8)), sequence, 2, Surface.TRACK, 13.2);
  }
}
