package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Surface;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.keep.FilmsAwayException;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Move;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.io.TempDir;

/** Films in a real S3-compatible server; what happens to them is compared with what happens to films in a folder. */
@SqliteFile("films are in the bucket whichever database has the rows; what needs one rows' server takes it by itself")
@SuppressWarnings("NullAway.Init") // JUnit fills the folders in
class BucketFilmsTest {
  @TempDir Path dir;
  private FilmServer server;
  private String name;

  @BeforeEach
  void named(TestInfo test) {
    server = FilmServer.shared();
    name = test.getTestMethod().orElseThrow().getName();
  }

  private DataPlace place(String machine) {
    return Stores.at(dir.resolve(machine)).withFilms(server.at(name));
  }

  private Workbench open(String machine, FakeScan scan) {
    return Workbench.open(place(machine), Fixtures.CLOCK, scan, (order, listener) -> 0);
  }

  private static ClipRecord take(Workbench w, String film) {
    long ada = w.athletes().byName("Ada").orElseGet(() -> w.athletes().add(Fixtures.athlete("Ada"))).id();
    return w.clips().take(ada, null, "a.MOV", new ByteArrayInputStream(film.getBytes(StandardCharsets.UTF_8)), null, 2, Surface.GRASS, null);
  }

  private static void await(String what, BooleanSupplier reached) throws InterruptedException {
    for (int i = 0; i < 12_000; i++) {
      if (reached.getAsBoolean()) {
        return;
      }
      Thread.sleep(10);
    }
    throw new AssertionError("never came to be: " + what);
  }

  private static void await(Workbench w, ClipRecord clip, ClipState state) throws InterruptedException {
    await("clip " + clip.id() + " " + state, () -> w.clips().clip(clip.id()).state() == state);
  }

  private static List<String> files(Path folder, String ending) throws IOException {
    try (var all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).map(f -> folder.relativize(f).toString()).filter(f -> f.matches(ending)).sorted().toList();
    }
  }

  /** Every picture of a clip, by its frame. */
  private static Map<Integer, String> pictures(Workbench w, ClipRecord clip) throws IOException {
    Map<Integer, String> found = new TreeMap<>();
    for (int i = 0; i < FakeScan.FOUND.firstFrame() + FakeScan.FOUND.track().frames() + 10; i++) {
      Path still = w.clips().still(clip.id(), i).orElse(null);
      if (still != null) {
        found.put(i, Files.readString(still));
      }
    }
    return found;
  }

  @Test
  void aFilmIsReadAndShownAsFromAFolderAndNothingOfItStaysOnTheMachine() throws Exception {
    FakeScan there = new FakeScan();
    FakeScan here = new FakeScan();
    try (Workbench far = open("far", there);
        Workbench near = Workbench.open(Stores.at(dir.resolve("near")), Fixtures.CLOCK, here, (order, listener) -> 0)) {
      ClipRecord a = take(far, "good film");
      ClipRecord b = take(near, "good film");
      assertThat(server.held(name)).containsExactly("clips/" + a.id() + "/film.mov");
      assertThat(files(dir.resolve("far"), ".*(film|arriving).*")).isEmpty();
      far.clips().start();
      near.clips().start();
      await(far, a, ClipState.READ);
      await(near, b, ClipState.READ);
      assertThat(there.begun).isEqualTo(here.begun).containsExactly("good film");
      assertThat(far.clips().points(a).track().frames()).isEqualTo(near.clips().points(b).track().frames());
      assertThat(pictures(far, a)).isEqualTo(pictures(near, b)).isNotEmpty();
      assertThat(server.held(name)).containsExactly("clips/" + a.id() + "/film.mov", "clips/" + a.id() + "/stills-all.zip");
      await("no film on the machine", () -> !Files.exists(there.orders.get(0).film()));

      far.clips().dropFilm(a.id());
      near.clips().dropFilm(b.id());
      assertThat(pictures(far, a)).isEqualTo(pictures(near, b));
      assertThat(server.held(name)).containsExactly("clips/" + a.id() + "/stills-all.zip");
      far.clips().removeAll(far.athletes().byName("Ada").orElseThrow().id());
      assertThat(server.held(name)).isEmpty();
    }
    assertThat(files(dir.resolve("far"), ".*brought.*")).isEmpty();
  }

  @Test
  void theFilmIsReadByAnotherMachineThatHasNothingOfItsOwn() throws Exception {
    FakeScan scan = new FakeScan();
    DataPlace rows = new DataPlace(dir.resolve("server"), Stores.schemaOf(dir), server.at(name));
    DataPlace worker = new DataPlace(dir.resolve("worker"), rows.database(), rows.films());
    try (Workbench server1 = Workbench.open(rows, Fixtures.CLOCK, new FakeScan(), (order, listener) -> 0);
        Workbench reads = Workbench.open(worker, Fixtures.CLOCK, scan, (order, listener) -> 0)) {
      ClipRecord clip = take(server1, "good film");
      reads.clips().start();
      await(server1, clip, ClipState.READ);
      assertThat(scan.begun).containsExactly("good film");
      assertThat(pictures(server1, clip)).hasSize(FakeScan.FOUND.track().frames());
    }
  }

  @Test
  void aStoreThatIsAwayKeepsNothingHalfAndTheFilmIsReadWhenItIsBack() throws Exception {
    FakeScan scan = new FakeScan();
    try (Workbench w = open("data", scan)) {
      try {
        ClipRecord kept = take(w, "good film");
        server.stop();
        assertThatThrownBy(() -> take(w, "good second"))
            .isInstanceOf(FilmsAwayException.class)
            .hasMessageContaining("cannot be used now").hasMessageContaining("Nothing that is kept is lost").hasMessageNotContaining(FilmServer.SECRET);
        assertThat(w.clips().all()).extracting(ClipRecord::id).containsExactly(kept.id());
        assertThatThrownBy(() -> w.clips().remove(kept.id())).isInstanceOf(FilmsAwayException.class);
        assertThat(w.clips().all()).extracting(ClipRecord::id).containsExactly(kept.id());
        w.clips().retry(kept.id(), null, 0); // removing had called it off
        w.clips().start();
        await("a try that failed", () -> executed(w));
        assertThat(w.clips().clip(kept.id()).state()).isNotIn(ClipState.REFUSED, ClipState.CANCELLED);
        server.start();
        w.database().write(h -> h.createUpdate("UPDATE job SET execution_time = 0").execute()); // not in half a minute, now
        await(w, kept, ClipState.READ);
        assertThat(scan.begun).containsExactly("good film");
      } finally {
        server.start();
      }
    }
  }

  /** The job was put off. */
  private static boolean executed(Workbench w) {
    return w.clips().all().get(0).state() == ClipState.WAITING
        && w.database().read(h -> h.createQuery("SELECT count(*) FROM job WHERE picked = :no AND version > 1").bind("no", false).mapTo(Integer.class).one()) == 1;
  }

  @Test
  void aBackupWithFilmsHoldsThemAndIsRestoredIntoAFolder() throws Exception {
    Path zip = dir.resolve("away.zip");
    ClipRecord clip;
    Map<Integer, String> shown;
    try (Workbench w = open("data", new FakeScan())) {
      clip = take(w, "good film");
      w.clips().start();
      await(w, clip, ClipState.READ);
      shown = pictures(w, clip);
      try (var out = Files.newOutputStream(zip)) {
        w.backups().packed(out, true);
      }
    }
    Workbench.restoring(dir.resolve("again"), Fixtures.CLOCK).from(zip, () -> new char[0]);
    try (Workbench w = Workbench.open(dir.resolve("again"), Fixtures.CLOCK)) {
      assertThat(Files.readString(dir.resolve("again").resolve("clips").resolve(Long.toString(clip.id())).resolve("film.mov"))).isEqualTo("good film");
      assertThat(pictures(w, clip)).isEqualTo(shown).isNotEmpty();
    }
  }

  @Test
  void aMoveTakesFilmsIntoTheBucketAndOutOfIt() throws Exception {
    DataPlace folder = DataPlace.of(dir.resolve("data"));
    ClipRecord clip;
    Map<Integer, String> shown;
    try (Workbench w = Workbench.open(folder, Fixtures.CLOCK, new FakeScan(), (order, listener) -> 0)) {
      clip = take(w, "good film");
      w.clips().start();
      await(w, clip, ClipState.READ);
      shown = pictures(w, clip);
    }
    DataPlace far = new DataPlace(dir.resolve("new"), Stores.schemaOf(dir), server.at(name));
    new Move(folder, far, Fixtures.CLOCK).run();
    assertThat(server.held(name)).containsExactly("clips/" + clip.id() + "/film.mov", "clips/" + clip.id() + "/stills-all.zip");
    assertThat(files(dir.resolve("new"), ".*(film\\.|stills).*")).isEmpty();
    try (Workbench w = Workbench.open(far, Fixtures.CLOCK)) {
      assertThat(pictures(w, clip)).isEqualTo(shown);
      assertThat(w.checkData().troubles()).noneMatch(t -> t.contains("film"));
      w.clips().clip(clip.id());
    }
    DataPlace back = DataPlace.of(dir.resolve("back"));
    new Move(far, back, Fixtures.CLOCK).run();
    try (Workbench w = Workbench.open(back, Fixtures.CLOCK)) {
      assertThat(pictures(w, clip)).isEqualTo(shown).isNotEmpty();
      assertThat(dir.resolve("back").resolve("clips").resolve(Long.toString(clip.id())).resolve("film.mov")).hasContent("good film");
    }
    assertThatThrownBy(() -> new Move(folder, new DataPlace(dir.resolve("other"), Stores.schema("bucket_other"), server.at(name)), Fixtures.CLOCK).run())
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("holds films already");
  }

  @Test
  void aFilmThatIsMissingInTheBucketIsFoundByTheCheck() throws Exception {
    try (Workbench w = open("data", new FakeScan())) {
      ClipRecord clip = take(w, "good film");
      assertThat(w.checkData().troubles()).noneMatch(t -> t.contains("film"));
      Files.delete(server.lying(name + "/clips/" + clip.id() + "/film.mov"));
      assertThat(w.checkData().troubles()).anyMatch(t -> t.startsWith("The film is gone of clip " + clip.id()));
      w.clips().start();
      await(w, clip, ClipState.REFUSED);
      assertThat(w.clips().clip(clip.id()).trouble()).contains("not in the store of the films");
    }
  }

  @Test
  void whatAKilledProgramHadBroughtGoesAtTheNextStart() throws Exception {
    Path left = Files.createDirectories(dir.resolve("data").resolve("brought").resolve("by1"));
    Files.writeString(left.resolve("film1.mov"), "somebody's film");
    Files.createFile(left.resolveSibling("by1.lock"));
    try (Workbench w = open("data", new FakeScan())) {
      assertThat(left).doesNotExist();
      assertThat(w.clips().all()).isEmpty();
    }
  }

  @Test
  void filmsInTheFolderAreNeverMixedWithThoseInABucket() throws Exception {
    try (Workbench w = Workbench.open(Stores.at(dir.resolve("data")), Fixtures.CLOCK, new FakeScan(), (order, listener) -> 0)) {
      take(w, "good film");
    }
    assertThatThrownBy(() -> open("data", new FakeScan())).isInstanceOf(RefusedException.class).hasMessageContaining("holds films");
  }
}
