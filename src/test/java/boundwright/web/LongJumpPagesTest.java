package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.jump.Event;
import boundwright.jump.takeoff.LongJump;
import boundwright.meet.CombinedWind;
import boundwright.meet.MeetSheet;
import boundwright.meet.Scoring;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of the long jump, asked by a plain browser without scripts. */
class LongJumpPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

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
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 8));
    page = "/athlete/" + ilka.id() + "/long-jump";
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private HttpResponse<String> send(String from, String to, String... fields) {
    String shown = client.get(from).body();
    List<String> all = new ArrayList<>(List.of("csrf", Client.hidden(shown, "csrf"), "token", Client.hidden(shown, "token")));
    all.addAll(List.of(fields));
    return client.post(to, all.toArray(new String[0]));
  }

  @Test
  void everyPageAnswersWithoutDataAndKeepsScriptsAndStylesOutsideItself() {
    for (String path : List.of(page, page + "/run-up", page + "/aim", "/meet?event=long-jump", "/meet?event=nonsense")) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).as(path).isEqualTo(200);
      assertThat(r.body()).as(path).doesNotContain(" style=\"").doesNotContain("<style").doesNotContain("onclick").doesNotContain("NaN");
    }
  }

  /** The collection's flight in a jump of 7.65 m (worked): take-off .35, flight 6.84, landing .56, given away .10. */
  @Test
  void aLongJumpIsKeptToldAndTakenBack() {
    HttpResponse<String> r =
        send(page, page, "distance", "7.65", "gap", "10", "foot", "LEFT", "steps", "18", "forward", "8.5", "up", "3.2", "high", "1.25", "low", "0.65", "ahead", "35");
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.body()).contains("off the left").contains("6.84 m").contains("0.56 m").contains("The data cannot tell").contains("at least 8");
    LongJump kept = bench.longJumps().longJumps(ilka.id()).get(0);
    assertThat(kept.foot()).isEqualTo(Foot.LEFT);
    assertThat(Objects.requireNonNull(kept.takeOff()).vxIn()).isNull();
    assertThat(send(page, page, "distance", "12.1", "foot", "LEFT").body()).contains("1 to 10 m");
    assertThat(send(page, page, "distance", "6.1", "foot", "LEFT", "forward", "8").body()).contains("vertical speed at take-off is missing");
    assertThat(send(page, page, "distance", "6.1", "foot", "LEFT", "into", "9").body()).contains("is missing");
    assertThat(bench.longJumps().longJumps(ilka.id())).hasSize(1);
    send(page, page + "/" + kept.id() + "/remove");
    assertThat(bench.longJumps().longJumps(ilka.id())).isEmpty();
  }

  @Test
  void gapsAndRunThroughsStayWithTheirEvent() {
    send(page + "/aim", page + "/aim", "tap", "8", "distance", "5.60");
    send(page + "/run-up", page + "/run-up", "steps", "16", "start", "31", "gap", "12", "side", "behind");
    assertThat(bench.boardLog().gaps(ilka.id())).singleElement().satisfies(g -> assertThat(g.event()).isEqualTo(Event.LONG_JUMP));
    assertThat(bench.runThroughs().runThroughs(ilka.id())).singleElement().satisfies(g -> assertThat(g.event()).isEqualTo(Event.LONG_JUMP));
    assertThat(client.get(page + "/aim").body()).contains("5.60 m").contains("heptathlon");
    assertThat(client.get("/athlete/" + ilka.id() + "/aim").body()).doesNotContain("5.60 m").doesNotContain("heptathlon");
    assertThat(client.get("/athlete/" + ilka.id() + "/run-up").body()).doesNotContain("16 steps from 31");
    for (int i = 0; i < 5; i++) {
      send(page + "/aim", page + "/aim", "tap", "written", "gap", "" + (6 + 2 * i), "distance", "5.6" + i);
    }
    String points = client.get(page + "/aim?goal=heptathlon").body();
    assertThat(points).contains("expected points, best of 3").contains("Attempt by attempt");
    assertThat(client.get(page + "/aim?goal=target&target=14").body()).contains("1 to 10 m");
    assertThat(client.get("/athlete/" + ilka.id() + "/aim?goal=heptathlon").body()).as("no goal of the triple jump").contains("not one that the page offers");
  }

  private MeetSheet made(String scoring, String board) {
    send("/meet?event=long-jump", "/meet", "event", "LONG_JUMP", "name", "Invented meet", "date", "2026-05-12", "board", board, "scoring", scoring, "first", "3", "rounds",
        "6", "finalists", "8", "order", "WORST_FIRST_TWICE", "measure", "CENTIMETRE", "seconds", "60", "wind", "NONE_ABOVE_FOUR_OR_AVERAGE", "athlete",
        String.valueOf(ilka.id()), "rivals", "Bib 4");
    return bench.meets().all().get(0);
  }

  @Test
  void aHeptathlonsLongJumpIsMadeJumpedAndChanged() {
    MeetSheet meet = made("HEPTATHLON", "7");
    assertThat(meet.event()).isEqualTo(Event.LONG_JUMP);
    assertThat(meet.scoring()).isEqualTo(Scoring.HEPTATHLON);
    assertThat(meet.rules().rounds()).isEqualTo(3);
    assertThat(Objects.requireNonNull(meet.rules().combined()).wind()).isEqualTo(CombinedWind.NONE_ABOVE_FOUR_OR_AVERAGE);
    assertThat(meet.board_m()).isEqualTo(2);
    String at = "/meet/" + meet.id();
    // 6.48 m is 1001 points (see CombinedEventsTest)
    HttpResponse<String> r =
        send(at, at + "/attempt", "entrant", String.valueOf(meet.entrants().get(0).id()), "round", "1", "result", "VALID", "distance", "6.48", "wind", "2.4");
    assertThat(r.body()).contains("1001 points").contains("the other 2 up to +3.6 together, or neither above +4.0").contains("A total counts for records by").contains("Equal points share a rank");
    assertThat(send(at, at + "/attempt", "entrant", String.valueOf(meet.entrants().get(0).id()), "round", "2", "result", "VALID", "distance", "11").body())
        .contains("1 to 10 m");
    String edit = client.get(at + "/edit").body();
    assertThat(edit).contains("long jump of the heptathlon").doesNotContain("triple jump, women").contains("second-hand");
    HttpResponse<String> changed =
        client.post(at + "/edit", "csrf", Client.hidden(edit, "csrf"), "was", Client.hidden(edit, "was"), "name", "Invented heptathlon", "date", "2026-05-12", "board",
            "6", "scoring", "HEPTATHLON", "first", "3", "rounds", "3", "finalists", "8", "order", "AS_DRAWN", "measure", "CENTIMETRE", "seconds", "60", "wind", "AVERAGE");
    assertThat(changed.statusCode()).as(changed.body()).isEqualTo(200);
    MeetSheet now = bench.meets().byId(meet.id()).orElseThrow();
    assertThat(now.name()).isEqualTo("Invented heptathlon");
    assertThat(now.board_m()).isEqualTo(1);
    assertThat(Objects.requireNonNull(now.rules().combined()).wind()).isEqualTo(CombinedWind.AVERAGE);
    assertThat(client.get("/meet").body()).contains("Long jump of the heptathlon");
  }

  @Test
  void aLongJumpAloneHasItsRoundsAndABoardOfItsOwn() {
    MeetSheet meet = made("LONG_JUMP_WOMEN", "8");
    assertThat(meet.rules().combined()).isNull();
    assertThat(meet.rules().rounds()).isEqualTo(6);
    assertThat(meet.board_m()).isEqualTo(3);
    int before = bench.meets().all().size();
    made("LONG_JUMP_WOMEN", "0");
    assertThat(bench.meets().all()).as("13 m is no long-jump board").hasSize(before);
  }

  /** A drill of the long jump comes with the athlete's foot and its steps, on the athlete's page and in the plan. */
  @Test
  void theDrillsAreChosenWithTheirSteps() {
    String athlete = "/athlete/" + ilka.id();
    assertThat(client.get(athlete).body()).contains("value=\"R@6\"").contains("Pop-up");
    String picked = client.get(athlete + "?sequence=RL+x5&steps=2&pick=R@6").body();
    assertThat(picked).contains("id=\"sequence\" name=\"sequence\" value=\"R\"").contains("value=\"6\" checked");
    String plan = client.get("/plan").body();
    HttpResponse<String> added = client.post("/plan", "csrf", Client.hidden(plan, "csrf"), "day", Client.hidden(plan, "day"), "title", "", "action", "add:POP_UP");
    assertThat(added.statusCode()).isEqualTo(200);
    assertThat(added.body()).contains("Pop-up").contains("value=\"6\"");
  }

  /** What a clip's page hands over stands in the form and is kept when it is sent, in the units of the form. */
  @Test
  void aTakeOffFromAClipIsFilledIn() {
    String filled = client.get(page + "?foot=LEFT&forward=8.31&up=3.10&high=1.12&low=0.61&ahead=41+cm&into=8.90&touchdown=38+cm&distance=9").body();
    assertThat(filled).contains("<details open>").contains("name=\"forward\" inputmode=\"text\" value=\"8.31\"").contains("value=\"38 cm\"").contains("value=\"LEFT\" checked");
    assertThat(filled).as("only the take-off").contains("name=\"distance\" inputmode=\"decimal\" value=\"\"");
    assertThat(bench.longJumps().longJumps(ilka.id())).isEmpty();
    send(page, page, "distance", "6.40", "foot", "LEFT", "forward", "8.31", "up", "3.10", "high", "1.12", "low", "0.61", "ahead", "41 cm", "into", "8.90", "touchdown", "38 cm");
    assertThat(Objects.requireNonNull(bench.longJumps().longJumps(ilka.id()).get(0).takeOff()).touchdown_m()).isEqualTo(.38);
  }
}
