package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import boundwright.load.GuardSettings;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.check.GuardCheck;
import boundwright.store.season.PlanFile;
import boundwright.store.season.SeasonFile;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season from its file to a plan, a mended plan and the reasons, by the command line alone. */
class SeasonPlanningTest {
  @TempDir Path folder = Path.of("");

  private Terminal withExample() throws IOException {
    Terminal terminal = new Terminal(folder);
    Files.writeString(folder.resolve("season.json"), terminal.run("season", "example", "--from", "2026-09-26").out());
    return terminal;
  }

  @Test
  void aPlanIsMadeMendedAndExplained() throws IOException {
    Terminal terminal = withExample();
    assertThat(terminal.run("season", "plan", "season.json", "--seconds", "0").out()).contains("No day is refused").doesNotContainPattern(WordsTest.NO_COACH_SAYS);
    Said made = terminal.run("season", "plan", "season.json", "--seconds", "0", "--out", "plan.json", "--json");
    assertThat(made.exit()).as(made.err()).isZero();
    assertThat(made.json().get("refused")).isEmpty();
    assertThat(made.json().get("score").get(0).get("value").asLong()).as("refused").isZero();
    SeasonInput season = SeasonFile.read(Files.readAllBytes(folder.resolve("season.json")), GuardSettings.DEFAULT);
    SeasonPlan plan = PlanFile.read(Files.readAllBytes(folder.resolve("plan.json")));
    assertThat(new GuardCheck(season).refused(plan)).as("what was written, read again").isEmpty();
    assertThat(made.json().get("days").asInt()).isEqualTo(plan.years().stream().mapToInt(y -> y.days().size()).sum());

    SeasonPlan.Year first = plan.years().get(0);
    PlannedDay missed = first.days().get(10);
    Said mended =
        terminal.run(
            "season", "mend", "season.json", "plan.json", "--today", missed.date().plusDays(1).toString(), "--missed", first.athlete() + ":" + missed.date(),
            "--out", "plan2.json", "--json");
    assertThat(mended.exit()).as(mended.err() + mended.out()).isZero();
    for (JsonNode d : mended.json().get("differences")) {
      assertThat(d.get("athlete").asText()).isEqualTo(first.athlete());
      assertThat(d.get("date").asText()).isGreaterThan(missed.date().toString());
      assertThat(d.get("before")).isNotEqualTo(d.get("after"));
    }
    assertThat(PlanFile.read(Files.readAllBytes(folder.resolve("plan2.json"))).years()).hasSameSizeAs(plan.years());

    Said day = terminal.run("season", "explain", "season.json", "plan.json", "--athlete", first.athlete(), "--date", missed.date().toString(), "--json");
    assertThat(day.json().get("session").asText()).contains(missed.session().contacts() + " contacts");
    assertThat(day.json().get("shaped")).isNotEmpty();
    assertThat(terminal.run("season", "explain", "season.json", "plan.json", "--json").json().get("unmet").isArray()).isTrue();
  }

  @Test
  void whatCannotBeIsRefusedInWords() throws IOException {
    Terminal terminal = withExample();
    String text = Files.readString(folder.resolve("season.json"));
    Files.writeString(folder.resolve("early.json"), text.replaceFirst("(\"date\" *: *\")\\d{4}", "$12020"));
    Files.write(folder.resolve("plan.json"), "here before".getBytes(StandardCharsets.UTF_8));

    refused(terminal.run("season", "plan", "nowhere.json"), "nowhere.json", "season example");
    refused(terminal.run("season", "plan", "early.json", "--seconds", "0"), "2020", "outside the season");
    refused(terminal.run("season", "plan", "season.json", "--seconds", "-3"), "-3 s", "0 to 3600");
    refused(terminal.run("season", "plan", "season.json", "--seconds", "0", "--out", "plan.json"), "is there already", "--force");
    assertThat(folder.resolve("plan.json")).hasContent("here before");
    refused(terminal.run("season", "mend", "season.json", "season.json"), "boundwright season", "boundwright plan");
    refused(terminal.run("season", "explain", "season.json", "season.json", "--date", "2026-10-01"), "--athlete");
  }

  @Test
  void whatHappenedIsRefusedInWordsToo() throws IOException {
    Terminal terminal = withExample();
    assertThat(terminal.run("season", "plan", "season.json", "--seconds", "0", "--out", "plan.json").exit()).isZero();
    String who = PlanFile.read(Files.readAllBytes(folder.resolve("plan.json"))).years().get(0).athlete();
    refused(terminal.run("season", "mend", "season.json", "plan.json", "--missed", "Nobody Here:2026-10-01"), "Nobody Here", "as in its file");
    refused(terminal.run("season", "mend", "season.json", "plan.json", "--missed", who), "colon");
    refused(terminal.run("season", "mend", "season.json", "plan.json", "--missed", who + ":soon"), "soon");
    refused(terminal.run("season", "mend", "season.json", "plan.json", "--closed", "moon:2026-10-01"), "moon", "grass");
    refused(terminal.run("season", "explain", "season.json", "plan.json", "--athlete", who, "--date", "2020-01-01"), "2020-01-01", "outside the season");
  }

  private static void refused(Said said, String... words) {
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.err()).contains(words).doesNotContain("Exception");
  }
}
