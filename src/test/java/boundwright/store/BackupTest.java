package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.Copy;
import boundwright.store.engine.Schema;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup is whole or not there, and replaces nothing. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("copies of the file; PostgresTest makes one of a schema")
class BackupTest {
  @TempDir Path dir;

  private Path home() {
    return dir.resolve("squad");
  }

  private Workbench filled() {
    Workbench w = Stores.open(home(), Fixtures.CLOCK);
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    w.reps()
        .write(
            s -> {
              for (int i = 0; i < 500; i++) {
                s.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
              }
              return 0;
            });
    return w;
  }

  @Test
  void aBackupMadeWhileTheStoreIsOpenIsAWholeStore() throws Exception {
    try (Workbench w = filled()) {
      Path made = new Backup(w).backup(dir);
      assertThat(made).isEqualTo(dir.resolve("boundwright-20260512-150000.db"));
      Path restored = Files.createDirectory(dir.resolve("restored"));
      Files.copy(made, restored.resolve(Schema.FILE_NAME));
      try (Workbench r = Stores.open(restored, Fixtures.CLOCK)) {
        assertThat(r.athletes().all()).isEqualTo(w.athletes().all());
        long id = r.athletes().all().get(0).id();
        assertThat(r.reps().inOrder(id)).isEqualTo(w.reps().inOrder(id)).hasSize(500);
        r.reps().write(s -> s.add(Fixtures.tap(id, Fixtures.TODAY)));
      }
    }
  }

  @Test
  void anOlderBackupIsNeverReplaced() throws Exception {
    try (Workbench w = filled()) {
      Path target = Files.writeString(dir.resolve("b.db"), "older");
      assertThatThrownBy(() -> new Backup(w).backup(target))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining(target + " is there already and is never replaced");
      assertThat(target).hasContent("older");
      assertThatThrownBy(() -> new Backup(w).backup(dir.resolve("none").resolve("b.db")))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("is not there");
      assertNoLeftOvers();
    }
  }

  @Test
  void aDamagedStoreGivesNoBackup() throws Exception {
    filled().close();
    Path file = home().resolve(Schema.FILE_NAME);
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
      byte[] rubbish = new byte[4096];
      Arrays.fill(rubbish, (byte) 0x5a);
      bytes.seek(bytes.length() - 2 * 4096);
      bytes.write(rubbish);
      bytes.write(rubbish);
    }
    try (Workbench w = Stores.open(home(), Fixtures.CLOCK)) {
      assertThatThrownBy(() -> new Backup(w).backup(dir.resolve("b.db")))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("No backup was made")
          .hasMessageContaining(file + " is damaged");
    }
    assertThat(dir.resolve("b.db")).doesNotExist();
    assertNoLeftOvers();
  }

  @Test
  void aCopyThatBreaksTheSchemaIsNoBackup() throws Exception {
    filled().close();
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + home().resolve(Schema.FILE_NAME));
        Statement s = c.createStatement()) {
      s.execute("PRAGMA ignore_check_constraints = 1");
      s.execute("UPDATE athlete SET take_off_foot = 'X'");
    }
    try (Workbench w = Stores.open(home(), Fixtures.CLOCK)) {
      assertThatThrownBy(() -> new Backup(w).backup(dir.resolve("b.db")))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("the copy is not whole (CHECK constraint failed in athlete)");
    }
    assertThat(dir.resolve("b.db")).doesNotExist();
    assertNoLeftOvers();
  }

  @Test
  void aCopyThatIsNotWholeIsToldFromOneThatIs() throws Exception {
    Path good;
    try (Workbench w = filled()) {
      good = new Backup(w).backup(dir.resolve("good.db"));
    }
    Copy.check(good);
    byte[] bytes = Files.readAllBytes(good);
    Path cut = Files.write(dir.resolve("cut.db"), Arrays.copyOf(bytes, bytes.length - 4096));
    assertThatThrownBy(() -> Copy.check(cut)).isInstanceOf(RefusedException.class).hasMessageContaining("No backup was made");
    Path text = Files.writeString(dir.resolve("text.db"), "no database at all, only some text that is long enough to be read as one");
    assertThatThrownBy(() -> Copy.check(text)).isInstanceOf(RefusedException.class);
    Path empty = Files.createFile(dir.resolve("empty.db"));
    assertThatThrownBy(() -> Copy.check(empty)).isInstanceOf(RefusedException.class);
  }

  private void assertNoLeftOvers() throws Exception {
    try (var files = Files.list(dir)) {
      assertThat(files).noneMatch(f -> f.toString().endsWith(".part"));
    }
  }
}
