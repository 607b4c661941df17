package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.ChildProgram;
import boundwright.athlete.Athlete;
import boundwright.load.LegCare.MedicalHold;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.DataCheck;
import boundwright.store.backup.Kept;
import boundwright.store.backup.Restore;
import boundwright.store.engine.Schema;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** Backups by themselves, out of the folder, and back; whoever was erased stays so, and what was there before is kept aside. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("files that change places; a backup goes into PostgreSQL by move")
class RestoreTest {
  private static final char[] PASSPHRASE = "four invented words here".toCharArray();
  private static char[] none() {
    throw new AssertionError("no passphrase is needed");
  }

  @TempDir Path dir;

  private Path home() {
    return dir.resolve("squad");
  }

  private Workbench open() {
    return Stores.open(home(), Fixtures.CLOCK);
  }

  private static long withReps(Workbench w, String name, int reps) {
    Athlete a = w.athletes().add(Fixtures.athlete(name));
    for (int i = 0; i < reps; i++) {
      w.reps().write(s -> s.add(Fixtures.tap(a.id(), Fixtures.TODAY)));
    }
    return a.id();
  }

  private Restore.Result restore(Path file) {
    return Workbench.restoring(home(), Fixtures.CLOCK).from(file, RestoreTest::none);
  }

  private static List<String> names(Workbench w) {
    return w.athletes().all().stream().map(Athlete::name).toList();
  }

  /** Copying the file alone kept 1 of 32 reps: the others were in the log beside it. */
  @Test
  void whatWasAnsweredIsInABackupMadeWhileAnotherProgramLogs() throws Exception {
    Process program = ChildProgram.start(LoggingProgram.class, home().toString(), "3");
    List<Long> answered = new ArrayList<>();
    try (BufferedReader said = new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
      for (int i = 0; i < 32; i++) {
        answered.add(Long.valueOf(said.readLine()));
      }
      Kept made;
      try (Workbench w = open()) {
        made = w.backups().now();
      }
      program.destroyForcibly().waitFor();
      try (Workbench w = Stores.open(restoredAlone(made.file()), Fixtures.CLOCK)) {
        long ada = w.athletes().byName("Ada").orElseThrow().id();
        assertThat(w.reps().inOrder(ada)).extracting(r -> r.id()).containsAll(answered);
      }
    } finally {
      program.destroyForcibly();
    }
  }

  private Path restoredAlone(Path backup) {
    Path other = dir.resolve("other");
    Workbench.restoring(other, Fixtures.CLOCK).from(backup, RestoreTest::none);
    return other;
  }

  @Test
  void oneADayByItselfAndOneBeforeTheFormChanges() throws Exception {
    SQLiteDataSource source = new SQLiteDataSource();
    Files.createDirectories(home());
    source.setUrl("jdbc:sqlite:" + home().resolve(Schema.FILE_NAME));
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("14").load().migrate();
    try (Workbench w = open()) {
      assertThat(w.backups().backups().all()).singleElement().satisfies(k -> assertThat(k.counts().version()).isEqualTo(14));
      assertThat(w.backups().daily()).as("that one is of today").isEmpty();
    }
    try (Workbench w = Stores.open(home(), Clock.offset(Fixtures.CLOCK, Duration.ofDays(1)))) {
      assertThat(w.backups().daily()).isPresent();
      assertThat(w.backups().daily()).isEmpty();
    }
  }

  @Test
  void whatIsBroughtBackIsWhatWasThereAndWhatWasThereBeforeIsKeptAside() throws Exception {
    Path backup;
    try (Workbench w = open()) {
      withReps(w, "Ada", 5);
      backup = w.backups().now().file();
      withReps(w, "Bo", 3);
    }
    Restore.Result result = restore(backup);
    try (Workbench w = open()) {
      assertThat(names(w)).containsExactly("Ada");
      assertThat(w.reps().inOrder(w.athletes().all().get(0).id())).hasSize(5);
      assertThat(w.backups().lost()).as("a restore is no loss").isEmpty();
      assertThat(withReps(w, "Cy", 0)).as("a number that was given is not given again").isEqualTo(3);
    }
    try (Workbench w = Stores.open(result.aside(), Fixtures.CLOCK)) {
      assertThat(names(w)).containsExactly("Ada", "Bo");
    }
  }

  @Test
  void anErasedAthleteStaysErasedAfterARestoreAndLeavesTheBackupsToo() throws Exception {
    Path backup;
    try (Workbench w = open()) {
      long ada = withReps(w, "Wendelgard Ada", 5);
      withReps(w, "Bo", 2);
      backup = Files.copy(w.backups().now().file(), dir.resolve("kept-elsewhere.db"));
      w.athletes().erase(ada);
      w.backups().daily();
    }
    try (Stream<Path> files = Files.walk(home())) {
      assertThat(files.filter(Files::isRegularFile))
          .allSatisfy(f -> assertThat(new String(Files.readAllBytes(f), StandardCharsets.ISO_8859_1)).doesNotContain("Wendelgard"));
    }
    assertThat(restore(backup).erasedAgain()).isEqualTo(1);
    try (Workbench w = open()) {
      assertThat(names(w)).containsExactly("Bo");
    }
    assertThat(new String(Files.readAllBytes(home().resolve(Schema.FILE_NAME)), StandardCharsets.ISO_8859_1)).doesNotContain("Wendelgard");
  }

  /** The number of an erased athlete may be given again in a store that went back; its name for good is not. */
  @Test
  void anErasureReachesABackupFromBeforeErasuresWereWrittenDown() throws Exception {
    SQLiteDataSource source = new SQLiteDataSource();
    Files.createDirectories(home());
    source.setUrl("jdbc:sqlite:" + home().resolve(Schema.FILE_NAME));
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("14").load().migrate();
    try (var c = source.getConnection();
        var s = c.createStatement()) {
      s.execute("INSERT INTO athlete (name, name_key, level, take_off_foot, rung) VALUES ('Ada', 'ada', 'INTERMEDIATE', 'R', 4), ('Bo', 'bo', 'INTERMEDIATE', 'R', 4)");
    }
    Path old = Files.copy(home().resolve(Schema.FILE_NAME), dir.resolve("old.db"));
    try (Workbench w = open()) {
      w.athletes().erase(w.athletes().byName("Ada").orElseThrow().id());
      w.backups().daily();
      assertThat(w.backups().backups().all()).singleElement().satisfies(k -> assertThat(k.counts().of("athlete")).isEqualTo(1));
    }
    assertThat(restore(old).erasedAgain()).isEqualTo(1);
    try (Workbench w = open()) {
      assertThat(names(w)).containsExactly("Bo");
    }
  }

  @Test
  void aHeldAthleteComesBackHeldThroughASealedBackupWithFilmsAndCorrections() throws Exception {
    Path sealed = dir.resolve("away.zip.age");
    try (Workbench w = open()) {
      long ada = withReps(w, "Ada", 3);
      w.care().openHold(ada, new MedicalHold(0, Fixtures.TODAY, "invented hold", null, null));
      long clip = new SqlClips(w.database()).add(SqlClipsTest.plain(ada)).id();
      Path folder = Files.createDirectories(home().resolve("clips/" + clip));
      Files.writeString(folder.resolve("film.mp4"), "an invented film");
      Files.writeString(folder.resolve("agreed.label"), "agreed");
      w.backups().sealed(Files.newOutputStream(sealed), PASSPHRASE, true, new Random(1));
      assertThat(w.backups().settings().left()).contains(Fixtures.TODAY);
    }
    assertThat(new String(Files.readAllBytes(sealed), StandardCharsets.ISO_8859_1)).startsWith("age-encryption.org/v1\n").doesNotContain("SQLite");
    Path other = dir.resolve("other");
    Restore back = Workbench.restoring(other, Fixtures.CLOCK);
    assertThatThrownBy(() -> back.from(sealed, () -> "not the passphrase".toCharArray()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("The passphrase does not open this backup");
    assertThat(back.from(sealed, () -> PASSPHRASE).films()).isTrue();
    try (Workbench w = Stores.open(other, Fixtures.CLOCK)) {
      Athlete ada = w.athletes().byName("Ada").orElseThrow();
      assertThat(w.care().care(ada.id(), Fixtures.TODAY).holds()).singleElement().satisfies(h -> assertThat(h.note()).isEqualTo("invented hold"));
    }
    try (Stream<Path> films = Files.walk(other.resolve("clips"))) {
      assertThat(films.filter(Files::isRegularFile).map(f -> f.getFileName().toString())).containsExactlyInAnyOrder("film.mp4", "agreed.label");
    }
  }

  @Test
  void aCutOrStrangeFileChangesNothing() throws Exception {
    Path packed = dir.resolve("away.zip");
    try (Workbench w = open()) {
      withReps(w, "Ada", 50);
      w.backups().packed(Files.newOutputStream(packed), true);
    }
    byte[] whole = Files.readAllBytes(packed);
    Random random = new Random(17);
    for (int i = 0; i < 10; i++) {
      byte[] bytes = whole.clone();
      Path bad = dir.resolve("bad-" + i);
      if (i % 2 == 0) {
        bytes = java.util.Arrays.copyOf(bytes, 30 + random.nextInt(bytes.length - 200));
      } else {
        bytes[random.nextInt(bytes.length / 2)] ^= (byte) (1 + random.nextInt(255));
      }
      Files.write(bad, bytes);
      try {
        restore(bad);
      } catch (RefusedException e) {
        assertThat(e.getMessage()).as("%d", i).endsWith(".");
      }
      try (Workbench w = open()) {
        assertThat(w.reps().inOrder(w.athletes().byName("Ada").orElseThrow().id())).as("%d", i).hasSize(50);
      }
    }
    assertThat(home().resolve("restoring")).doesNotExist();
  }

  @Test
  void nothingIsExchangedUnderAProgramThatHasTheFolderOpen() throws Exception {
    Path backup;
    try (Workbench w = open()) {
      withReps(w, "Ada", 1);
      backup = w.backups().now().file();
      assertThatThrownBy(() -> restore(backup)).isInstanceOf(RefusedException.class).hasMessageContaining("boundwright is open with the folder");
    }
    Process program = ChildProgram.start(LoggingProgram.class, home().toString(), "3");
    try {
      assertThat(program.getInputStream().read()).isNotNegative();
      assertThatThrownBy(() -> restore(backup)).isInstanceOf(RefusedException.class).hasMessageContaining("boundwright is open with the folder");
    } finally {
      program.destroyForcibly().waitFor();
    }
    assertThat(restore(backup).counts().of("rep")).isEqualTo(1);
  }

  /** A restore that was killed before its last step is as if it never was; in its last step it is finished when the folder is opened. */
  @Test
  void aKilledRestoreLeavesTheOldOrTheNew() throws Exception {
    Path backup;
    try (Workbench w = open()) {
      withReps(w, "Ada", 5);
      backup = w.backups().now().file();
      withReps(w, "Bo", 3);
    }
    Path staging = Files.createDirectories(home().resolve("restoring"));
    Files.copy(backup, staging.resolve(Schema.FILE_NAME));
    try (Workbench w = open()) {
      assertThat(names(w)).containsExactly("Ada", "Bo");
    }
    Files.writeString(staging.resolve("ready"), "before-restore-1");
    // killed between putting the old one aside and the new one in its place
    Files.createDirectories(home().resolve("before-restore-1"));
    Files.move(home().resolve(Schema.FILE_NAME), home().resolve("before-restore-1").resolve(Schema.FILE_NAME));
    try (Workbench w = open()) {
      assertThat(names(w)).containsExactly("Ada");
    }
    assertThat(staging).doesNotExist();
    assertThat(home().resolve("before-restore-1").resolve(Schema.FILE_NAME)).exists();
  }

  @Test
  void aShortPassphraseIsRefusedAndAReminderComesWhenNothingLeft() throws Exception {
    try (Workbench w = open()) {
      withReps(w, "Ada", 1);
      assertThat(w.backups().reminder()).isEmpty();
      w.backups().now();
      assertThatThrownBy(() -> w.backups().sealed(Files.newOutputStream(dir.resolve("x")), "short".toCharArray(), false, new Random(1)))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("5 characters is too short: at least 12");
    }
    try (Workbench w = Stores.open(home(), Clock.offset(Fixtures.CLOCK, Duration.ofDays(29)))) {
      assertThat(w.backups().reminder()).isEmpty();
    }
    try (Workbench w = Stores.open(home(), Clock.offset(Fixtures.CLOCK, Duration.ofDays(30)))) {
      assertThat(w.backups().reminder()).isEqualTo("No backup has left this machine for 30 days.");
    }
  }

  @Test
  void theCheckNamesWhatIsWrong() throws Exception {
    try (Workbench w = open()) {
      long ada = withReps(w, "Ada", 2);
      w.backups().now();
      new SqlClips(w.database()).add(SqlClipsTest.plain(ada));
    }
    Files.createDirectories(home().resolve("clips/77"));
    Files.writeString(home().resolve("backups/boundwright-20250101-000000.db"), "no database");
    DataCheck.Report report = new DataCheck(home(), Fixtures.CLOCK).look();
    assertThat(report.backups()).isEqualTo(1);
    assertThat(report.troubles())
        .anySatisfy(t -> assertThat(t).contains("belongs to no clip").contains("77"))
        .anySatisfy(t -> assertThat(t).contains("boundwright-20250101-000000.db cannot be read"));
  }

  @Test
  void everyFileIsItsOwnersAlone() throws Exception {
    try (Workbench w = open()) {
      withReps(w, "Ada", 2);
      w.backups().now();
      try (Stream<Path> files = Files.walk(home())) {
        assertThat(files)
            .allSatisfy(f -> assertThat(java.nio.file.attribute.PosixFilePermissions.toString(Files.getPosixFilePermissions(f))).endsWith("------"));
      }
    }
  }
}
