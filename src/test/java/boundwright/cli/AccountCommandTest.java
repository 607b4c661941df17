package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccountCommandTest {
  @TempDir Path folder = Path.of("");

  @Test
  void accountsAreMadeLinkedAndShutOut() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    assertThat(terminal.run("account").out()).contains("Nobody logs in yet");
    Said made = terminal.run("account", "--add", "Mara", "--name", "Mara Teststrand", "--role", "head-coach", "--json");
    assertThat(made.json().get("enter").asText()).matches("/enter/[0-9a-f]{32}");
    assertThat(made.json().get("accounts").get(0).get("login").asText()).isEqualTo("mara");
    assertThat(terminal.run("account", "--add", "otis", "--name", "Otis", "--role", "assistant").out()).contains("/enter/").contains("otis  Otis, assistant");
    assertThat(terminal.run("account", "--shut", "otis").out()).contains("shut out");
    assertThat(terminal.run("account", "--link", "mara").out()).contains("/enter/");
    assertThat(terminal.run("account", "--open", "otis").out()).doesNotContain("shut out");
  }

  @Test
  void whatCannotBeTakenIsSaidInWords() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    for (String[] bad :
        new String[][] {
          {"--add", "mara"}, {"--add", "mara", "--name", "M", "--role", "king"}, {"--link", "nobody"}, {"--shut", "nobody"}, {"--role", "reader"},
          {"--add", "x y", "--name", "M", "--role", "reader"}, {"--add", "mara", "--link", "mara"}, {"--add", "mara", "--name", "M", "--role", "athlete"},
          {"--add", "mara", "--name", "M", "--role", "athlete", "--athlete", "Nobody Here"}
        }) {
      String[] arguments = new String[bad.length + 1];
      arguments[0] = "account";
      System.arraycopy(bad, 0, arguments, 1, bad.length);
      Said said = terminal.run(arguments);
      assertThat(said.exit()).as(String.join(" ", bad) + said.err()).isEqualTo(2);
      assertThat(said.err()).isNotEmpty().doesNotContain("Exception");
    }
    assertThat(terminal.run("account").out()).contains("Nobody logs in yet");
    terminal.run("account", "--add", "mara", "--name", "M", "--role", "head-coach");
    assertThat(terminal.run("account", "--shut", "mara").err()).contains("only head coach");
  }
}
