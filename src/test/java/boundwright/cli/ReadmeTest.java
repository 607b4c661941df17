package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the README shows is what the program says. */
class ReadmeTest {
  @TempDir Path folder = Path.of("");

  private static String example(String command) throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    Matcher m = Pattern.compile("\\$ \\./boundwright " + command + " ([^\\n]*)\\n(.*?)```", Pattern.DOTALL).matcher(readme);
    assertThat(m.find()).as(command).isTrue();
    return m.group(2);
  }

  @Test
  void theCountIsTheProgramsOwn() throws IOException {
    assertThat(new Terminal(folder).run("count", "RRL x3").out()).isEqualTo(example("count"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"phases", "aim"})
  void theJumpIsTheProgramsOwn(String command) throws IOException {
    Matcher m = Pattern.compile("\\$ \\./boundwright (" + command + " [^\\n]*)\\n").matcher(Files.readString(Path.of("README.md")));
    assertThat(m.find()).as(command).isTrue();
    assertThat(new Terminal(folder).run(m.group(1).split(" ")).out()).isEqualTo(example(command));
  }

  /** The figures change as the model learns to learn; the names must not. */
  @Test
  void theMarksHaveTheseNames() throws IOException {
    JsonNode shown = new ObjectMapper().readTree(example("marks"));
    Terminal terminal = new Terminal(folder);
    terminal.run("serve", "--demo", "--port", "0");
    Said said =
        terminal.run(
            "marks", "--athlete", "Wren Samphire", "--sequence", "RRL RRL", "--steps", "4", "--data", "data-demo", "--json");
    assertThat(said.exit()).as(said.err()).isZero();
    same("", shown, said.json());
  }

  private static void same(String at, JsonNode shown, JsonNode real) {
    assertThat(real.getNodeType()).as(at).isEqualTo(shown.getNodeType());
    shown.fieldNames().forEachRemaining(name -> {
      assertThat(real.has(name)).as(at + "/" + name).isTrue();
      same(at + "/" + name, shown.get(name), real.get(name));
    });
  }
}
