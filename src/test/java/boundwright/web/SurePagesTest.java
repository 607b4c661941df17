package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.demo.InventedFolder;
import boundwright.load.GuardSettings;
import boundwright.season.SeasonInput;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How sure a plan is, as a browser without scripts sees it. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SurePagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-10-13T09:00:00Z"), ZoneId.of("Europe/Berlin"));

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private long id;

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    byte[] file = SeasonFile.write(DemoSeason.from(LocalDate.of(2026, 10, 19), GuardSettings.DEFAULT), GuardSettings.DEFAULT, "").getBytes(StandardCharsets.UTF_8);
    SeasonInput season = SeasonFile.read(file, GuardSettings.DEFAULT, (name, written) -> bench.athletes().byName(name).orElseThrow().id());
    id = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, DAY, new Random(1)).keep(season);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private String page() {
    return client.get("/season/sure?season=" + id).body();
  }

  private HttpResponse<String> start(String... more) {
    String[] all = new String[4 + more.length];
    System.arraycopy(new String[] {"csrf", Client.hidden(page(), "csrf"), "season", String.valueOf(id)}, 0, all, 0, 4);
    System.arraycopy(more, 0, all, 4, more.length);
    return client.post("/season/sure", all);
  }

  private void publish() {
    SeasonInput season = bench.seasons().input(id).orElseThrow();
    bench.seasons().publish(id, SeasonWork.ofFile().planner(season, null, season.first(), 1).plan(Duration.ZERO, t -> {}).plan(), DAY.instant());
  }

  @Test
  void withoutAPlanItSaysWhatToDo() {
    HttpResponse<String> answer = start();
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("No plan is published yet", "Plan the season first");
  }

  /** Waits for the simulation by asking again, not for a time. */
  @Test
  void itRunsInTheBackgroundIsStoppedAndSaysWhatIsKnown() {
    publish();
    assertThat(client.get("/season?season=" + id).body()).contains("How sure", "/season/sure?season=" + id);
    assertThat(page()).contains("One more hour a week", "One meet less", "Simulate 1000 seasons");
    assertThat(start("hour", "moon:tuesday").body()).contains("moon", "Its places");
    String going = start("hour", "gym:tuesday", "without", "early").body();
    while (going.contains("<progress") && going.contains("<b>0 of 1000")) {
      Thread.onSpinWait();
      going = page();
    }
    client.post("/season/sure/stop", "csrf", Client.hidden(page(), "csrf"), "season", String.valueOf(id));
    String body = page();
    while (body.contains("<progress")) {
      Thread.onSpinWait();
      body = page();
    }
    assertThat(body).contains("simulated seasons, version 1", "Days refused after mending</span> <b>0</b>", "Wren Samphire", "One more hour a week: Tidewater gym, Tuesday buys", "Simulate again");
    String words = body.replaceAll("(?s)<head.*?</head>|<script.*?</script>|<[^>]*>", " ").toLowerCase(Locale.ROOT);
    assertThat(words).doesNotContain("risk", "injur", "guard", "rung", "gate", "window", "judged");
    publish();
    assertThat(page()).as("an answer about an older version is not shown").doesNotContain("simulated seasons, version 1");
  }
}
