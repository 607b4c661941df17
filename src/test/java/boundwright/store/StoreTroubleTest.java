package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import boundwright.store.engine.Schema;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.stream.Stream;
import org.flywaydb.core.api.MigrationState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** Each failure of the disk or the database, brought about on the real engine, is a sentence and loses nothing. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("locks, fills and breaks the file; PostgresTest has the troubles of a server")
class StoreTroubleTest {
  private static final Database.Tuning HASTY = new Database.Tuning(50, 0);

  @TempDir Path dir;

  private Path file() {
    return dir.resolve(Schema.FILE_NAME);
  }

  private Workbench open() {
    return Stores.open(dir, Fixtures.CLOCK, HASTY);
  }

  private Connection raw() throws Exception {
    return DriverManager.getConnection("jdbc:sqlite:" + file());
  }

  @Test
  void anotherProgramIsWriting() throws Exception {
    try (Workbench w = open();
        Connection other = raw();
        Statement s = other.createStatement()) {
      Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
      s.execute("BEGIN IMMEDIATE");
      assertThatThrownBy(() -> w.reps().write(x -> x.add(Fixtures.tap(ada.id(), Fixtures.TODAY))))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("Another boundwright is writing to " + file())
          .hasMessageContaining("Wait until it is done, or close it");
      // Reading goes on, and so does opening a second program.
      assertThat(w.athletes().all()).containsExactly(ada);
      try (Workbench second = open()) {
        assertThat(second.athletes().all()).containsExactly(ada);
      }
      s.execute("COMMIT");
      w.reps().write(x -> x.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
      assertThat(w.reps().inOrder(ada.id())).hasSize(1);
    }
  }

  @Test
  void aLongWriteOfThisProgramIsNotWaitedForForEver() throws Exception {
    try (Workbench w = open()) {
      CountDownLatch inside = new CountDownLatch(1);
      CountDownLatch finish = new CountDownLatch(1);
      Thread importing =
          new Thread(
              () ->
                  w.reps()
                      .write(
                          x -> {
                            inside.countDown();
                            try {
                              finish.await();
                            } catch (InterruptedException e) {
                              throw new IllegalStateException(e);
                            }
                            return 0;
                          }));
      importing.start();
      inside.await();
      assertThatThrownBy(() -> w.athletes().add(Fixtures.athlete("Ada")))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("A long write");
      finish.countDown();
      importing.join();
      assertThat(w.athletes().add(Fixtures.athlete("Ada")).id()).isPositive();
    }
  }

  @Test
  void theDiskIsFull() {
    Athlete ada;
    int kept = 0;
    try (Workbench w = open()) {
      ada = w.athletes().add(Fixtures.athlete("Ada"));
    }
    int pages = (int) (file().toFile().length() / 4096);
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK, new Database.Tuning(50, pages + 4))) {
      RefusedException full = null;
      while (full == null && kept < 10_000) {
        try {
          // Ten at a time, so that the disk is full in the middle of an entry.
          w.reps()
              .write(
                  s -> {
                    for (int i = 0; i < 10; i++) {
                      s.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
                    }
                    return 10;
                  });
          kept += 10;
        } catch (RefusedException e) {
          full = e;
        }
      }
      assertThat(full)
          .hasMessageContaining("The disk that holds " + file() + " is full")
          .hasMessageContaining("Nothing of this entry was kept; everything logged before it is safe")
          .hasMessageContaining("Free some space and log it again");
      assertThat(kept).isPositive();
      assertThat(w.reps().inOrder(ada.id())).hasSize(kept);
      // An inner write that fills the disk is not glossed over by the outer one going on.
      assertThatThrownBy(
              () ->
                  w.reps()
                      .write(
                          s -> {
                            for (int i = 0; i < 1_000; i++) {
                              w.athletes().add(Fixtures.athlete("Athlete " + i));
                            }
                            return 0;
                          }))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("is full");
      assertThat(w.athletes().all()).containsExactly(ada);
    }
    try (Workbench w = open()) {
      assertThat(w.reps().inOrder(ada.id())).hasSize(kept);
      w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
      assertThat(w.reps().inOrder(ada.id())).hasSize(kept + 1);
    }
  }

  @Test
  void aPageIsDamaged() throws Exception {
    Athlete ada;
    try (Workbench w = open()) {
      ada = w.athletes().add(Fixtures.athlete("Ada"));
      w.reps()
          .write(
              s -> {
                for (int i = 0; i < 500; i++) {
                  s.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
                }
                return 0;
              });
    }
    try (RandomAccessFile bytes = new RandomAccessFile(file().toFile(), "rw")) {
      byte[] rubbish = new byte[4096];
      Arrays.fill(rubbish, (byte) 0x5a);
      for (long at = 4 * 4096; at + 4096 <= bytes.length(); at += 4096) {
        bytes.seek(at);
        bytes.write(rubbish);
      }
    }
    byte[] before = Files.readAllBytes(file());
    assertThatThrownBy(
            () -> {
              try (Workbench w = open()) {
                w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
              }
            })
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("The database " + file() + " is damaged")
        .hasMessageContaining("Nothing in it was changed. Copy the file aside")
        .hasMessageContaining("--data OTHER")
        .hasMessageContaining("import your last export");
    assertThat(Arrays.equals(Files.readAllBytes(file()), before)).as("file unchanged").isTrue();
  }

  @Test
  void aTextFileHasTheNameOfTheDatabase() throws Exception {
    Files.writeString(file(), "Remember to rake the sand.\n".repeat(100));
    byte[] before = Files.readAllBytes(file());
    assertThatThrownBy(this::open)
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("is damaged or is not a database. Nothing in it was changed.");
    assertThat(Arrays.equals(Files.readAllBytes(file()), before)).as("file unchanged").isTrue();
  }

  @Test
  void aDatabaseOfAnotherProgramIsLeftAlone() throws Exception {
    try (Connection c = raw();
        Statement s = c.createStatement()) {
      s.execute("CREATE TABLE recipe (name TEXT)");
    }
    byte[] before = Files.readAllBytes(file());
    assertThatThrownBy(this::open).isInstanceOf(RefusedException.class).hasMessageContaining("is a database of another program");
    assertThat(Arrays.equals(Files.readAllBytes(file()), before)).as("file unchanged").isTrue();
  }

  @Test
  void aDatabaseOfANewerProgramIsLeftAlone() throws Exception {
    try (Workbench w = open()) {
      w.athletes().add(Fixtures.athlete("Ada"));
    }
    try (Connection c = raw();
        Statement s = c.createStatement()) {
      s.execute(
          "INSERT INTO flyway_schema_history SELECT installed_rank + 1, '99', 'tomorrow', type, 'V99__tomorrow.sql', 0,"
              + " installed_by, installed_on, 1, 1 FROM flyway_schema_history ORDER BY installed_rank DESC LIMIT 1");
    }
    assertThatThrownBy(this::open)
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("was written by a newer boundwright (its version 99")
        .hasMessageContaining("Nothing in it was changed");
  }

  @Test
  void theSchemaNumberIsThatOfTheNewestScript() {
    try (Workbench w = open()) {
      assertThat(w.athletes().all()).isEmpty();
    }
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file());
    var flyway = Schema.flyway(source);
    flyway.validate();
    var all = List.of(flyway.info().all());
    assertThat(all).allSatisfy(m -> assertThat(m.getState()).isEqualTo(MigrationState.SUCCESS));
    assertThat(String.valueOf(all.get(all.size() - 1).getVersion())).isEqualTo(String.valueOf(Schema.NEWEST));
  }

  @Test
  void theDataFolderIsAFile() throws Exception {
    Path note = Files.writeString(dir.resolve("note.txt"), "x");
    assertThatThrownBy(() -> Stores.open(note, Fixtures.CLOCK))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("The data folder " + note + " is a file");
    assertThatThrownBy(() -> Stores.open(note.resolve("below"), Fixtures.CLOCK))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("cannot be made");
  }

  @Test
  void theDatabaseCannotBeOpened() throws Exception {
    Files.createDirectory(file());
    assertThatThrownBy(this::open).isInstanceOf(RefusedException.class).hasMessageContaining("cannot be opened or made");
  }

  @Test
  void theDatabaseMayOnlyBeRead() {
    try (Workbench w = open()) {
      Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
      // The engine's own switch: file rights would not stop an administrator, and tests may run as one.
      assertThatThrownBy(
              () ->
                  w.database()
                      .read(
                          h -> {
                            h.execute("PRAGMA query_only = 1");
                            try {
                              return h.execute("DELETE FROM athlete");
                            } finally {
                              h.execute("PRAGMA query_only = 0");
                            }
                          }))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("can only be read, not written. Nothing was kept.");
      assertThat(w.athletes().all()).containsExactly(ada);
    }
  }

  @Test
  void theFolderMayOnlyBeRead() throws Exception {
    Path locked = Files.createDirectory(dir.resolve("locked"));
    assertThat(locked.toFile().setWritable(false)).isTrue();
    try {
      if (Files.isWritable(locked)) {
        // An administrator may write everywhere but where the kernel itself refuses.
        locked = Path.of("/proc/self");
        assumeTrue(Files.isDirectory(locked));
      }
      Path folder = locked;
      assertThatThrownBy(() -> Stores.open(folder, Fixtures.CLOCK, HASTY))
          .isInstanceOf(RefusedException.class)
          .hasMessageMatching("(?s).*(can only be read|cannot be opened or made).*--data.*");
    } finally {
      assertThat(dir.resolve("locked").toFile().setWritable(true)).isTrue();
    }
  }

  @Test
  void twoProgramsMayStartOnAnEmptyFolderAtOnce() throws Exception {
    CountDownLatch go = new CountDownLatch(1);
    var pool = Executors.newFixedThreadPool(2);
    var starts =
        Stream.generate(
                () ->
                    pool.submit(
                        () -> {
                          go.await();
                          try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
                            return w.athletes().all().size();
                          }
                        }))
            .limit(2)
            .toList();
    go.countDown();
    for (var start : starts) {
      assertThat(start.get()).isZero();
    }
    pool.shutdown();
  }
}
