package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.track.Group;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The squad, who is here, and the plans of the days, as plain forms: everything here works without scripts. */
class SquadPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
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

  private String csrf() {
    return Client.hidden(client.get("/plan").body(), "csrf");
  }

  private Athlete add(String name, Level level) {
    return bench.athletes().add(new Athlete(0, name, level, Foot.RIGHT, 0));
  }

  private List<String> names() {
    List<String> out = new ArrayList<>();
    Matcher m = Pattern.compile("<tr data-name=\"([^\"]+)\"").matcher(client.get("/").body());
    while (m.find()) {
      out.add(m.group(1));
    }
    return out;
  }

  @Test
  void aListAddsASquadOnceAndWhatCannotBeReadStaysInTheField() {
    HttpResponse<String> all =
        client.post("/athletes", "csrf", csrf(), "list", "Wren, beginner\nOtis;adv;4\nMabel\tinter\tL\n\n  Rafi  ", "level", "BEGINNER", "group", "Young");
    assertThat(all.uri().getPath()).isEqualTo("/");
    assertThat(bench.athletes().all()).extracting(Athlete::name).containsExactly("Mabel", "Otis", "Rafi", "Wren");
    assertThat(bench.athletes().byName("Otis").orElseThrow()).matches(a -> a.level() == Level.ADVANCED && a.rung() == 4);
    assertThat(bench.athletes().byName("Mabel").orElseThrow()).matches(a -> a.level() == Level.INTERMEDIATE && a.takeOffFoot() == Foot.LEFT);
    assertThat(bench.attendance().groups()).singleElement().matches(g -> g.name().equals("Young") && g.members().size() == 4);
    assertThat(bench.settings().usual()).as("a new squad begins with a plan").isEqualTo(DayPlan.FIRST);
    HttpResponse<String> again = client.post("/athletes", "csrf", csrf(), "list", "WREN, advanced\nTovi, b\nIvo, quick", "level", "BEGINNER");
    assertThat(again.statusCode()).isEqualTo(422);
    assertThat(again.body()).contains("There already, left as they are: Wren").contains("'quick' is no level").contains(">Ivo, quick\n</textarea>");
    assertThat(bench.athletes().byName("wren").orElseThrow().level()).isEqualTo(Level.BEGINNER);
    assertThat(bench.athletes().all()).hasSize(5);
    assertThat(client.post("/athletes", "csrf", csrf(), "list", " ", "level", "BEGINNER").statusCode()).isEqualTo(422);
  }

  @Test
  void aNewSquadGetsATapeEach() {
    client.post("/athletes", "csrf", csrf(), "list", "Wren, b\nOtis, i\nMabel, a", "level", "BEGINNER");
    String squad = client.get("/").body();
    assertThat(squad).contains("bout 2 in 3 land in the sand.").contains("Three reps will settle it.").doesNotContain("shut").doesNotContain("window");
    String tapes = client.get("/tapes").body();
    assertThat(tapes).contains("Wren").contains("Otis").contains("Mabel").doesNotContain("No tape serves");
  }

  @Test
  void whoIsAwayHasNoTapeNoLineAndNoCard() {
    Athlete ada = add("Ada Fenn", Level.BEGINNER);
    Athlete ben = add("Ben Holm", Level.BEGINNER);
    add("Cleo Marsh", Level.ADVANCED);
    bench.settings().keep(DayPlan.FIRST);
    Group two = bench.attendance().keep(new Group(0, "Two", Set.of(ada.id(), ben.id())));
    client.post("/here", "csrf", csrf(), "action", "only:" + two.id());
    assertThat(client.get("/").body()).contains("2 of 3 here").doesNotContain("Cleo Marsh");
    assertThat(client.get("/tapes").body()).contains("Ada Fenn").doesNotContain("Cleo Marsh");
    assertThat(client.get("/card").body()).contains("Ada Fenn").doesNotContain("Cleo Marsh");
    // a search shows some; those who were not shown stay as they are
    client.post("/here", "csrf", csrf(), "shown", String.valueOf(ada.id()));
    assertThat(names()).containsExactly("Ben Holm");
    client.post("/here", "csrf", csrf(), "action", "all");
    assertThat(names()).hasSize(3);
    assertThat(client.get("/?q=olm").body()).contains("Ben Holm").doesNotContain("Ada Fenn");
    assertThat(client.get("/?group=" + two.id()).body()).doesNotContain("Cleo Marsh");
    assertThat(client.get("/here?q=fenn").body()).contains("Ada Fenn").doesNotContain("Ben Holm");
  }

  @Test
  void theMatrixIsSortedByItsHeads() {
    add("Ada Fenn", Level.ADVANCED);
    add("Ben Holm", Level.BEGINNER);
    add("Cleo Marsh", Level.INTERMEDIATE);
    bench.settings().keep(new DayPlan("", List.of(new Drill(Sequence.parse("RRL"), 0, 1, 2, true), new Drill(Sequence.parse("RL x5"), 0, 1, 2, false))));
    assertThat(names()).containsExactly("Ada Fenn", "Ben Holm", "Cleo Marsh");
    String byMark = client.get("/?sort=mark1").body();
    assertThat(byMark.indexOf("data-name=\"Ben")).isLessThan(byMark.indexOf("data-name=\"Cleo"));
    assertThat(byMark.indexOf("data-name=\"Cleo")).isLessThan(byMark.indexOf("data-name=\"Ada"));
    assertThat(byMark).containsPattern("aria-sort=\"ascending\" class=\"chosen\"").contains("/?sort=mark1&amp;down=1");
    String down = client.get("/?sort=mark1&down=1").body();
    assertThat(down.indexOf("data-name=\"Ada")).isLessThan(down.indexOf("data-name=\"Ben"));
    assertThat(down).contains("aria-sort=\"descending\"");
    for (String odd : List.of("mark99", "last2", "load", "nonsense", "mark0", "chance1")) {
      assertThat(client.get("/?sort=" + odd).statusCode()).as(odd).isEqualTo(200);
    }
  }

  @Test
  void everyDayHasAPlanThatCanBeCopied() {
    add("Ada Fenn", Level.BEGINNER);
    String[] two = {"csrf", csrf(), "day", "2026-05-13", "title", "Hall", "place", "Sports hall", "surface", "SPRUNG_FLOOR", "sequence", "RRL",
      "steps", "", "sets", "2", "reps", "3", "sand", "yes"};
    assertThat(client.post("/plan", two).body()).contains("Kept.").contains("Sports hall");
    DayPlan hall = bench.settings().plan(TODAY.plusDays(1));
    assertThat(hall.place()).isEqualTo(new DayPlan.Place("Sports hall", Surface.SPRUNG_FLOOR));
    assertThat(bench.settings().plan().drills()).isEmpty();
    assertThat(client.get("/plan").body()).as("tomorrow beside today").contains("Sports hall, ").contains("Tomorrow, Wed 13 May 2026");
    client.post("/plan", "csrf", csrf(), "action", "copy:2026-05-13");
    assertThat(bench.settings().plan()).isEqualTo(hall);
    client.post("/plan", "csrf", csrf(), "action", "drop");
    assertThat(bench.settings().own(TODAY)).isEmpty();
    client.post("/plan", "csrf", csrf(), "action", "first");
    assertThat(bench.settings().plan().drills()).isEqualTo(DayPlan.FIRST.drills());
    assertThat(client.get("/plan").body()).contains("<b>44</b> contacts");
    assertThat(client.get("/plan?day=soon").statusCode()).isEqualTo(422);
    String[] much = two.clone();
    much[3] = "2026-05-14";
    much[17] = "20";
    String[] partial = {"HX-Request", "true"};
    HttpResponse<String> sums = client.post("/plan", partial, much);
    assertThat(sums.statusCode()).isEqualTo(200);
    assertThat(sums.body()).startsWith("<div id=\"sums\"").contains("<b>120</b> contacts").contains("refused");
    much[11] = "RQL";
    HttpResponse<String> bad = client.post("/plan", partial, much);
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("Drill 1:").contains("Not kept.");
    assertThat(bench.settings().plan(TODAY.plusDays(2)).contacts(Foot.RIGHT)).as("what was kept stays").isEqualTo(80);
  }
}
