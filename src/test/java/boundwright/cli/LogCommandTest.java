package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LogCommandTest {
  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private JsonNode reps() {
    return terminal.run("export", "--json").json();
  }

  @Test
  void keepsARepAndSaysTheNextMark() {
    double before =
        terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--json").json().get("markToSand_m").asDouble();
    Said said =
        terminal.run(
            "log", "--athlete", "orla tamsin", "--sequence", "RRL RRL", "--steps", "4", "--surface", "grass", "--outcome", "in",
            "--mark", "11.80", "--landing", "12.40", "--footprints", "2.10;4.30;;8.1", "--sure");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.out())
        .startsWith("Kept")
        .contains("Orla Tamsin, 2026-05-14: RRL RRL from 4 steps on grass, in, mark 11.80 m, landing 12.40 m")
        .contains("2.10 m; 4.30 m; -; 8.10 m")
        .contains("MARK");
    JsonNode rep = reps().get(0);
    assertThat(rep.get("athlete").asText()).isEqualTo("Orla Tamsin");
    assertThat(rep.get("date").asText()).isEqualTo("2026-05-14");
    assertThat(rep.get("approach_steps").asInt()).isEqualTo(4);
    assertThat(rep.get("surface").asText()).isEqualTo("grass");
    assertThat(rep.get("footprints_m").get(1).asDouble()).isEqualTo(4.3);
    assertThat(rep.get("footprints_m").get(2).isNull()).isTrue();
    assertThat(rep.get("landing_m").asDouble()).isEqualTo(12.4);
    assertThat(rep.get("mark_to_sand_m").asDouble()).isEqualTo(11.8);
    assertThat(rep.get("outcome").asText()).isEqualTo("in");
    double after =
        terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--json").json().get("markToSand_m").asDouble();
    assertThat(Math.abs(after - 11.8)).isLessThan(Math.abs(before - 11.8));
  }

  /** The page asks the same question of the same tape; a slip in the figure must not be learned from. */
  @Test
  void asksWhetherATapeFarFromTheMarkIsMeant() {
    String[] slip = {"log", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--steps", "4", "--outcome", "in", "--mark", "1.18"};
    Said asked = terminal.run(slip);
    assertThat(asked.exit()).isEqualTo(2);
    assertThat(asked.err()).contains("Is the tape really at 1.18 m?").contains("--sure");
    assertThat(reps()).isEmpty();
    String[] sure = Arrays.copyOf(slip, slip.length + 1);
    sure[slip.length] = "--sure";
    assertThat(terminal.run(sure).exit()).isZero();
    assertThat(reps()).hasSize(1);
  }

  @Test
  void anAbandonedRepIsKeptWithItsContactsAndMovesNoMark() {
    String[] marks = {"marks", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--json"};
    double before = terminal.run(marks).json().get("markToSand_m").asDouble();
    Said said =
        terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--outcome", "abandoned", "--after", "4", "--mark", "11.80", "--sure");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.out()).contains("abandoned after contact 4 (4 contacts count as load), mark 11.80 m");
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--outcome", "abandoned").out())
        .contains("abandoned (6 contacts count as load)");
    assertThat(reps().get(0).get("outcome").asText()).isEqualTo("abandoned");
    assertThat(reps().get(0).get("broke_off_after").asInt()).isEqualTo(4);
    assertThat(reps().get(1).get("broke_off_after").isNull()).isTrue();
    assertThat(terminal.run(marks).json().get("markToSand_m").asDouble()).isEqualTo(before);
    JsonNode load = terminal.run("load", "--athlete", "Orla Tamsin", "--json").json();
    // RRLR and RRLRRL: 3 + 4 on the right, 1 + 2 on the left, counted by hand
    assertThat(load.at("/sixWeeks/contacts/right").asInt()).isEqualTo(7);
    assertThat(load.at("/sixWeeks/contacts/left").asInt()).isEqualTo(3);
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--outcome", "in", "--after", "4").err())
        .contains("its outcome is 'in'");
  }

  @Test
  void readsTheCoachsUnit() {
    Said said =
        terminal.run("log", "--athlete", "Piet Quill", "--sequence", "RL", "--unit", "ft", "--mark", "10 ft", "--landing", "11' 6\"", "--footprints", "5-06", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    // 10 ft, 11 ft 6 in and 5 ft 6 in by the exact foot of 0.3048 m (international yard and pound agreement 1959, published)
    assertThat(said.json().at("/kept/mark_to_sand_m").asDouble()).isEqualTo(3.048);
    assertThat(said.json().at("/kept/landing_m").asDouble()).isEqualTo(3.505);
    assertThat(said.json().at("/kept/footprints_m/0").asDouble()).isEqualTo(1.676);
    assertThat(said.json().at("/next/markToSand_m").isNumber()).isTrue();
    assertThat(said.json().get("takenBack").isNull()).isTrue();
  }

  /** Logged last, not dated last: a rep of yesterday that is entered now is the one that undo takes back. */
  @Test
  void undoTakesTheRepThatWasLoggedLast() {
    terminal.run("log", "--athlete", "Piet Quill", "--sequence", "RL", "--outcome", "in", "--mark", "4", "--sure");
    terminal.run("log", "--athlete", "Piet Quill", "--sequence", "RRL", "--outcome", "short", "--mark", "6", "--date", "2026-05-01");
    Said said = terminal.run("log", "--athlete", "Piet Quill", "--undo-last", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(said.json().at("/takenBack/sequence").asText()).isEqualTo("RRL");
    assertThat(said.json().get("kept").isNull()).isTrue();
    assertThat(reps()).hasSize(1);
    assertThat(reps().get(0).get("sequence").asText()).isEqualTo("RL");
    assertThat(terminal.run("log", "--athlete", "Piet Quill", "--undo-last").exit()).isZero();
    Said none = terminal.run("log", "--athlete", "Piet Quill", "--undo-last");
    assertThat(none.exit()).isEqualTo(2);
    assertThat(none.err()).contains("no rep to take back");
  }

  @ParameterizedTest(name = "{0}: {6}")
  @CsvSource(
      delimiter = '|',
      value = {
        "''|4||||in|0 contacts",
        "RXL|4||||in|Character 2 ('X')",
        "R x61|4||||in|limit is 60",
        "RRL|-1||||in|Approach steps of -1",
        "RRL|40||||in|Approach steps of 40",
        "RRL|4||0||in|0.00 m",
        "RRL|4||90||in|90.00 m",
        "RRL|4|0;4|||in|0.00 m",
        "RRL|4|4.3;2.1|||in|out of order",
        "RRL|4|2.1;4.3;6.0|||in|3 footprints were given",
        "RRL|4|2.1;abc|||in|abc' is not a length",
        "RRL|4||||maybe|maybe' is not known",
        "RRL|4|||||says nothing",
        "RRL|4||5|7|in|does not fit",
        "RRL|4|||-3|in|out of range",
      })
  void badInputIsRefusedAndNothingIsKept(
      String sequence, String steps, String prints, String landing, String mark, String outcome, String why) {
    List<String> arguments =
        new ArrayList<>(List.of("log", "--athlete", "Orla Tamsin", "--sequence", sequence, "--steps", steps));
    given(arguments, "--footprints", prints);
    given(arguments, "--landing", landing);
    given(arguments, "--mark", mark);
    given(arguments, "--outcome", outcome);
    Said said = terminal.run(arguments.toArray(String[]::new));
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.err()).contains(why).doesNotContain("Exception");
    assertThat(reps()).isEmpty();
  }

  private static void given(List<String> arguments, String option, @Nullable String value) {
    if (value != null) {
      arguments.add(option);
      arguments.add(value);
    }
  }

  @Test
  void daysThatHaveNotComeAndDaysThatAreNoneAreRefused() {
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--outcome", "in", "--date", "2026-05-15").err())
        .contains("has not come yet");
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--outcome", "in", "--date", "14.13.2026").err())
        .contains("is no date");
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--outcome", "in").err()).contains("no sequence");
    assertThat(terminal.run("log", "--athlete", "Orla Tamsin", "--undo-last", "--outcome", "in").exit()).isEqualTo(2);
    assertThat(terminal.run("log", "--athlete", "Nobody", "--sequence", "RRL", "--outcome", "in").exit()).isEqualTo(2);
    assertThat(reps()).isEmpty();
  }
}
