package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.clip.FoundClip;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipState;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.store.Workbench;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All contacts are right: said on the clip's page, counted on the list. */
class ClipAgreedPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final TrueClip TRUTH = TrueClip.of(Sequence.parse("RRL"), 0, 6, 30, Noise.NONE, false, 3);

  @TempDir Path folder = Path.of("");

  @Test
  void aCoachAgreesOnThePageAndTheListSaysWhatItCanTeach() throws InterruptedException {
    int n = TRUTH.found().frames();
    FoundClip found = new FoundClip(new FilmFacts("h264", 1280, 720, 0, 1, 90_000, n, n / 30.0, Double.NaN), 0, TRUTH.found(), n, List.of());
    try (Workbench bench = Workbench.open(folder, DAY, (order, progress) -> found);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      Athlete ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.BEGINNER, Foot.RIGHT, 2));
      ClipDesk desk = bench.clips();
      desk.start();
      long id = desk.take(ilka.id(), null, "rep.mp4", new ByteArrayInputStream(new byte[] {1}), null, 0, Surface.TRACK, null).id();
      for (int i = 0; i < 6000 && desk.clip(id).state() != ClipState.READ; i++) {
        Thread.sleep(10);
      }
      Client client = new Client(server.port());
      String page = client.get("/clips/" + id).body();
      assertThat(page).contains("All contacts are right</button>");
      String csrf = Client.hidden(page, "csrf");
      assertThat(client.post("/clips/" + id + "/agree", "csrf", csrf, "frame", "1").body()).contains("All contacts are right, as you said.");
      assertThat(client.get("/clips").body()).as("nothing was put right").doesNotContain("put right by hand");
      String right = client.post("/clips/" + id + "/correct", "csrf", csrf, "kind", "touchdown", "frame", String.valueOf(TRUTH.found().nearest(desk.reading(id).begin(1)) + 2)).body();
      assertThat(right).as("other contacts than those agreed to").contains("All contacts are right</button>");
      client.post("/clips/" + id + "/agree", "csrf", csrf, "frame", "1");
      assertThat(client.get("/clips").body()).contains("1 clip put right by hand").contains("<code>boundwright clip learn</code>");
    }
  }
}
