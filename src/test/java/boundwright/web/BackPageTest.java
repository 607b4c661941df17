package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of a leg on its way back. */
class BackPageTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private Athlete ilka;
  private String page;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
    page = "/athlete/" + ilka.id() + "/back";
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private String[] form(String... more) {
    String body = client.get(page).body();
    String[] first = {"csrf", Client.hidden(body, "csrf"), "token", Client.hidden(body, "token")};
    return Stream.concat(Arrays.stream(first), Arrays.stream(more)).toArray(String[]::new);
  }

  private HttpResponse<String> begin(String leg, String former, String by, String start) {
    return client.post(page, form("leg", leg, "from", "", "by", by, "start", start, "growth", "10", "former", former));
  }

  @Test
  void itIsBegunLookedAtSteppedAndEnded() {
    assertThat(client.get(page).body()).contains("Begin a way back").contains("a named clinician and a date do");
    HttpResponse<String> begun = begin("LEFT", "100", "Dr Sedge (invented)", "30");
    assertThat(begun.statusCode()).as(begun.body()).isEqualTo(200);
    assertThat(begun.body()).contains("Left leg").contains("stage 1 of 13").contains("Up to 15 standing-bound contacts").contains("in eight of ten simulated ways").contains("<svg");
    assertThat(client.get("/athlete/" + ilka.id() + "/care").body()).contains("On the way back").contains("Left leg: stage 1 of 13");
    WayBack way = bench.waysBack().of(ilka.id()).get(0);
    String at = page + "/" + way.id();
    HttpResponse<String> early = client.post(at + "/step", form("to", "ON", "by", "Coach Reed", "note", ""));
    assertThat(early.statusCode()).isEqualTo(422);
    assertThat(early.body()).contains("not earned").contains("0 of 2");
    assertThat(client.post(at + "/end", form("by", "", "why", "x", "on", "")).statusCode()).isEqualTo(422);
    assertThat(client.post(at + "/end", form("by", "Dr Sedge (invented)", "why", "begun by mistake", "on", "")).body()).contains("Ways back that ended").contains("begun by mistake");
  }

  @Test
  void theStepIsOfferedWhenItIsEarned() {
    bench.waysBack().begin(ilka.id(), new WayBack(0, Foot.LEFT, TODAY.minusDays(8), Stages.USUAL, 50, 28, new WayBack.Clearance("Dr Sedge (invented)", TODAY.minusDays(8), true), List.of(), null));
    assertThat(client.get(page).body()).doesNotContain("Step to the next stage");
    for (int ago : new int[] {7, 3}) {
      bench.logbook().log(new Rep(0, ilka.id(), TODAY.minusDays(ago), Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 20.0, null, null, List.of()));
      bench.logbook().log(new Rep(0, ilka.id(), TODAY.minusDays(ago), Sequence.parse("RL x5"), 0, Surface.GRASS, List.of(), 20.0, null, null, List.of()));
    }
    assertThat(client.get(page).body()).contains("Step to the next stage").contains("2 of 2");
    HttpResponse<String> on = client.post(page + "/1/step", form("to", "ON", "by", "Coach Reed", "note", ""));
    assertThat(on.body()).contains("stage 2 of 13").contains("The step is kept").contains("on to stage 2, Coach Reed");
  }

  @Test
  void whileAHoldStandsNothingIsBegunAndTheHoldIsNamed() {
    bench.care().openHold(ilka.id(), new MedicalHold(0, TODAY.minusDays(2), "Set by the club's medical staff", null, null));
    assertThat(client.get("/athlete/" + ilka.id() + "/care").body()).contains("Kept for good").contains("a day too late stands until it comes");
    assertThat(client.get(page).body()).contains("On medical hold since").contains("named clinician").doesNotContain("Begin a way back");
    HttpResponse<String> refused =
        client.post(page, "csrf", Client.hidden(client.get("/athlete/" + ilka.id() + "/care").body(), "csrf"), "token", "0123456789abcdef0123456789abcdef", "leg", "LEFT", "from", "",
            "by", "Coach Reed", "start", "30", "growth", "10", "former", "100");
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(bench.waysBack().of(ilka.id())).isEmpty();
  }

  @Test
  void aPainThatIsTooMuchLeadsThePage() {
    begin("LEFT", "100", "Dr Sedge (invented)", "30");
    bench.care().addPain(ilka.id(), new Pain(0, TODAY, "left shin", 7, null, false));
    assertThat(client.get(page).body()).contains("Rest the leg. Pain 7 of 10").doesNotContain("Up to").doesNotContain("never reached");
  }

  @Test
  void theAthletesPageSaysWhatTheStageAllows() {
    assertThat(client.get("/athlete/" + ilka.id()).body()).doesNotContain("Way back:");
    begin("LEFT", "100", "Dr Sedge (invented)", "30");
    assertThat(client.get("/athlete/" + ilka.id()).body()).containsOnlyOnce("Way back: up to 15 standing-bound contacts on the left leg today.");
  }

  @Test
  void theCardOnPaperSaysWhatTheStageAllows() {
    Athlete other = bench.athletes().add(new Athlete(0, "Odo Farthing", Level.INTERMEDIATE, Foot.RIGHT, 4));
    String card = "/athlete/" + ilka.id() + "/card";
    String allows = "Way back: up to 15 standing-bound contacts on the left leg today.";
    bench.settings().keep(new DayPlan("", List.of(new Drill(Sequence.parse("RRL RRL"), 2, 2, 2, true))));
    assertThat(client.get(card).body()).doesNotContain("Way back");
    begin("LEFT", "100", "Dr Sedge (invented)", "30");
    assertThat(client.get(card).body()).containsOnlyOnce(allows);
    assertThat(client.get("/athlete/" + other.id() + "/card").body()).doesNotContain("Way back");
    assertThat(client.get("/card").body()).as("the squad's card").containsOnlyOnce("Ilka Sandfoot: " + allows);
    bench.care().addPain(ilka.id(), new Pain(0, TODAY, "left shin", 7, null, true));
    assertThat(client.get(card).body()).as("while bounding is stopped the stop alone stands").doesNotContain("Way back");
  }

  @Test
  void badInputIsRefusedBesideItsForm() {
    assertThat(begin("LEFT", "100", "Dr Sedge", "95").body()).contains("10 to 90 %");
    assertThat(begin("LEFT", "", "Dr Sedge", "30").body()).contains("former week is not known");
    assertThat(begin("LEFT", "100", "", "30").body()).contains("Name who says");
    HttpResponse<String> two = client.post(page, form("leg", "LEFT", "from", "05/04/2026", "by", "Dr Sedge", "start", "30", "growth", "10", "former", "100"));
    assertThat(two.body()).contains("day first it is 2026-04-05, month first 2026-05-04");
    assertThat(begin("BOTH", "100", "Dr Sedge", "30").statusCode()).isEqualTo(422);
    assertThat(client.post(page + "/99/step", form("to", "ON", "by", "x", "note", "")).statusCode()).isEqualTo(422);
    assertThat(bench.waysBack().of(ilka.id())).isEmpty();
  }
}
