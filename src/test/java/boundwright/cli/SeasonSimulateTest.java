package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How sure a plan is, by the command line. */
class SeasonSimulateTest {
  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(Path.of(""));

  @BeforeEach
  void planned() throws IOException {
    terminal = new Terminal(folder);
    Files.writeString(folder.resolve("season.json"), terminal.run("season", "example", "--from", "2026-09-26").out());
    assertThat(terminal.run("season", "plan", "season.json", "--seconds", "0", "--out", "plan.json").exit()).isZero();
  }

  @Test
  void chancesLoadsAndWhatElseBuysAreAnswered() {
    Said said =
        terminal.run("season", "simulate", "season.json", "plan.json", "--seasons", "40", "--what-if", "hour:gym:tuesday", "--what-if", "without:early", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.json().get("seasons").asInt()).isEqualTo(40);
    assertThat(said.json().get("refusedDays").asInt()).isZero();
    assertThat(said.json().get("squadLoad")).hasSize(44);
    assertThat(said.json().get("athletes").get(0).get("approaches")).hasSize(6);
    assertThat(said.json().get("whatIf")).hasSize(2);
    assertThat(said.json().get("whatIf").get(0).get("squad").get(2).get("standardError").asDouble()).isPositive();
    assertThat(terminal.run("season", "simulate", "season.json", "plan.json", "--seasons", "40", "--what-if", "hour:gym:tuesday", "--what-if", "without:early", "--json").out())
        .as("same seed")
        .isEqualTo(said.out());
    Said words = terminal.run("season", "simulate", "season.json", "plan.json", "--seasons", "5", "--today", "2027-03-01", "--attendance", "0.8");
    assertThat(words.out()).contains("5 simulated seasons", "Days refused after mending: 0", "(planned ", "Load of the squad by week").doesNotContainPattern(WordsTest.NO_COACH_SAYS);
  }

  @Test
  void whatCannotBeIsRefusedInWords() throws IOException {
    refused("--seasons", "0", "0 simulated seasons", "1 to 100000");
    refused("--seasons", "1000000", "1000000", "1000 is usual");
    refused("--what-if", "faster", "'faster' cannot be asked", "hour:PLACE:WEEKDAY");
    refused("--what-if", "hour:moon:tuesday", "moon", "Its places");
    refused("--what-if", "without:moon", "moon", "Its meets");
    refused("--what-if", "without:summer", "nobody's usual meet", "plan anew");
    refused("--attendance", "90", "90", "0 to 1");
    refused("--today", "2020-01-01", "2020-01-01", "outside the season");
    Files.writeString(folder.resolve("other.json"), Files.readString(folder.resolve("plan.json")).replace("Wren Samphire", "Bram Curlew"));
    Said other = terminal.run("season", "simulate", "season.json", "other.json");
    assertThat(other.exit()).isEqualTo(2);
    assertThat(other.err()).contains("not one of this season", "Wren Samphire");
  }

  private void refused(String option, String value, String... words) {
    Said said = terminal.run("season", "simulate", "season.json", "plan.json", option, value);
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.err()).contains(words);
  }
}
