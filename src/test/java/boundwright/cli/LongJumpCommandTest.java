package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The long jump on the command line: take-offs, run-ups and gaps of its own, meets and combined events. */
class LongJumpCommandTest {
  private static final String WHO = "orla tamsin";

  @TempDir Path folder = Path.of("");
  private Terminal terminal = new Terminal(folder);

  @BeforeEach
  void squad() {
    terminal = new Terminal(folder);
    terminal.squad();
  }

  private Said ok(String... arguments) {
    return terminal.ok(arguments);
  }

  private void refused(String why, String... arguments) {
    terminal.refused(why, arguments);
  }

  /** The collection's flight (worked): t .8045 s, x 6.838 m. */
  @Test
  void theFlightOfATakeOff() {
    JsonNode said = ok("long-jump", "--forward", "8.5", "--up", "3.2", "--high", "1.25", "--low", "0.65", "--json").json();
    assertThat(said.at("/flight_s").asDouble()).isCloseTo(.8045, within(5e-5));
    assertThat(said.at("/flight_m").asDouble()).isEqualTo(6.838);
    assertThat(ok("long-jump", "--speed", "9.0824", "--angle", "20.6302", "--high", "1.25", "--low", "0.65").out()).contains("6.84 m").contains("20.6 degrees");
    refused("A take-off has --forward and --up", "long-jump", "--forward", "8.5", "--high", "1.25", "--low", "0.65");
    refused("go with the speeds", "long-jump", "--high", "1.25");
    refused("Give a take-off", "long-jump");
    refused("--athlete NAME", "long-jump", "--keep", "--distance", "5");
  }

  @Test
  void aJumpIsKeptToldAndTakenBack() {
    assertThat(ok("long-jump", "--athlete", WHO).out()).contains("The data cannot tell.").contains("there are none");
    JsonNode kept =
        ok("long-jump", "--athlete", WHO, "--keep", "--distance", "7.65", "--gap", "0.10", "--run-up", "18", "--foot", "left", "--forward", "8.5", "--up", "3.2",
                "--high", "1.25", "--low", "0.65", "--ahead", "0.35", "--json")
            .json();
    // take-off .35 + flight 6.838 + landing - gap .10 = 7.65 (worked)
    assertThat(kept.at("/kept/parts/landing_m").asDouble()).isCloseTo(.562, within(.001));
    assertThat(kept.at("/kept/foot").asText()).isEqualTo("left");
    assertThat(ok("long-jump", "--athlete", WHO).out()).contains("at least 8").contains("there are 1").contains("landing 0.56 m");
    assertThat(ok("long-jump", "--athlete", WHO, "--json").json().at("/trade/cannotTell").asText()).contains("at least 8");
    JsonNode all = ok("export", "--athlete", WHO, "--jumps", "--json").json();
    assertThat(all.toString()).contains("\"longJumps\"").contains("7.65");
    assertThat(ok("long-jump", "--athlete", WHO, "--undo-last").out()).contains("Taken back");
    refused("no long jump to take back", "long-jump", "--athlete", WHO, "--undo-last");
    refused("1 to 10 m", "long-jump", "--athlete", WHO, "--keep", "--distance", "12.3");
    refused("the flight alone", "long-jump", "--athlete", WHO, "--keep", "--distance", "3", "--forward", "8.5", "--up", "3.2", "--high", "1.25", "--low", "0.65");
  }

  @Test
  void gapsAndRunUpsOfTheTwoEventsStayApart() {
    for (int i = 0; i < 5; i++) {
      ok("aim", "--athlete", WHO, "--event", "long-jump", "--keep", "--gap", "0." + (10 + i), "--distance", "5.0" + i);
    }
    assertThat(ok("aim", "--athlete", WHO, "--json").json().at("/log/attempts").asInt()).as("of the triple jump").isZero();
    JsonNode lng = ok("aim", "--athlete", WHO, "--event", "long-jump", "--json").json();
    assertThat(lng.at("/log/attempts").asInt()).isEqualTo(5);
    assertThat(lng.at("/form/effectiveMean_m").asDouble()).isCloseTo(5.14, within(.02));
    JsonNode points = ok("aim", "--athlete", WHO, "--combined", "heptathlon", "--attempts", "3", "--policy", "--json").json();
    assertThat(points.at("/goal").asText()).isEqualTo("points");
    // 5.04 m is .188807 x 294^1.41 = 570 points (worked): the best of three lies near it
    assertThat(points.at("/expectedPoints").asDouble()).isBetween(500.0, 640.0);
    assertThat(points.at("/policy/2/noMark/expectedPoints").isNumber()).isTrue();
    assertThat(ok("aim", "--athlete", WHO, "--combined", "heptathlon").out()).contains("points expected");
    refused("one of them", "aim", "--athlete", WHO, "--combined", "heptathlon", "--target", "5");
    refused("for the long jump", "aim", "--effective-mean", "14", "--effective-sd", "0.2", "--gap-sd", "0.1", "--combined", "decathlon", "--event", "triple-jump");
    refused("1 to 10 m", "aim", "--athlete", WHO, "--event", "long-jump", "--target", "14");
    refused("event 'high jump' is not known", "aim", "--athlete", WHO, "--event", "high jump");

    ok("approach", "--athlete", WHO, "--event", "long-jump", "--keep", "--steps", "16", "--start", "30.10", "--gap", "0.12");
    JsonNode approach = ok("approach", "--athlete", WHO, "--event", "long-jump", "--json").json();
    assertThat(approach.at("/event").asText()).isEqualTo("long jump");
    assertThat(approach.at("/steps").asInt()).isEqualTo(16);
    assertThat(ok("approach", "--athlete", WHO, "--steps", "16", "--json").json().at("/runs").asInt()).isZero();
  }

  @Test
  void aHeptathlonsLongJump() {
    refused("belongs to a combined event", "meet", "new", "--name", "x", "--wind-rule", "older");
    refused("its own points", "meet", "new", "--name", "x", "--combined", "heptathlon", "--points", "women");
    refused("do not apply", "meet", "new", "--name", "x", "--combined", "heptathlon", "--finalists", "8");
    refused("not part of", "meet", "new", "--name", "x", "--combined", "heptathlon", "--event", "triple-jump");
    refused("1 to 3 m", "meet", "new", "--name", "x", "--event", "long-jump", "--board", "11");
    refused("is not known", "meet", "new", "--name", "x", "--event", "long-jump", "--for", "men, international");
    JsonNode head = ok("meet", "new", "--name", "Invented heptathlon", "--combined", "heptathlon", "--for", "long jump, 2 m", "--json").json();
    assertThat(head.at("/event").asText()).isEqualTo("long jump");
    assertThat(head.at("/combined/attemptsEach").asInt()).isEqualTo(3);
    assertThat(head.at("/combined/windSource").asText()).contains("second-hand");
    assertThat(head.at("/boardToSand_m").asDouble()).isEqualTo(2);
    ok("meet", "enter", "--athlete", WHO);
    ok("meet", "enter", "--rival", "Bib 4");
    // 6.48 m is 1001 points, 7.27 m 1264 (see CombinedEventsTest)
    ok("meet", "attempt", "--who", WHO, "--distance", "6.48", "--wind", "2.4");
    JsonNode now = ok("meet", "attempt", "--who", "Bib 4", "--distance", "7.27", "--wind", "0.3", "--json").json();
    assertThat(now.at("/ranks/0/points").asInt()).isEqualTo(1264);
    assertThat(now.at("/ranks/1/points").asInt()).isEqualTo(1001);
    assertThat(now.at("/ranks/1/windSaid").asText()).contains("up to +3.6 together");
    assertThat(ok("meet", "ranks").out()).contains("long jump of the heptathlon").contains("1264 points").contains("A total counts for records by");
    refused("1 to 10 m", "meet", "attempt", "--who", WHO, "--distance", "11");
    refused("1 to 3", "meet", "attempt", "--who", WHO, "--round", "4", "--distance", "6");
    assertThat(ok("meet", "aim", "--athlete", WHO).out()).contains("cannot tell").doesNotContain("stands ahead");
  }

  /** Described only: no word of a recommendation, and under 15 no points that set the events against each other. */
  @Test
  void legsAndEventsAreDescribed() {
    assertThat(ok("legs", "--athlete", WHO).out()).contains("recommends no event");
    for (int i = 0; i < 4; i++) {
      for (String foot : new String[] {"right", "left"}) {
        ok("long-jump", "--athlete", WHO, "--keep", "--foot", foot, "--distance", foot.equals("right") ? "5.3" + i : "4.8" + i, "--run-up", "8", "--date", "2026-05-0" + (1 + i));
      }
    }
    ok("aim", "--athlete", WHO, "--keep", "--gap", "0.1", "--distance", "11.2");
    ok("aim", "--athlete", WHO, "--event", "long-jump", "--keep", "--gap", "0.1", "--distance", "5.3");
    ok("athlete", "--athlete", WHO, "--born", "2012-01-01", "--sex", "female");
    JsonNode young = ok("legs", "--athlete", WHO, "--json").json();
    assertThat(young.at("/comparesEvents").asBoolean()).isFalse();
    assertThat(young.at("/marks/0/points").isNull()).isTrue();
    assertThat(young.at("/said").asText()).contains("Under 15");
    JsonNode leg = young.at("/legs").get(young.at("/legs").size() - 1);
    assertThat(leg.at("/measure").asText()).isEqualTo("long_jump");
    assertThat(leg.at("/rightLessLeft/p50").asDouble()).isCloseTo(.5, within(.05));
    ok("athlete", "--athlete", WHO, "--born", "2006-01-01", "--sex", "female");
    JsonNode grown = ok("legs", "--athlete", WHO, "--json").json();
    assertThat(grown.at("/comparesEvents").asBoolean()).isTrue();
    // triple jump, women, 11.20 m: .4282 (11.20 + 105.53)^2 - 5000 = 834.6 (worked)
    assertThat(grown.at("/marks/0/points").asInt()).isEqualTo(834);
    assertThat(grown.at("/marks/1/best_m").asDouble()).as("of the log of long jumps, above the 5.30 m at the board").isEqualTo(5.33);
    assertThat(grown.at("/marks/1/count").asInt()).as("eight there and one at the board").isEqualTo(9);
    assertThat(grown.at("/marks/1/bestOn").asText()).isEqualTo("2026-05-04");
    assertThat(grown.at("/marks/1/bestMeet").isNull()).isTrue();
    assertThat(grown.at("/marks/1/bestSteps").asInt()).isEqualTo(8);
    assertThat(ok("legs", "--athlete", WHO).out()).contains("834 points").contains("5.33 m in training from 8 steps, 4 May 2026; best of 9 marks kept").contains("Long jump: right less left +0.4").doesNotContain("should");
  }

  /** A drill by its name is the take-off from the athlete's foot and its usual steps. */
  @Test
  void aDrillHasItsMarks() {
    JsonNode drill = ok("marks", "--athlete", WHO, "--drill", "pop-up", "--json").json();
    JsonNode feet = ok("marks", "--athlete", WHO, "--sequence", drill.at("/sequence").asText(), "--steps", "6", "--json").json();
    assertThat(drill).isEqualTo(feet);
    assertThat(drill.at("/approachSteps").asInt()).isEqualTo(6);
    refused("--sequence FEET", "marks", "--athlete", WHO);
    refused("drill 'hurdle' is not known", "marks", "--athlete", WHO, "--drill", "hurdle");
  }
}
