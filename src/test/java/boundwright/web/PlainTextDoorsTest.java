package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.cli.BoundwrightCommand;
import boundwright.cli.Surroundings;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import boundwright.runway.DayPlan;
import boundwright.store.RepImport;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A name that breaks paper comes in by no door; one that is in already is printed all the same. */
class PlainTextDoorsTest {
  private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-12T15:00:00Z"), ZoneOffset.UTC);
  private static final String[] BAD = {"\u0000", "\u0001", "\u000B", "\u001F", "\u0085", "\uFFFE", "\uFFFF", "\u202E", "\u2066"};

  @Test
  void noDoorTakesOne(@TempDir Path dir) {
    try (Workbench bench = Workbench.open(dir, CLOCK);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      Client client = new Client(server.port());
      String csrf = Client.hidden(client.get("/athlete/new").body(), "csrf");
      for (String bad : BAD) {
        String name = "Ada" + bad + "Fenn";
        String shown = String.format("U+%04X", (int) bad.charAt(0));
        var form = client.post("/athlete/new", "csrf", csrf, "name", name, "level", "BEGINNER", "foot", "L", "rung", "0");
        assertThat(form.statusCode()).as(shown).isEqualTo(422);
        assertThat(form.body()).contains(shown);
        var many = client.post("/athletes", "csrf", csrf, "list", "Bo\n" + name);
        assertThat(many.statusCode()).as(shown).isEqualTo(422);
        assertThat(many.body()).contains(shown);
        var meet = client.post("/meet", "csrf", csrf, "name", name);
        assertThat(meet.statusCode()).as(shown).isEqualTo(422);
        assertThat(meet.body()).contains(shown);
        if (Character.isWhitespace(bad.charAt(0)) && bad.charAt(0) < 0x1C) {
          continue; // inside the program it is a space by then; in a file it was refused, as the form did
        }
        assertThatThrownBy(() -> bench.athletes().add(new Athlete(0, name, Level.BEGINNER, Foot.LEFT, 0)))
            .as(shown)
            .isInstanceOf(RefusedException.class)
            .hasMessageContaining(shown);
        RepImport.Result csv =
            new RepImport(bench)
                .take(() -> new StringReader("date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome\n2026-04-12,\"" + name + "\",RRL,4,track,,,in\n"), new RepImport.Order(true, false, ""));
        assertThat(csv.problems()).as(shown).singleElement().satisfies(p -> assertThat(p.why()).contains(shown));
        StringWriter said = new StringWriter();
        Surroundings line = new Surroundings(CLOCK, dir, Map.of(), new PrintWriter(new StringWriter()), new PrintWriter(said), url -> {});
        assertThat(BoundwrightCommand.run(line, "pain", "--athlete", name)).as(shown).isEqualTo(2);
        // nobody is called so, which alone is refused with 2: the sentence tells what refused it
        assertThat(said.toString()).contains(shown);
      }
      assertThat(bench.athletes().all()).isEmpty();
    }
  }

  @Test
  void onesThatAreInAlreadyArePrinted(@TempDir Path dir) throws Exception {
    try (Workbench bench = Workbench.open(dir, CLOCK)) {
      bench.athletes().add(new Athlete(0, "Ada", Level.BEGINNER, Foot.LEFT, 0));
      bench.settings().keep(DayPlan.FIRST);
    }
    try (var c = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("boundwright.db"));
        var s = c.prepareStatement("UPDATE athlete SET name = ?")) {
      s.setString(1, "Ada" + String.join("x", BAD) + "Fenn");
      s.execute();
    }
    try (Workbench bench = Workbench.open(dir, CLOCK);
        WebServer server = WebServer.start(bench, "127.0.0.1", 0)) {
      Client client = new Client(server.port());
      for (String paper : new String[] {"/card.pdf", "/athlete/1/report.pdf"}) {
        var answer = client.get(paper);
        assertThat(answer.statusCode()).as("%s %s", paper, answer.body()).isEqualTo(200);
        assertThat(answer.body()).startsWith("%PDF");
      }
      assertThat(client.get("/").statusCode()).isEqualTo(200);
      assertThat(client.get("/runway/parcel").statusCode()).isEqualTo(200);
    }
  }
}
