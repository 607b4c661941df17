package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;

/** Runs commands in this process on a temporary folder, on an invented day, and catches what they say. */
final class Terminal {
  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-05-14T10:00:00Z"), ZoneOffset.UTC);

  final Path folder;
  final Map<String, String> environment = new HashMap<>();
  Surroundings.Until until = url -> {};

  Terminal(Path folder) {
    this.folder = folder;
  }

  /** What a command said. */
  record Said(int exit, String out, String err) {
    JsonNode json() {
      try {
        return new ObjectMapper().readTree(out);
      } catch (IOException e) {
        throw new UncheckedIOException(out, e);
      }
    }
  }

  Said run(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int exit =
        BoundwrightCommand.run(
            new Surroundings(CLOCK, folder, environment, new PrintWriter(out), new PrintWriter(err), until), arguments);
    return new Said(exit, out.toString(), err.toString());
  }

  /** As {@link #run} what must not fail. */
  Said ok(String... arguments) {
    Said said = run(arguments);
    assertThat(said.exit()).as(said.err()).isZero();
    return said;
  }

  /** As {@link #run} what must be refused, in words that hold these and nothing of the program's inside. */
  void refused(String why, String... arguments) {
    Said said = run(arguments);
    assertThat(said.exit()).as(said.out()).isEqualTo(2);
    assertThat(said.err()).contains(why).doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(said.out()).isEmpty();
  }

  /** An invented squad in the default folder. */
  void squad() {
    try (Workbench bench = Workbench.open(folder.resolve("data"), CLOCK)) {
      bench.athletes().add(new Athlete(0, "Orla Tamsin", Level.INTERMEDIATE, Foot.RIGHT, 4));
      bench.athletes().add(new Athlete(0, "Piet Quill", Level.BEGINNER, Foot.LEFT, 0));
      bench.athletes().add(new Athlete(0, "Zoë Brandel", Level.ADVANCED, Foot.RIGHT, 8));
    }
  }
}
