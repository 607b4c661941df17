package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The way back of a leg from the command line. */
class BackCommandTest {
  private static final List<String> ORLA = List.of("--athlete", "Orla Tamsin");

  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private Said back(String... more) {
    List<String> all = new ArrayList<>(List.of("back"));
    all.addAll(List.of(more));
    all.addAll(ORLA);
    return terminal.run(all.toArray(String[]::new));
  }

  private Said ok(String... more) {
    Said said = back(more);
    assertThat(said.exit()).as(said.err()).isZero();
    return said;
  }

  private String refused(String... more) {
    Said said = back(more);
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.out()).isEmpty();
    return said.err();
  }

  @Test
  void itBeginsShowsStepsAndEnds() {
    assertThat(ok().out()).contains("no leg on its way back");
    JsonNode begun = ok("begin", "--leg", "left", "--start", "30", "--growth", "15", "--former", "100", "--by", "Dr Invented", "--json").json().at("/ways/0");
    assertThat(begun.get("stages").asInt()).as("ln(1/.3)/ln 1.15 = 8.61, worked").isEqualTo(9);
    assertThat(begun.get("stage").asInt()).isEqualTo(1);
    assertThat(begun.get("weekLimit").asDouble()).isEqualTo(30);
    assertThat(begun.get("mostToday").asDouble()).isEqualTo(15);
    assertThat(begun.at("/dates/earliest").asText()).as("nine weeks").isEqualTo("2026-07-16");
    assertThat(begun.at("/dates/from").asText()).isGreaterThanOrEqualTo("2026-07-16").isLessThan(begun.at("/dates/to").asText());
    assertThat(begun.get("loadedDays")).hasSize(18);
    assertThat(begun.get("allowedBy").asText()).isEqualTo("Dr Invented");
    String id = begun.get("id").asText();
    assertThat(ok("show").out()).contains("left leg").contains("Up to 15 standing-bound contacts").contains("a named clinician and a date do");
    assertThat(refused("step", "--id", id, "--to", "on", "--by", "Coach Reed")).contains("not earned").contains("0 of 2");
    assertThat(refused("step", "--id", id, "--to", "back", "--by", "Coach Reed")).contains("none before");
    assertThat(ok("end", "--id", id, "--by", "Dr Invented", "--why", "begun by mistake", "--json").json().at("/ways/0/runs").asBoolean()).isFalse();
    assertThat(refused("end", "--id", id, "--by", "x", "--why", "y")).contains("ended on");
  }

  @Test
  void whileAHoldStandsItIsRefusedAndSaysWhoMustEndIt() {
    assertThat(terminal.run("hold", "--athlete", "Orla Tamsin", "--note", "set by the physio (invented)").exit()).isZero();
    assertThat(refused("begin", "--leg", "left", "--former", "100", "--by", "Coach Reed")).contains("Medical hold 1 stands").contains("named clinician");
    assertThat(terminal.run("hold", "--athlete", "Orla Tamsin", "--end", "1", "--by", "Dr Invented", "--on", "2026-05-14").exit()).isZero();
    JsonNode begun = ok("begin", "--leg", "left", "--former", "100", "--json").json().at("/ways/0");
    assertThat(begun.get("allowedBy").asText()).isEqualTo("Dr Invented");
    assertThat(begun.get("afterHold").asBoolean()).isTrue();
    assertThat(begun.get("stages").asInt()).as("12.63, worked").isEqualTo(13);
  }

  @Test
  void aPainThatIsTooMuchLeavesNothingForToday() {
    ok("begin", "--leg", "left", "--former", "100", "--by", "Dr Invented");
    assertThat(terminal.run("pain", "--athlete", "Orla Tamsin", "--area", "left shin", "--level", "7").exit()).isZero();
    JsonNode way = ok("show", "--json").json().at("/ways/0");
    assertThat(way.get("mostToday").asDouble()).isZero();
    assertThat(way.get("today").asText()).startsWith("Rest the leg. Pain 7 of 10");
    assertThat(way.get("loadedDays")).isEmpty();
    assertThat(way.get("dates").isNull()).isTrue();
    assertThat(ok().out()).contains("Rest the leg. Pain 7 of 10").doesNotContain("Up to");
  }

  /** Half of 30 % of 100 a day (worked): marks and log say it beside the verdict, and after a loaded rep what is left of it. */
  @Test
  void marksAndLogSayWhatTheStageAllows() {
    String[] marks = {"marks", "--athlete", "Orla Tamsin", "--sequence", "RL", "--steps", "0"};
    assertThat(terminal.run(marks).out()).doesNotContain("Way back");
    ok("begin", "--leg", "left", "--former", "100", "--by", "Dr Invented");
    assertThat(terminal.run(marks).out()).containsOnlyOnce("Way back: up to 15 standing-bound contacts on the left leg today.");
    Said logged = terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RL", "--steps", "0", "--outcome", "in");
    assertThat(logged.exit()).as(logged.err()).isZero();
    JsonNode way = ok("show", "--json").json().at("/ways/0");
    double most = way.get("mostToday").asDouble();
    assertThat(most).as("what is done today is taken off the day").isEqualTo(15 - way.get("week").asDouble());
    assertThat(way.get("today").asText()).startsWith("Up to " + (int) most + " more standing-bound contacts on this leg today");
    assertThat(logged.out()).containsOnlyOnce("Way back: up to " + (int) most + " more standing-bound contacts on the left leg today.");
    JsonNode json = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RL", "--steps", "0", "--json").json();
    assertThat(json.at("/load/wayBack/0").asText()).contains("up to " + (int) most + " more");
    terminal.run("pain", "--athlete", "Orla Tamsin", "--area", "left shin", "--level", "7");
    assertThat(terminal.run(marks).out()).contains("Way back: rest the left leg, no more today.");
  }

  @Test
  void aHoldWhoseEndIsEnteredNamesTheDayAndTheClinician() {
    ok("begin", "--leg", "left", "--former", "100", "--by", "Dr Invented");
    assertThat(terminal.run("hold", "--athlete", "Orla Tamsin", "--note", "set by the physio (invented)").exit()).isZero();
    assertThat(ok().out()).contains("when a named clinician has ended the hold");
    Said ended = terminal.run("hold", "--athlete", "Orla Tamsin", "--end", "1", "--by", "Dr Sedge (invented)", "--on", "2026-05-20", "--sure");
    assertThat(ended.exit()).as(ended.err()).isZero();
    String named = "on 2026-05-20, the day named by Dr Sedge (invented)";
    assertThat(ok().out()).contains("first stage " + named + ".").doesNotContain("has ended the hold");
    assertThat(refused("begin", "--leg", "right", "--former", "100", "--by", "x")).contains("a way back begins " + named).doesNotContain("has ended it");
    assertThat(refused("step", "--id", "1", "--to", "on", "--by", "x")).contains("no step before it ends " + named);
    assertThat(terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", "RL", "--steps", "0").out()).contains("It ends " + named).doesNotContain("enter the name");
  }

  @Test
  void oneDayOffIsOneDay() {
    Said log = terminal.run("log", "--athlete", "Orla Tamsin", "--sequence", "RRL RRL", "--steps", "4", "--outcome", "in", "--date", "2026-05-12");
    assertThat(log.exit()).as(log.err()).isZero();
    assertThat(ok("begin", "--leg", "left", "--former", "100", "--by", "Dr Invented").out()).contains("; 1 day off before");
  }

  @Test
  void badInputIsRefusedInWords() {
    assertThat(refused("begin", "--former", "100", "--by", "x")).contains("--leg right or --leg left");
    assertThat(refused("begin", "--leg", "both", "--former", "100", "--by", "x")).contains("'both' is not known");
    assertThat(refused("begin", "--leg", "left", "--by", "x")).contains("former week is not known");
    assertThat(refused("begin", "--leg", "left", "--former", "1", "--by", "x")).contains("out of range: 5 to 5000");
    assertThat(refused("begin", "--leg", "left", "--former", "100", "--by", "x", "--start", "95")).contains("10 to 90 %");
    assertThat(refused("begin", "--leg", "left", "--former", "100", "--by", "x", "--growth", "50")).contains("2 to 30 %");
    assertThat(refused("begin", "--leg", "left", "--former", "100", "--by", "x", "--from", "2026-05-15")).contains("not come yet");
    assertThat(refused("begin", "--leg", "left", "--former", "100", "--by", " ")).contains("Name who says");
    assertThat(refused("cure")).contains("'cure' is not known").contains("show, begin, step, end");
    assertThat(refused("show", "--leg", "left")).contains("does not go with show");
    assertThat(refused("step", "--id", "7")).contains("--id 2 --to on --by NAME");
    assertThat(refused("step", "--id", "7", "--to", "on", "--by", "x")).contains("number 7 is not in the list");
    assertThat(refused("end", "--id", "7", "--by", "x", "--why", "y")).contains("number 7 is not in this athlete's list");
  }
}
