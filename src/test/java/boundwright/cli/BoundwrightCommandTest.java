package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BoundwrightCommandTest {
  @TempDir Path folder = Path.of("");

  @ParameterizedTest
  @ValueSource(strings = {"marks", "count", "card", "log", "import", "export", "serve"})
  void everyCommandHelpsItself(String command) {
    Said said = new Terminal(folder).run(command, "--help");
    assertThat(said.exit()).isZero();
    assertThat(said.out()).contains("Usage: boundwright " + command).contains("--json").contains("--help");
    assertThat(said.err()).isEmpty();
  }

  @Test
  void aloneItShowsTheCommands() {
    Said said = new Terminal(folder).run();
    assertThat(said.exit()).isZero();
    assertThat(said.out()).contains("marks").contains("count").contains("card").contains("log").contains("import").contains("export").contains("serve");
  }

  @Test
  void aBadOptionIsAShortSentenceAndAHint() {
    Said said = new Terminal(folder).run("count", "RRL", "--stes", "4");
    assertThat(said.exit()).isEqualTo(2);
    assertThat(said.err()).contains("--stes").contains("boundwright count --help");
    assertThat(said.err().lines().count()).isLessThanOrEqualTo(4);
    assertThat(new Terminal(folder).run("mark").err()).contains("marks");
    assertThat(new Terminal(folder).run("marks", "--sequence", "RRL").err()).contains("--athlete");
    assertThat(new Terminal(folder).run("count", "RRL", "--sets", "many").err()).contains("many").doesNotContain("Exception");
  }
}
