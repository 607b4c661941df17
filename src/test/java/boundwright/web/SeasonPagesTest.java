package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.demo.InventedFolder;
import boundwright.load.GuardSettings;
import boundwright.season.PlainPlanner;
import boundwright.season.SeasonRepository.Kept;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The season's pages and the addresses of its calendars, as a browser without scripts and a calendar program see them. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SeasonPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-10-13T09:00:00Z"), ZoneId.of("Europe/Berlin"));
  private static final LocalDate FIRST = LocalDate.of(2026, 9, 28);

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    server = WebServer.start(bench, "0.0.0.0", 0);
    client = Client.atTheMachine(server);
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private String csrf() {
    return Client.hidden(client.get("/season").body(), "csrf");
  }

  private static String file() {
    return SeasonFile.write(DemoSeason.from(FIRST, GuardSettings.DEFAULT), GuardSettings.DEFAULT, DemoSeason.NOTE);
  }

  private Kept kept() {
    HttpResponse<String> answer = client.upload("/season/file", csrf(), "season.json", file());
    assertThat(answer.statusCode()).isEqualTo(200);
    return bench.seasons().all().get(0);
  }

  private Kept published() {
    Kept kept = kept();
    bench.seasons().publish(kept.id(), new PlainPlanner().plan(bench.seasons().input(kept.id()).orElseThrow(), Optional.empty()), DAY.instant());
    return bench.seasons().byId(kept.id()).orElseThrow();
  }

  private String address(Kept kept, String athlete) {
    String page = client.post("/season/calendar", "csrf", csrf(), "season", String.valueOf(kept.id()), "athlete", athlete).body();
    Matcher m = Pattern.compile("/calendar/[0-9a-f]{32}\\.ics").matcher(page);
    assertThat(m.find()).as("the new address is shown").isTrue();
    return m.group();
  }

  @Test
  void anEmptyPageSaysWhatToDoAndTheExampleGoesIn() {
    assertThat(client.get("/season").body()).contains("No season yet.", "/season/example.json", "Keep the season");
    HttpResponse<String> example = client.get("/season/example.json");
    assertThat(example.headers().firstValue("Content-Type").orElse("")).startsWith("application/json");
    HttpResponse<String> answer = client.upload("/season/file", csrf(), "season.json", example.body());
    assertThat(answer.body()).contains("The season is kept.", "Two peaks (invented)", "No plan of it is published yet.", "3 athletes");
    assertThat(bench.seasons().input(1).orElseThrow().squad())
        .allSatisfy(m -> assertThat(bench.athletes().byName(m.name()).orElseThrow().id()).isEqualTo(m.id()));
    HttpResponse<String> back = client.get("/season/file.json?season=1");
    assertThat(client.upload("/season/file", csrf(), "again.json", back.body()).statusCode()).isEqualTo(200);
    assertThat(bench.seasons().all()).as("the same season is kept anew").hasSize(1);
  }

  @Test
  void aBadFileIsAnsweredWithThePlaceAndNothingIsKept() {
    HttpResponse<String> wrong = client.upload("/season/file", csrf(), "s.json", file().replace("\"advanced\"", "\"expert\""));
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("squad[3].level (Linnea Saltwort)");
    HttpResponse<String> stranger = client.upload("/season/file", csrf(), "s.json", file().replace("Otis Sedgeley", "Nobody Known"));
    assertThat(stranger.statusCode()).isEqualTo(422);
    assertThat(stranger.body()).contains("squad[2].name (Nobody Known)", "Add them to the squad first");
    assertThat(client.upload("/season/file", csrf(), "s.json", "").statusCode()).isEqualTo(422);
    assertThat(bench.seasons().all()).isEmpty();
  }

  @Test
  void thePublishedSeasonIsOnOnePageAndItsWeekOnAnother() {
    Kept kept = published();
    String page = client.get("/season").body();
    assertThat(page).contains("version 1", "Wren Samphire", "1 First indoor meet (invented)", "This week", "season-strip").doesNotContain("No season yet");
    String week = client.get("/season/week").body();
    assertThat(week).contains("Week of 12 Oct 2026", "Tuesday, 13 Oct", "today", "Wren Samphire", "RL x5", "free", "3 athletes");
    assertThat(client.get("/season/week?season=" + kept.id() + "&of=2027-01-30").body()).contains("First indoor meet (invented)", "from 12 steps");
    assertThat(client.get("/season/week?of=1999-01-01").body()).as("a day outside is the nearest inside").contains("Week of 28 Sep 2026");
    assertThat(client.get("/season/week?of=soon").statusCode()).isEqualTo(422);
    assertThat(client.get("/season?season=77").statusCode()).isEqualTo(404);
    for (String pdf : new String[] {"/season/wall.pdf?season=1&paper=A4", "/season/week.pdf?season=1&of=2027-01-30"}) {
      assertThat(client.get(pdf).body()).startsWith("%PDF");
    }
  }

  @Test
  void whereTheSeasonsNumbersComeFromIsSaidOnThePageOfSources() {
    assertThat(client.get("/sources").body())
        .contains("41 to 60 %", "Bosquet et al. 2007", "A lighter week after three rising ones", "What is wanted of a week in each part of the year", "Sessions needed until two steps are added");
  }

  @Test
  void anAddressIsReadByWhoeverHasItAndByNobodyElse() {
    Kept kept = published();
    long wren = bench.athletes().byName("Wren Samphire").orElseThrow().id();
    String squad = address(kept, "0");
    String own = address(kept, String.valueOf(wren));
    Client anybody = Network.phone(server.port());
    assertThat(anybody.get("/season").statusCode()).as("a stranger").isEqualTo(401);
    HttpResponse<String> all = anybody.get(squad);
    assertThat(all.statusCode()).isEqualTo(200);
    assertThat(all.headers().firstValue("Content-Type").orElse("")).isEqualTo("text/calendar; charset=utf-8");
    assertThat(all.body()).startsWith("BEGIN:VCALENDAR\r\n").contains("Otis Sedgeley", "TZID:Europe/Berlin");
    assertThat(anybody.get(own).body()).contains("Combinations from 4 steps").doesNotContain("Otis");
    assertThat(anybody.get("/calendar/" + "0".repeat(32) + ".ics").statusCode()).isEqualTo(404);
    assertThat(anybody.get(own.replace(".ics", "")).statusCode()).isEqualTo(404);
    assertThat(anybody.get("/calendar/..%2f..%2fseason.ics").statusCode()).isBetween(400, 404);
    String renewed = address(kept, String.valueOf(wren));
    assertThat(anybody.get(own).statusCode()).as("the address before").isEqualTo(404);
    assertThat(anybody.get(renewed).statusCode()).isEqualTo(200);
    assertThat(anybody.get(squad).statusCode()).as("another's address stays").isEqualTo(200);
    client.post("/season/calendar/shut", "csrf", csrf(), "season", String.valueOf(kept.id()), "athlete", String.valueOf(wren));
    assertThat(anybody.get(renewed).statusCode()).isEqualTo(404);
    bench.athletes().erase(wren);
    assertThat(anybody.get(squad).body()).doesNotContain("Wren");
  }

  @Test
  void aPhoneThatMayLogSeesTheWeekAndNotTheSeason() {
    published();
    Client phone = Network.phoneThatMayLog(server);
    assertThat(phone.get("/season/week").statusCode()).isEqualTo(200);
    assertThat(phone.get("/season").statusCode()).isEqualTo(403);
    assertThat(phone.post("/season/calendar", "csrf", Client.hidden(phone.get("/season/week").body().contains("csrf") ? phone.get("/season/week").body() : phone.get("/plan").body(), "csrf"), "season", "1", "athlete", "0").statusCode())
        .isEqualTo(403);
  }
}
