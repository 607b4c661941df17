package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody on the same Wi-Fi whom the coach has not paired. */
class StrangerTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  @Test
  void aStrangerOnTheNetworkErasesNobody() {
    try (Workbench bench = Workbench.open(folder, DAY);
        WebServer server = WebServer.start(bench, "0.0.0.0", 0)) {
      Athlete ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
      Client stranger = Network.phone(server.port());
      HttpResponse<String> page = stranger.get("/athlete/" + ilka.id() + "/edit");
      String csrf = page.body().contains("name=\"csrf\"") ? Client.hidden(page.body(), "csrf") : "";
      HttpResponse<String> answer = stranger.post("/athlete/" + ilka.id() + "/erase", "csrf", csrf, "name", "Ilka Sandfoot");
      assertThat(bench.athletes().all()).as("erased from the network without a word").hasSize(1);
      assertThat(page.body()).doesNotContain("Ilka");
      assertThat(answer.statusCode()).isBetween(401, 403);
    }
  }
}
