package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A coach's own spreadsheet, birth date and consent from the command line. */
class MoveInCommandTest {
  @TempDir Path folder = Path.of("");

  private Path file(String name, String text, java.nio.charset.Charset letters) throws IOException {
    return Files.writeString(folder.resolve(name), text, letters);
  }

  @Test
  void aRosterIsShownTakenAndTakenBack() throws IOException {
    Terminal terminal = new Terminal(folder);
    Path file = file("squad.csv", "Who;Born\nZo\u00eb Fenn;3.11.2010\nBo Larch;4.12.2009\n;1.1.2010\n", StandardCharsets.ISO_8859_1);
    Said unmapped = terminal.run("import", file.toString(), "--as", "roster", "--dry-run");
    assertThat(unmapped.exit()).isEqualTo(2);
    assertThat(unmapped.err()).contains("No column is chosen for Name");
    Said dry = terminal.run("import", file.toString(), "--as", "roster", "--map", "name=Who,born=2", "--dry-run");
    assertThat(dry.exit()).as("nothing could be taken yet").isEqualTo(1);
    assertThat(dry.out()).contains("read as Latin-1, separated by semicolons", "days=day-first or days=month-first", "Nothing was taken; 0 rows would be");
    Said asked = terminal.run("import", file.toString(), "--as", "roster", "--map", "name=Who,born=2", "--skip-bad-rows");
    assertThat(asked.exit()).isEqualTo(2);
    assertThat(asked.err()).contains("in two ways");
    Said bad = terminal.run("import", file.toString(), "--as", "roster", "--map", "name=Who,born=2,days=day-first");
    assertThat(bad.exit()).isEqualTo(1);
    assertThat(bad.err()).contains("line 4", "The name is empty", "--skip-bad-rows");
    JsonNode taken = terminal.run("import", file.toString(), "--as", "roster", "--map", "name=Who,born=2,days=day-first", "--skip-bad-rows", "--json").json();
    assertThat(taken.get("taken").asInt()).isEqualTo(2);
    assertThat(taken.at("/rows/0/told").asText()).contains("born 2010-11-03");
    assertThat(terminal.run("athlete", "--athlete", "zo\u00eb fenn", "--json").json().get("born").asText()).isEqualTo("2010-11-03");
    // remembered for the next file with the same first line
    Said again = terminal.run("import", file.toString(), "--as", "roster", "--dry-run");
    assertThat(again.out()).contains("here already");
    Said back = terminal.run("import", "--take-back", taken.get("number").asText());
    assertThat(back.out()).contains("Taken back: 2 athletes.");
    assertThat(terminal.run("growth", "--athlete", "Zo\u00eb Fenn").err()).contains("There are no athletes here yet", "boundwright import FILE --as roster");
    assertThat(terminal.run("import", file.toString(), "--dry-run").err()).contains("go with --as");
  }

  @Test
  void birthDateAndConsentAreEnteredToldAndWithdrawn() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    String[] who = {"athlete", "--athlete", "Orla Tamsin"};
    assertThat(terminal.run(who).out()).contains("born not known", "film: nobody asked");
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--born", "2010-06-01", "--sex", "female").out()).contains("2010-06-01, 15, female");
    JsonNode said = terminal.run("athlete", "--athlete", "Orla Tamsin", "--consent", "film", "--yes", "--by", "mother", "--on", "2026-05-01", "--json").json();
    assertThat(said.at("/consents/0/standing").asText()).isEqualTo("yes");
    assertThat(said.at("/consents/0/lastDay").asText()).isEqualTo("2028-05-31");
    assertThat(said.at("/said/0/by").asText()).isEqualTo("mother");
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--withdraw", "film").out()).contains("film: withdrawn");
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--withdraw", "film").exit()).isEqualTo(2);
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--consent", "film").err()).contains("one of --yes and --no");
    assertThat(terminal.run("athlete", "--athlete", "Orla Tamsin", "--born", "2030-01-01").err()).contains("after today");
    assertThat(terminal.run("export", "--athlete", "Orla Tamsin", "--everything", "--json").out()).contains("2010-06-01", "mother");
  }
}
