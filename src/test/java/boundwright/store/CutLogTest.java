package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.ChildProgram;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Schema;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log that was cut, an older file in the database's place, or none at all: said in words, and nothing further is lost. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("cuts the log beside the file")
class CutLogTest {
  @TempDir Path dir;

  /** Lets another program answer so many reps and kills it, so that the log beside the database stays. */
  private void answeredAndKilled(int reps) throws Exception {
    Process program = ChildProgram.start(LoggingProgram.class, dir.toString(), "3");
    try (BufferedReader said = new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < reps; i++) {
        assertThat(said.readLine()).isNotNull();
      }
    } finally {
      program.destroyForcibly().waitFor();
    }
  }

  private Path file(String ending) {
    return dir.resolve(Schema.FILE_NAME + ending);
  }

  private int reps(Path folder) {
    try (Workbench w = Stores.open(folder, Fixtures.CLOCK)) {
      return w.reps().inOrder(w.athletes().byName("Ada").orElseThrow().id()).size();
    }
  }

  @Test
  void aLogCutInHalfIsSaidAndKeptAsItWasFound() throws Exception {
    answeredAndKilled(24);
    long half = Files.size(file("-wal")) / 2;
    try (RandomAccessFile log = new RandomAccessFile(file("-wal").toFile(), "rw")) {
      log.setLength(half);
    }
    String lost;
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      lost = w.backups().lost();
      assertThat(lost).contains("that boundwright had kept").contains("its log was cut").contains(dir.resolve("as-found").toString());
      w.reps().write(s -> s.add(Fixtures.tap(w.athletes().all().get(0).id(), Fixtures.TODAY)));
    }
    assertThat(Files.size(dir.resolve("as-found").resolve(Schema.FILE_NAME + "-wal"))).isEqualTo(half);
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      assertThat(w.backups().lost()).as("said until it was read").isEqualTo(lost);
      w.backups().seen();
      assertThat(w.backups().lost()).isEmpty();
    }
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      assertThat(w.backups().lost()).as("and not again").isEmpty();
    }
    assertThat(reps(dir.resolve("as-found"))).isEqualTo(reps(dir) - 1);
  }

  @Test
  void anOlderFileInItsPlaceIsSaidToo() throws Exception {
    answeredAndKilled(3);
    assertThat(reps(dir)).isGreaterThanOrEqualTo(3);
    Path older = Files.copy(file(""), dir.resolve("older"));
    answeredAndKilled(5);
    Files.deleteIfExists(file("-wal"));
    Files.deleteIfExists(file("-shm"));
    Files.move(older, file(""), StandardCopyOption.REPLACE_EXISTING);
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      assertThat(w.backups().lost()).contains("or an older file was put in its place");
    }
  }

  @Test
  void noDatabaseIsMadeWhereOneIsGone() throws Exception {
    answeredAndKilled(2);
    for (String ending : new String[] {"", "-wal", "-shm"}) {
      Files.deleteIfExists(file(ending));
    }
    assertThatThrownBy(() -> Stores.open(dir, Fixtures.CLOCK))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("is gone, though")
        .hasMessageContaining("boundwright restore FILE");
    assertThat(file("")).doesNotExist();
  }

  /** A kill leaves the log whole, so nothing is said. */
  @Test
  void aKillIsNoLoss() throws Exception {
    for (int i = 0; i < 2; i++) {
      answeredAndKilled(4 + i);
      try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
        assertThat(w.backups().lost()).isEmpty();
      }
    }
  }
}
