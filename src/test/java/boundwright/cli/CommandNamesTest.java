package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A command that is asked for by its name is made alone; what lists commands, or does not know one, has all of them. */
class CommandNamesTest {
  @Test
  void eachCommandIsThereByItsNameAndInTheHelp(@TempDir Path dir) {
    Terminal t = new Terminal(dir);
    String all = t.ok("--help").out();
    for (String name : BoundwrightCommand.NAMES) {
      assertThat(t.ok(name, "--help").out()).as(name).startsWith("Usage: boundwright " + name + " ");
      if (!name.equals("rehearse")) {
        assertThat(all).containsPattern("(?m)^  " + name + " +\\S");
      }
    }
  }

  @Test
  void whatIsAskedBeforeACommandHoldsForItAndAMistypedNameIsHelped(@TempDir Path dir) {
    Terminal t = new Terminal(dir);
    assertThat(t.ok("--json", "count", "RRL").json().isObject()).isTrue();
    assertThat(t.ok("count", "RRL", "--json").json().isObject()).isTrue();
    t.refused("Did you mean: boundwright season", "seson");
  }
}
