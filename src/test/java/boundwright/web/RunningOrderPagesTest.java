package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.season.order.OrderSettings;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the running order as plain forms, what it keeps, and what the phones are told of it. */
class RunningOrderPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T17:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private void squad() {
    for (String name : new String[] {"Wren", "Otis", "Rafi"}) {
      bench.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4));
    }
    bench.settings()
        .keep(
            TODAY,
            new DayPlan("", List.of(new Drill(Sequence.parse("RL x5"), 0, 1, 2, false), new Drill(Sequence.parse("RRL"), 0, 2, 2, true), new Drill(Sequence.parse("LLR"), 0, 2, 2, true))));
  }

  private String csrf() {
    return Client.hidden(client.get("/plan").body(), "csrf");
  }

  /** Once the squad was read again; until then a phone is told what was known before. */
  private List<Long> told(int size) throws IOException {
    List<Long> out = told();
    for (int asked = 0; out.size() != size && asked < 300; asked++) {
      out = told();
    }
    return out;
  }

  private List<Long> told() throws IOException {
    JsonNode page = new ObjectMapper().readTree(client.get("/runway/parcel").body()).get("page");
    List<Long> out = new ArrayList<>();
    page.get("order").forEach(id -> out.add(id.asLong()));
    return out;
  }

  @Test
  void withoutAPlanOrASquadItSaysSo() {
    assertThat(client.get("/plan/order").body()).contains("Nobody who may bound is here");
    bench.athletes().add(new Athlete(0, "Wren", Level.INTERMEDIATE, Foot.RIGHT, 4));
    bench.settings().keep(TODAY, new DayPlan("", List.of()));
    assertThat(client.get("/plan/order").body()).contains("no drill");
  }

  @Test
  void itIsShownKeptAndToldToThePhones() throws IOException {
    squad();
    String page = client.get("/plan/order?from=17:00").body();
    assertThat(page).contains("Ends 17:").contains("Run in this order").contains("at the sand: ").doesNotContain("Run as they come");
    assertThat(told()).isEmpty();
    HttpResponse<String> kept = client.post("/plan/order", "csrf", csrf(), "from", "17:00", "minutes", "50", "pits", "1", "action", "run");
    assertThat(kept.body()).contains("The runway page goes by this order").contains("Run as they come").doesNotContain("Run in this order");
    assertThat(told(3 * 10)).hasSize(3 * 10).containsAll(bench.athletes().all().stream().map(Athlete::id).toList());
    assertThat(bench.order().orderSettings().minutes()).isEqualTo(50);
    client.post("/plan/order", "csrf", csrf(), "action", "own");
    assertThat(told(0)).isEmpty();
  }

  @Test
  void whatIsLeftOutIsSaidAndWhoIsAwayIsNotInIt() {
    squad();
    String less = client.get("/plan/order?from=17:00&minutes=30&lost=21").body();
    assertThat(less).contains("Drop the second set of LLR").contains("Drop the second set of RRL");
    assertThat(client.get("/plan/order?closed=grass").body()).contains("Leave out RL x5: no place is open for it.");
    long rafi = bench.athletes().byName("Rafi").orElseThrow().id();
    Set<Long> here = new HashSet<>(bench.athletes().all().stream().map(Athlete::id).toList());
    here.remove(rafi);
    bench.attendance().keepHere(TODAY, here);
    assertThat(client.get("/plan/order").body()).doesNotContain("Rafi").contains("Otis");
  }

  @Test
  void badNumbersAreAnsweredInWordsAndNothingIsKept() {
    squad();
    for (String[] bad : new String[][] {{"pits", "40", "0 to 6"}, {"minutes", "900", "900"}, {"lost", "60", "no time is left"}, {"from", "late", "late"}, {"closed", "sun", "sun"}}) {
      assertThat(client.get("/plan/order?" + bad[0] + "=" + bad[1]).body()).as(bad[0]).contains(bad[2]).doesNotContain("Exception");
    }
    assertThat(client.post("/plan/order", "csrf", csrf(), "standing", "-5", "action", "numbers").body()).contains("-5 s");
    assertThat(bench.order().orderSettings()).isEqualTo(OrderSettings.DEFAULT);
  }

  @Test
  void settingsComeBackAsTheyWereKept() {
    client.post("/plan/order", "csrf", csrf(), "step", "0.35", "standing", "75", "times", "6", "watch", "ALL", "coaches", "2", "action", "numbers");
    OrderSettings kept = bench.order().orderSettings();
    assertThat(kept.step_s()).isEqualTo(0.35);
    assertThat(kept.rest().standing_s()).isEqualTo(75);
    assertThat(kept.rest().timesWork()).isEqualTo(6);
    assertThat(kept.watch()).isEqualTo(OrderSettings.Watch.ALL);
    assertThat(kept.coaches()).isEqualTo(2);
  }
}
