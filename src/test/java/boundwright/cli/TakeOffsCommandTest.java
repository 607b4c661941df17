package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Take-offs in a row on the command line: marks, reps kept and taken back, refusals, and nothing while jumping is stopped. */
class TakeOffsCommandTest {
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

  /** Orla takes off from the right: four take-offs with two running steps are R L R L (worked). */
  @Test
  void beforeAnyRepItIsAGuessThatSaysSo() {
    JsonNode said = ok("take-offs", "--athlete", WHO, "--steps", "4", "--json").json();
    assertThat(said.at("/pattern/title").asText()).isEqualTo("Run, run, jump x4");
    assertThat(said.at("/pattern/everyContact").asInt()).isEqualTo(3);
    assertThat(said.at("/pattern/contacts/left").asInt()).isEqualTo(2);
    assertThat(said.findValuesAsText("foot")).containsExactly("right", "left", "right", "left");
    assertThat(said.at("/window_m/min").isNull()).isTrue();
    assertThat(said.at("/measuredReps").asInt()).isZero();
    String text = ok("take-offs", "--athlete", WHO, "--steps", "4").out();
    assertThat(text).contains("(the best there is)").contains("do not rely on this one").contains("a first guess").contains("A take-off every third contact");
    assertThat(text.lines()).allMatch(l -> l.length() <= 100);
    assertThat(ok("take-offs", "--athlete", WHO, "--running", "3", "--flat").out()).contains("always off the right").startsWith("GROUND");
  }

  /** The tape of each take-off lies its place nearer the sand than the first mark (worked from the answer's own figures). */
  @Test
  void repsAreKeptLearnedAndTakenBack() {
    JsonNode kept =
        ok("take-offs", "--athlete", WHO, "--steps", "4", "--keep", "--at", "5.40;;16.60", "--landing", "20.70", "--note", "tall", "--json").json();
    assertThat(kept.at("/kept/takeOffs_m").toString()).isEqualTo("[5.4,null,16.6]");
    for (int i = 0; i < 8; i++) {
      ok("take-offs", "--athlete", WHO, "--steps", "4", "--keep", "--at", "5.4" + i + ";10.9" + i + ";16.6" + i, "--landing", "20.7" + i);
    }
    JsonNode said = ok("take-offs", "--athlete", WHO, "--steps", "4", "--json").json();
    assertThat(said.at("/measuredReps").asInt()).isEqualTo(9);
    assertThat(said.at("/landing/p50_m").asDouble()).isCloseTo(20.74, within(.25));
    assertThat(said.at("/window_m/min").isNumber()).as("now marks work").isTrue();
    double mark = said.at("/markToSand_m").asDouble();
    assertThat(mark).isBetween(16.9, 20.4);
    assertThat(said.at("/places/2/toSand_m").asDouble()).isCloseTo(mark - said.at("/places/2/fromMark/p50_m").asDouble(), within(.0011));
    assertThat(ok("load", "--athlete", WHO).out()).isNotBlank();
    assertThat(ok("export", "--athlete", WHO, "--jumps", "--json").json().findValue("inARow").size()).isEqualTo(9);
    assertThat(ok("take-offs", "--athlete", WHO, "--undo-last").out()).contains("Taken back").contains("16.67 m");
    for (int i = 0; i < 8; i++) {
      ok("take-offs", "--athlete", WHO, "--undo-last");
    }
    refused("no rep of take-offs in a row", "take-offs", "--athlete", WHO, "--undo-last");
  }

  @Test
  void feetAndInchesAreReadAndWritten() {
    assertThat(ok("take-offs", "--athlete", WHO, "--jumps", "2", "--steps", "4", "--unit", "ft", "--keep", "--at", "18'", "--landing", "31' 6\"").out()).contains("take-offs 18").contains("31");
  }

  @Test
  void nothingIsSaidWhileJumpingIsStopped() {
    ok("hold", "--athlete", WHO, "--note", "set by the physio (invented)");
    Said said = ok("take-offs", "--athlete", WHO, "--steps", "4");
    assertThat(said.out()).contains("no take-offs").doesNotContain("MARK").doesNotContain("From the first mark");
    assertThat(ok("take-offs", "--athlete", WHO, "--json").json().at("/held").asBoolean()).isTrue();
  }

  @Test
  void refusalsSayTheLimitAndTheWayOut() {
    refused("of 0 is out of range: 1 to 8", "take-offs", "--athlete", WHO, "--running", "0");
    refused("of 1 is out of range: 2 to 12", "take-offs", "--athlete", WHO, "--jumps", "1");
    refused("add --keep", "take-offs", "--athlete", WHO, "--landing", "20");
    refused("keeps none", "take-offs", "--athlete", WHO, "--keep", "--undo-last");
    refused("cannot be", "take-offs", "--athlete", WHO, "--keep", "--at", "5;4");
    refused("at most 3", "take-offs", "--athlete", WHO, "--keep", "--at", "5;10;15;20");
    refused("foot 'both' is not known", "take-offs", "--athlete", WHO, "--foot", "both");
    refused("has not come yet", "take-offs", "--athlete", WHO, "--keep", "--date", "2999-01-01");
  }
}
