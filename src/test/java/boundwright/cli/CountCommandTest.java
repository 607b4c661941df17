package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counts of R R L x3 and of R R L L in ten: worked in the literature notes, section 1. */
class CountCommandTest {
  @TempDir Path folder = Path.of("");

  @Test
  void countsAndProposesTheMirroredSetWithoutADataFolder() {
    Said said = new Terminal(folder).run("count", "RRL x3");
    assertThat(said.exit()).isZero();
    assertThat(said.out())
        .startsWith("9 contacts: 6 right, 3 left")
        .contains("Flights: 3 hops, 5 bounds, 1 jump")
        .contains("2.  LLR x3   mirrored")
        .contains("Together 9 right, 9 left: level.");
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void jsonSaysTheSame() {
    JsonNode json = new Terminal(folder).run("count", "RRLL RRLL RR", "--sets", "3", "--json").json();
    assertThat(json.at("/contacts/right").asInt()).isEqualTo(6);
    assertThat(json.at("/contacts/left").asInt()).isEqualTo(4);
    assertThat(json.get("size").asInt()).isEqualTo(10);
    assertThat(json.at("/proposal/contacts/right").asInt()).isEqualTo(16);
    assertThat(json.at("/proposal/contacts/left").asInt()).isEqualTo(14);
    assertThat(json.at("/proposal/apart").asInt()).isEqualTo(2);
    assertThat(json.at("/proposal/sets/2/mirrored").asBoolean()).isTrue();
    assertThat(json.at("/flights/hop").asInt() + json.at("/flights/bound").asInt() + json.at("/flights/jump").asInt()).isEqualTo(10);
  }

  @Test
  void longSequencesAreCutAtTen() {
    JsonNode json = new Terminal(folder).run("count", "R x23", "--sets", "1", "--json").json();
    assertThat(json.get("sets")).hasSize(3);
    assertThat(json.at("/sets/2").asText()).isEqualTo("RRR");
  }

  @ParameterizedTest(name = "{0} {1} {2}")
  @CsvSource({"'',--sets,2,0 contacts", "RXL,--sets,2,Character 2", "R x61,--sets,2,limit is 60", "RRL,--sets,0,0 sets", "RRL,--sets,201,201 sets", "RRL,--cut,0,at least 1"})
  void badInputIsRefused(String sequence, String option, String value, String why) {
    Said said = new Terminal(folder).run("count", sequence, option, value);
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains(why);
  }
}
