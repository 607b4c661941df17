package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The order of a session from the document's own file and from today's plan, and what is said of bad input. */
class SessionOrderCommandTest {
  @TempDir Path folder = Path.of("");

  private String documented() throws IOException {
    Matcher m = Pattern.compile("```json\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(Path.of("docs", "formats.md")));
    assertThat(m.find()).isTrue();
    return m.group(1);
  }

  private Path file(String text) throws IOException {
    return Files.writeString(folder.resolve("session.json"), text);
  }

  @Test
  void theDocumentsFileIsOrdered() throws IOException {
    Terminal terminal = new Terminal(folder);
    file(documented());
    Said said = terminal.run("session", "order", "--file", "session.json");
    assertThat(said.err()).isEmpty();
    assertThat(said.exit()).isZero();
    assertThat(said.out()).startsWith("Ends 17:").contains("17:00").contains("at the sand").doesNotContainPattern(WordsTest.NO_COACH_SAYS);
    JsonNode json = terminal.run("session", "order", "--file", "session.json", "--json").json();
    // 4 x 8 reps into sand and 3 x 2 on the grass: Zoe has done hers
    assertThat(json.get("reps")).hasSize(38);
    assertThat(json.get("fits").asBoolean()).isTrue();
    assertThat(json.get("leftOut")).isEmpty();
    // Otis and Mara share the marks from 6.2 to 6.3 m, Piet and Zoe those from 7.1 to 7.3 m: two tapes (worked)
    assertThat(json.get("tapes")).hasSize(2);
  }

  @Test
  void whatIsLeftOutWhenTimeIsLostOrRainComes() throws IOException {
    Terminal terminal = new Terminal(folder);
    file(documented());
    JsonNode less = terminal.run("session", "order", "--file", "session.json", "--minutes", "27", "--lost", "15", "--json").json();
    assertThat(less.get("limit_s").asInt()).isEqualTo(12 * 60);
    assertThat(less.get("finish_s").asInt()).isLessThanOrEqualTo(12 * 60);
    assertThat(less.get("leftOut").get(0).get("kind").asText()).isEqualTo("set");
    assertThat(less.get("legsLevel").asBoolean()).isTrue();
    Said rain = terminal.run("session", "order", "--file", "session.json", "--closed", "grass");
    assertThat(rain.out()).contains("Leave out RL x5").contains("no place is open for it");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "\"minutes\": 45; \"minutes\": 450; 450",
        "\"surface\": \"grass\"; \"surface\": \"mud\"; mud",
        "\"surface\": \"grass\"; \"surface\": \"concrete\"; concrete",
        "\"helpers\": []; \"helper\": []; 'helper'",
        "\"sequence\": \"RRL\"; \"sequence\": \"RXL\"; RXL",
        "\"works\": [null, [5.9, 6.4], [5.8, 6.3]]; \"works\": [null, [6.9, 6.4], [5.8, 6.3]]; 6.9",
        "\"works\": [null, [5.9, 6.4], [5.8, 6.3]]; \"works\": [[5.9, 6.4]]; 3 drills",
        "\"steps\": 4, \"works\": [null, [5.9; \"steps\": 44, \"works\": [null, [5.9; 44",
        "\"coaches\": 1; \"coaches\": 0; watched",
        "\"name\": \"Mara\"; \"name\": \"Otis\"; 'Otis'",
        "\"restFull\": 300; \"restFull\": 9000; 9000 s",
        "\"begins\": \"17:00\"; \"begins\": \"five\"; 'five'",
        "{; (; line 1"
      })
  void badFilesAreAnsweredInWords(String from, String to, String named) throws IOException {
    file(documented().replaceFirst(Pattern.quote(from), Matcher.quoteReplacement(to)));
    Said said = new Terminal(folder).run("session", "order", "--file", "session.json");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains(named).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(said.out()).isEmpty();
  }

  @Test
  void badOptionsAreAnsweredInWords() throws IOException {
    Terminal terminal = new Terminal(folder);
    file(documented());
    for (String[] asked :
        new String[][] {
          {"--lost", "45", "no time is left"}, {"--lost", "-3", "-3"}, {"--closed", "sun", "'sun'"}, {"--from", "soon", "'soon'"}, {"--pits", "2", "Change the file"},
          {"--minutes", "0", "1 to 300"}
        }) {
      Said said = terminal.run("session", "order", "--file", "session.json", asked[0], asked[1]);
      assertThat(said.exit()).as(asked[0]).isEqualTo(2);
      assertThat(said.err()).contains(asked[2]);
    }
    assertThat(terminal.run("session", "order", "--file", "nowhere.json").err()).contains("no file");
  }

  @Test
  void fourHundredAthletesAreTooMany() throws IOException {
    StringBuilder athletes = new StringBuilder();
    for (int i = 0; i < 400; i++) {
      athletes.append(i == 0 ? "" : ",").append("{\"name\": \"A").append(i).append("\"}");
    }
    file("{\"places\": [{\"name\": \"Pit\", \"for\": \"sand\", \"surface\": \"track\"}], \"drills\": [{\"sequence\": \"RRL\"}], \"athletes\": [" + athletes + "]}");
    Said said = new Terminal(folder).run("session", "order", "--file", "session.json");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("400 athletes").contains("80");
  }

  @Test
  void todaysPlanIsOrderedAndKeptForTheRunway() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    assertThat(terminal.run("session", "order").err()).contains("no drill");
    LocalDate today = LocalDate.now(Terminal.CLOCK);
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      bench.settings().keep(today, new DayPlan("", List.of(new Drill(Sequence.parse("RL x5"), 0, 1, 2, false), new Drill(Sequence.parse("RRL x2"), null, 1, 2, true))));
    }
    JsonNode json = terminal.run("session", "order", "--keep", "--from", "17:00", "--json").json();
    assertThat(json.get("begins").asText()).isEqualTo("17:00");
    assertThat(json.get("reps")).hasSize(12);
    assertThat(json.get("proven").asBoolean()).isTrue();
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      assertThat(bench.order().order(today)).hasSize(12);
      assertThat(bench.order().order(today.plusDays(1))).isEmpty();
    }
    assertThat(terminal.run("session", "order", "--closed", "grass").out()).contains("Leave out RL x5");
  }
}
