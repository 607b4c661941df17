package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.ChildProgram;
import boundwright.flight.Rep;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Killing the program at any moment loses no rep that was answered. */
@SqliteFile("kills a program that writes its file")
class CrashTest {
  private static final long SEED = 11;

  @Test
  void aKillLosesNoRepThatWasAnswered(@TempDir Path dir) throws Exception {
    Random random = new Random(SEED);
    List<Long> answered = new ArrayList<>();
    for (int round = 0; round < 5; round++) {
      answered.addAll(runAndKill(dir, 1 + random.nextInt(60), random.nextInt(4_000_000), random.nextLong()));
      try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
        long ada = w.athletes().byName("Ada").orElseThrow().id();
        Set<Long> stored = w.reps().inOrder(ada).stream().map(Rep::id).collect(Collectors.toSet());
        assertThat(stored).as("seed %d, round %d", SEED, round).containsAll(answered);
        // At most the one rep that was on its way to its answer may be there besides, in each round.
        assertThat(stored.size()).isBetween(answered.size(), answered.size() + round + 1);
        String found = w.database().read(h -> h.createQuery("PRAGMA integrity_check").mapTo(String.class).first());
        assertThat(found).isEqualTo("ok");
      }
    }
  }

  /** Lets the program answer {@code lines} reps, then a little longer [ns], then kills it; gives back all it answered. */
  private static List<Long> runAndKill(Path dir, int lines, int longer_ns, long seed) throws Exception {
    Process program = ChildProgram.start(LoggingProgram.class, dir.toString(), String.valueOf(seed));
    StringBuilder said = new StringBuilder();
    var out = program.getInputStream();
    int seen = 0;
    while (seen < lines) {
      int c = out.read();
      assertThat(c).as("the program ended before it was killed").isNotNegative();
      said.append((char) c);
      if (c == '\n') {
        seen++;
      }
    }
    long until = System.nanoTime() + longer_ns;
    while (System.nanoTime() < until) {
      Thread.onSpinWait();
    }
    // By its handle: Process.destroyForcibly would also close the pipe, and with it what was answered last.
    program.toHandle().destroyForcibly();
    said.append(new String(out.readAllBytes(), StandardCharsets.UTF_8));
    program.waitFor();
    // A number that was cut off in the middle was not answered.
    return said.substring(0, said.lastIndexOf("\n") + 1).lines().map(String::strip).map(Long::valueOf).toList();
  }
}
