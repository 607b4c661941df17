package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.cli.Terminal.Said;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The names of the JSON fields are those asked for in the project's issue on the main job; the figures are the advisor's. */
class MarksCommandTest {
  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private MarkAdvice advice(String sequence, int steps) {
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      Athlete orla = bench.athletes().byName("Orla Tamsin").orElseThrow();
      return bench.advisor().advise(orla, Sequence.parse(sequence), steps, CoachSettings.DEFAULT);
    }
  }

  @Test
  void jsonHasTheAgreedFields() {
    Said said = terminal.run("marks", "--athlete", "orla tamsin", "--sequence", "RRL RRL", "--steps", "4", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    JsonNode json = said.json();
    MarkAdvice advice = advice("RRL RRL", 4);
    assertThat(json.get("sequence").asText()).isEqualTo("RRL RRL");
    assertThat(json.get("approachSteps").asInt()).isEqualTo(4);
    assertThat(json.at("/contacts/left").asInt()).isEqualTo(2);
    assertThat(json.at("/contacts/right").asInt()).isEqualTo(4);
    assertThat(json.get("markToSand_m").asDouble()).isCloseTo(advice.markToSand_m(), within(0.0006));
    assertThat(json.get("startToMark_m").asDouble()).isCloseTo(advice.startToMark().p50(), within(0.0006));
    assertThat(json.at("/chance/counts").asDouble()).isEqualTo(advice.inHundred() / 100.0);
    assertThat(json.at("/chance/counts").asDouble() >= json.at("/chance/asked").asDouble())
        .as("decided on the figure that is printed")
        .isEqualTo(json.at("/window_m/min").isNumber());
    assertThat(json.get("positions")).hasSize(6);
    assertThat(json.at("/positions/2/contact").asInt()).isEqualTo(3);
    assertThat(json.at("/positions/2/foot").asText()).isEqualTo("L");
    assertThat(json.at("/positions/2/p95_m").asDouble()).isCloseTo(advice.forecast().position(3).p95(), within(0.0006));
    assertThat(json.at("/landing/p05_m").asDouble()).isCloseTo(advice.forecast().landing().p05(), within(0.0006));
    assertThat(json.at("/landing/p50_m").asDouble()).isGreaterThan(json.at("/positions/5/p50_m").asDouble());
    assertThat(json.get("warnings").isArray()).isTrue();
    assertThat(json.get("extrapolated").asBoolean()).isTrue();
    assertThat(json.get("repsAtRung").asInt()).isZero();
    assertThat(json.get("from").asText()).isNotBlank();
    assertThat(json.get("sure").asText()).isNotBlank();
  }

  /** An athlete nobody has logged, far beyond what can be known: no mark works, and null says so. */
  @Test
  void anEmptyWindowIsNull() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RL x10", "--steps", "12", "--chance", "0.99", "--json");
    assertThat(said.exit()).isZero();
    JsonNode window = said.json().get("window_m");
    assertThat(window.has("min")).isTrue();
    assertThat(window.get("min").isNull()).isTrue();
    assertThat(window.get("max").isNull()).isTrue();
    assertThat(said.json().get("openers")).isNotEmpty();
    assertThat(said.json().get("openers").findValuesAsText("way"))
        .isSubsetOf("fewer_contacts", "another_rung", "onto_grass");
  }

  @Test
  void anOpenWindowHoldsTheMark() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "R", "--steps", "0", "--chance", "0.5", "--json");
    JsonNode json = said.json();
    assertThat(json.at("/window_m/min").isNumber()).as(said.out()).isTrue();
    assertThat(json.get("markToSand_m").asDouble())
        .isBetween(json.at("/window_m/min").asDouble(), json.at("/window_m/max").asDouble());
  }

  @Test
  void theMarkComesFirstInTheCoachsUnit() {
    MarkAdvice advice = advice("RRL", 4);
    Said metres = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL");
    assertThat(metres.out()).startsWith("MARK        " + LengthUnit.METRES.write(advice.markToSand_m()) + " from the sand");
    Said feet = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--unit", "ft");
    assertThat(feet.out())
        .startsWith("MARK        " + LengthUnit.FEET_INCHES.write(advice.markToSand_m()) + " from the sand")
        .doesNotContainPattern("\\d m\\b");
  }

  @Test
  void stepsAreTheAthletesRungUnlessGiven() {
    assertThat(terminal.run("marks", "--athlete", "Zoë Brandel", "--sequence", "RRL", "--json").json().get("approachSteps").asInt())
        .isEqualTo(8);
    assertThat(terminal.run("marks", "--athlete", "piet quill", "--sequence", "RRL").out()).contains("from standing");
  }

  @Test
  void onTheFlatItGivesGroundAndSaysNothingOfSand() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RL x5", "--flat");
    assertThat(said.out())
        .startsWith("GROUND      " + LengthUnit.METRES.write(advice("RL x5", 4).groundNeeded_m()))
        .doesNotContain("sand");
    JsonNode json = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RL x5", "--flat", "--json").json();
    assertThat(json.get("groundNeeded_m").asDouble()).isCloseTo(advice("RL x5", 4).groundNeeded_m(), within(0.0006));
    assertThat(json.get("markToSand_m").isNull()).isTrue();
    assertThat(json.get("warnings").toString()).doesNotContain("sand");
  }

  @ParameterizedTest(name = "{0} {1} {2}: {3}")
  @CsvSource(
      delimiter = '|',
      value = {
        "''|4|0.9|0 contacts",
        "RXL|4|0.9|Character 2 ('X')",
        "R x61|4|0.9|limit is 60",
        "RRL|-1|0.9|Approach steps of -1",
        "RRL|40|0.9|Approach steps of 40",
        "RRL|4|1.0|A chance of 1.0",
        "RRL|4|0.1|A chance of 0.1",
      })
  void badInputIsRefusedInASentence(String sequence, String steps, String chance, String why) {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", sequence, "--steps", steps, "--chance", chance);
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains(why).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(said.out()).isEmpty();
  }

  @Test
  void aSentenceOfTheRoomsIsShownAsItIs() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RXL");
    assertThat(said.err().lines().toList().get(2)).isEqualTo("   ^");
  }

  @Test
  void anUnknownAthleteIsAskedBack() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamson", "--sequence", "RRL");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("No athlete is called 'Orla Tamson'").contains("Did you mean Orla Tamsin?");
    assertThat(terminal.run("marks", "--athlete", "Wilhelmina", "--sequence", "RRL").err())
        .contains("Orla Tamsin, Piet Quill, Zoë Brandel");
  }

  @Test
  void aMistypedFolderIsNotMade() {
    Said said = terminal.run("marks", "--data", "dta", "--athlete", "Orla Tamsin", "--sequence", "RRL");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("There is no data folder");
    assertThat(folder.resolve("dta")).doesNotExist();
  }

  @Test
  void theFolderCanStandInTheEnvironment() throws Exception {
    Files.move(folder.resolve("data"), folder.resolve("elsewhere"));
    terminal.environment.put("BOUNDWRIGHT_DATA", "elsewhere");
    assertThat(terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL").exit()).isZero();
  }

  @Test
  void aDamagedDatabaseIsSaidAndLeftAlone() throws Exception {
    Path database;
    try (var files = Files.list(folder.resolve("data"))) {
      database = files.filter(f -> f.toString().endsWith(".db")).findFirst().orElseThrow();
    }
    byte[] broken = "this is no database, whatever its name says".repeat(50).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    Files.write(database, broken);
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("damaged").doesNotContain("Exception");
    assertThat(database).hasBinaryContent(broken);
  }

  @Test
  void concreteIsWarnedOf() {
    Said said = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--surface", "concrete");
    assertThat(said.out()).contains("Never on concrete");
    Said unknown = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--surface", "sponge");
    assertThat(unknown.exit()).isEqualTo(2);
    assertThat(unknown.err()).contains("sprung floor");
  }
}
