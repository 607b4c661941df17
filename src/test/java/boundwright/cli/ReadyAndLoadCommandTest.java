package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSquad;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The two commands over the invented squad, in which every kind of answer is met. */
class ReadyAndLoadCommandTest {
  @TempDir private Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      DemoSquad.fill(bench);
    }
  }

  private JsonNode json(String... arguments) {
    Terminal.Said said = terminal.run(arguments);
    assertThat(said.exit()).as(said.err()).isZero();
    return said.json();
  }

  @Test
  void readyPrintsTheAnswerWithItsEvidence() {
    JsonNode a = json("ready", "--athlete", "wren samphire", "--json");
    assertThat(a.get("athlete").asText()).isEqualTo("Wren Samphire");
    assertThat(a.get("rung").asInt()).isEqualTo(4);
    assertThat(a.get("answer").asText()).isEqualTo("add-two-steps");
    assertThat(a.get("evidence")).hasSize(8);
    for (JsonNode e : a.get("evidence")) {
      assertThat(e.get("met").asBoolean()).isTrue();
      assertThat(e.get("name").asText()).isNotBlank();
      assertThat(e.get("value").asText()).isNotBlank();
      assertThat(e.get("needed").asText()).isNotBlank();
      assertThat(e.get("source").asText()).isNotBlank();
    }
    assertThat(a.get("families")).hasSize(3);
  }

  @Test
  void theSquadShowsEveryKindOfAnswerAndWhoNeedsTheCoachFirst() {
    JsonNode squad = json("ready", "--json");
    assertThat(squad).hasSize(8);
    Set<String> answers = new HashSet<>();
    squad.forEach(a -> answers.add(a.get("answer").asText()));
    assertThat(answers).containsExactlyInAnyOrder("add-two-steps", "stay", "go-back");
    assertThat(squad.get(0).get("athlete").asText()).isEqualTo("Tovi Plover");
    assertThat(squad.get(0).get("need").asText()).isEqualTo("should rest");
    assertThat(squad.get(0).get("guard").asText()).isEqualTo("refused");
  }

  @Test
  void loadSaysWhatTheGuardFoundAndCountsTheLegs() {
    JsonNode a = json("load", "--athlete", "Tovi Plover", "--json");
    assertThat(a.get("answer").asText()).isEqualTo("refused");
    assertThat(a.get("held").asBoolean()).isTrue();
    JsonNode hold = a.at("/findings/0");
    assertThat(a.at("/soFar/findings/0")).isEqualTo(hold);
    assertThat(hold.get("rule").asText()).isEqualTo("medical hold");
    assertThat(hold.get("mayBeOverridden").asBoolean()).isFalse();
    assertThat(hold.get("source").asText()).isNotBlank();
    assertThat(a.get("weeks")).hasSize(6);
    int legs = 0;
    for (JsonNode w : a.get("weeks")) {
      int both = w.get("contacts").get("right").asInt() + w.get("contacts").get("left").asInt();
      int byKind = 0;
      for (JsonNode k : w.get("byKind")) {
        byKind += k.get("right").asInt() + k.get("left").asInt();
      }
      assertThat(byKind).isEqualTo(both);
      legs += both;
    }
    assertThat(legs).isPositive();
    JsonNode six = a.get("sixWeeks");
    assertThat(six.at("/contacts/right").asInt() + six.at("/contacts/left").asInt()).isEqualTo(legs);
    int bySteps = 0;
    for (JsonNode k : six.get("bySteps")) {
      bySteps += k.get("right").asInt() + k.get("left").asInt();
    }
    assertThat(bySteps).isEqualTo(legs);
  }

  @Test
  void inWordsTheAnswerComesFirst() {
    String load = terminal.run("load", "--athlete", "Otis Sedgeley").out();
    assertThat(load).startsWith("Otis Sedgeley, beginner: CAUTION. So far caution (0 contacts), with the plan caution (88).").contains("Pain 4 of 10").contains("no risk");
    assertThat(terminal.run("ready").out()).contains("should rest").contains("ready to add two steps").contains("go back two");
  }

  @Test
  void otherWorkIsCountedAndAPlannedDayJudged() {
    JsonNode a =
        json("load", "--athlete", "Rafi Eelgrass", "--add", "boxes 20 at 0.4", "--add", "sprints 240", "--add", "sport 60 at 6", "--plan", "--json");
    assertThat(a.at("/soFar/contacts").asInt()).as("boxes are jump contacts, sprints and sport are not").isEqualTo(20);
    assertThat(a.at("/withPlan/contacts").asInt()).isEqualTo(108);
    assertThat(a.get("room")).hasSize(2);
    assertThat(a.get("said").asText()).startsWith("So far ").contains("with the plan");
    JsonNode later = json("load", "--athlete", "Rafi Eelgrass", "--plan", "2026-05-15", "--json");
    assertThat(later.get("date").asText()).isEqualTo("2026-05-15");
    assertThat(later.at("/soFar/contacts").asInt()).isZero();
    Terminal.Said over = terminal.run("load", "--athlete", "Rafi Eelgrass", "--plan", "2020-01-01");
    assertThat(over.exit()).isEqualTo(2);
    assertThat(over.err()).contains("which is over");
    assertThat(terminal.run("load", "--athlete", "Rafi Eelgrass", "--add", "swimming 40").err()).contains("boxes 20 at 0.4");
    Terminal.Said comma = terminal.run("load", "--athlete", "Rafi Eelgrass", "--add", "boxes 20 at 0,4");
    assertThat(comma.err()).isEmpty();
    assertThat(comma.out()).contains("Counted: ").contains("0.4");
    assertThat(terminal.run("load", "--athlete", "Rafi Eelgrass", "--last-week", "-3").err()).contains("new to bounding");
    assertThat(json("load", "--athlete", "Rafi Eelgrass", "--last-week", "90", "--season", "in", "--json").get("notKnownYet").asBoolean()).isFalse();
  }

  /** Held: no mark and no dose on the command line either, only the reason. */
  @Test
  void marksOfAHeldAthleteAreTheReasonAlone() {
    JsonNode held = json("marks", "--athlete", "Tovi Plover", "--sequence", "RRL x2", "--json");
    assertThat(held.get("held").asBoolean()).isTrue();
    assertThat(held.get("reason").asText()).startsWith("On medical hold since");
    assertThat(held.has("markToSand_m")).isFalse();
    assertThat(terminal.run("marks", "--athlete", "Tovi Plover", "--sequence", "RRL x2").out()).contains("no bounding").doesNotContain("MARK");
    JsonNode sore = json("marks", "--athlete", "Otis Sedgeley", "--sequence", "RRL x2", "--json");
    assertThat(sore.at("/load/body").asText()).contains("Pain 4 of 10, left heel");
    assertThat(sore.at("/load/said").asText()).isEqualTo("So far caution (0 contacts), with the plan caution (88).");
  }

  @Test
  void anUnknownAthleteIsASentence() {
    Terminal.Said said = terminal.run("ready", "--athlete", "Wrenn Samphire");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("Did you mean Wren Samphire?");
    assertThat(terminal.run("load").exit()).isEqualTo(2);
  }
}
