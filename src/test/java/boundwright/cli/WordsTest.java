package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the terminal says is said in a coach's words: none of the code's (house rule; design, screen words). */
class WordsTest {
  static final Pattern NO_COACH_SAYS = Pattern.compile("(?i)\\b(windows?|asked chance|rungs?|gates?|guards?|judged)\\b");

  @TempDir Path folder = Path.of("");

  @ParameterizedTest
  @ValueSource(
      strings = {
        "marks", "count", "card", "report", "log", "import", "export", "serve", "load", "ready", "pain", "growth", "hold", "back", "phases", "long-jump", "take-offs", "legs", "approach",
        "full-run", "weather", "chance", "aim", "meet", "clip", "session"
      })
  void helpIsInACoachsWords(String command) {
    Said said = new Terminal(folder).run(command, "--help");
    assertThat(said.exit()).isZero();
    assertThat(said.out()).doesNotContainPattern(NO_COACH_SAYS);
  }

  @ParameterizedTest
  @ValueSource(strings = {"--help", "example", "plan", "mend", "explain", "conflicts", "calendar", "keep", "file", "simulate"})
  void soIsThatOfASeason(String command) {
    Said said = command.startsWith("-") ? new Terminal(folder).run("season", command) : new Terminal(folder).run("season", command, "--help");
    assertThat(said.exit()).isZero();
    assertThat(said.out()).isNotBlank().doesNotContainPattern(NO_COACH_SAYS);
  }

  @Test
  void soAreMarksLoadAndReady() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    for (String sequence : new String[] {"RRL x2", "RL x5", "R x6"}) {
      Said marks = terminal.run("marks", "--athlete", "Orla Tamsin", "--sequence", sequence, "--steps", "4");
      assertThat(marks.out()).contains("that the rep counts").doesNotContainPattern(NO_COACH_SAYS);
    }
    for (String command : new String[] {"load", "ready"}) {
      Said said = terminal.run(command, "--athlete", "Orla Tamsin");
      assertThat(said.out()).isNotBlank().doesNotContainPattern(NO_COACH_SAYS);
    }
  }
}
