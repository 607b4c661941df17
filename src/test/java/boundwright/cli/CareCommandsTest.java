package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pain, medical holds and judged reps from the command line. */
class CareCommandsTest {
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

  private String refused(String... arguments) {
    Said said = terminal.run(arguments);
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.out()).isEmpty();
    return said.err();
  }

  private String guard() {
    return ok("load", "--athlete", "Orla Tamsin", "--json").json().get("answer").asText();
  }

  @Test
  void aPainIsKeptAskedForNextMorningAndJudgedByTheGuard() {
    assertThat(ok("pain", "--athlete", "Orla Tamsin").out()).contains("no pain in the last 60 days");
    JsonNode kept = ok("pain", "--athlete", "orla tamsin", "--area", "left shin", "--level", "3", "--date", "2026-05-13", "--json").json();
    assertThat(kept.at("/pains/0/level").asInt()).isEqualTo(3);
    assertThat(kept.at("/pains/0/settled").isNull()).isTrue();
    assertThat(kept.at("/pains/0/date").asText()).isEqualTo("2026-05-13");
    assertThat(kept.get("holds")).isEmpty();
    assertThat(guard()).isEqualTo("caution");
    String id = kept.at("/pains/0/id").asText();
    assertThat(ok("pain", "--athlete", "Orla Tamsin", "--id", id, "--settled", "no").out()).contains("not settled next morning");
    assertThat(guard()).isEqualTo("refused");
    assertThat(refused("pain", "--athlete", "Piet Quill", "--id", id, "--settled", "yes")).contains("not in this athlete's list");
    assertThat(refused("pain", "--athlete", "Orla Tamsin", "--level", "3")).contains("area and its level");
    assertThat(refused("pain", "--athlete", "Orla Tamsin", "--area", "shin", "--level", "11")).contains("0 (none) to 10");
    assertThat(refused("pain", "--athlete", "Orla Tamsin", "--area", "shin", "--level", "1", "--settled", "maybe")).contains("yes or no");
    assertThat(refused("pain", "--athlete", "Orla Tamsin", "--area", "shin", "--level", "1", "--date", "2026-05-15")).contains("not come yet");
    assertThat(ok("pain", "--athlete", "Orla Tamsin", "--json").json().get("pains")).hasSize(1);
  }

  @Test
  void aSignOpensAHoldThatOnlyANamedClinicianEnds() {
    assertThat(ok("pain", "--athlete", "Orla Tamsin", "--area", "left shin", "--level", "2", "--refer").out())
        .startsWith("Stop and refer")
        .contains("it lasts until a named clinician ends it");
    JsonNode hold = ok("hold", "--athlete", "Orla Tamsin", "--json").json().get("holds").get(0);
    assertThat(hold.get("holdsToday").asBoolean()).isTrue();
    String id = hold.get("id").asText();
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--end", id)).contains("clinician's name and a date");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--end", id, "--by", " ", "--on", "2026-05-14")).contains("the hold lasts");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--end", id, "--by", "Dr Invented", "--on", "soon")).contains("no date");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--end", id, "--by", "Dr Invented", "--on", "05/06/2026")).contains("day first it is 2026-06-05, month first 2026-05-06");
    assertThat(guard()).isEqualTo("refused");
    String late = refused("hold", "--athlete", "Orla Tamsin", "--end", id, "--by", "Dr Invented", "--on", "2026-06-14");
    assertThat(late).contains("2026-06-14 lies after today, 2026-05-14").contains("kept for good").contains("new hold").contains("stands until it comes").contains("--sure");
    assertThat(ok("hold", "--athlete", "Orla Tamsin").out()).contains("it lasts until a named clinician ends it");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--sure")).contains("--sure goes with --end");
    JsonNode ended = ok("hold", "--athlete", "Orla Tamsin", "--end", id, "--by", "Dr Invented", "--on", "14.05.2026", "--json").json();
    assertThat(ended.at("/holds/0/clearedBy").asText()).isEqualTo("Dr Invented");
    assertThat(ended.at("/holds/0/holdsToday").asBoolean()).isFalse();
    assertThat(guard()).isEqualTo("allowed");
    assertThat(ok("hold", "--athlete", "Orla Tamsin", "--note", "set by the physio (invented)", "--from", "2026-05-14").out()).contains("physio");
    assertThat(guard()).isEqualTo("refused");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--note", " ")).contains("no diagnosis");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--note", "x", "--end", id)).contains("not both");
    assertThat(refused("hold", "--athlete", "Orla Tamsin", "--from", "2026-05-14")).contains("goes with --note");
  }

  @Test
  void aRepIsLoggedCleanFaultyOrNotJudged() {
    String[] rep = {"log", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--steps", "4", "--outcome", "in", "--json"};
    assertThat(logged(rep, "clean").get("judged").asBoolean()).isTrue();
    assertThat(logged(rep, "clean").get("faults")).isEmpty();
    assertThat(logged(rep, "toe-up@3; upright").get("faults").toString()).isEqualTo("[\"toe-up@3\",\"upright\"]");
    assertThat(ok(rep).json().at("/kept/judged").asBoolean()).isFalse();
    assertThat(ok("log", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--outcome", "in", "--faults", "clean").out()).contains(", in, clean.");
    assertThat(refused("log", "--athlete", "Orla Tamsin", "--sequence", "RRL", "--outcome", "in", "--faults", "toe-up@4")).contains("has 3 contacts");
    assertThat(refused("log", "--athlete", "Orla Tamsin", "--undo-last", "--faults", "clean")).contains("--undo-last");
  }

  private JsonNode logged(String[] rep, String faults) {
    String[] arguments = java.util.Arrays.copyOf(rep, rep.length + 2);
    arguments[rep.length] = "--faults";
    arguments[rep.length + 1] = faults;
    return ok(arguments).json().get("kept");
  }
}
