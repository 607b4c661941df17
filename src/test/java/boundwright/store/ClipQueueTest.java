package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.ChildProgram;
import boundwright.athlete.Surface;
import boundwright.clip.Box;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.FilmHands;
import boundwright.store.engine.JobQueue;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clips go through the real queue in a real database; only the reader of films is made up. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class ClipQueueTest {
  @TempDir Path dir;
  private Workbench w;
  private FakeScan scan;
  private long ada;

  @BeforeEach
  void open() {
    scan = new FakeScan();
    w = Stores.open(dir, Fixtures.CLOCK, scan);
    ada = w.athletes().add(Fixtures.athlete("Ada")).id();
  }

  @AfterEach
  void close() {
    w.close();
  }

  private ClipDesk desk() {
    return w.clips();
  }

  private static ClipRecord take(Workbench w, long athlete, String film) {
    return w.clips()
        .take(
            athlete, null, "a.MOV", new ByteArrayInputStream(film.getBytes(StandardCharsets.UTF_8)), Sequence.parse("RRL RRL"), 2, Surface.GRASS,
            null);
  }

  private ClipRecord take(String film) {
    return take(w, ada, film);
  }

  private static void await(String what, BooleanSupplier reached) throws InterruptedException {
    for (int i = 0; i < 6000; i++) {
      if (reached.getAsBoolean()) {
        return;
      }
      Thread.sleep(10);
    }
    throw new AssertionError("never came to be: " + what);
  }

  private void await(ClipRecord clip, ClipState state) throws InterruptedException {
    await(w, clip, state);
  }

  private static void await(Workbench w, ClipRecord clip, ClipState state) throws InterruptedException {
    await("clip " + clip.id() + " " + state, () -> w.clips().clip(clip.id()).state() == state);
  }

  private int jobs() {
    return w.database().read(h -> h.createQuery("SELECT count(*) FROM job").mapTo(Integer.class).one());
  }

  private void awaitNoJobs() throws InterruptedException {
    await("an empty queue", () -> jobs() == 0);
  }

  @Test
  void clipsWaitForTheStartAndAreReadInTheOrderInWhichTheyCame() throws Exception {
    List<ClipRecord> all = new ArrayList<>();
    for (int i = 1; i <= 12; i++) {
      all.add(take("good " + i));
    }
    assertThat(scan.begun).isEmpty();
    assertThat(desk().all()).allMatch(c -> c.state() == ClipState.WAITING);
    desk().start();
    await(all.get(11), ClipState.READ);
    assertThat(scan.begun).containsExactlyElementsOf(Stream.iterate(1, i -> i + 1).limit(12).map(i -> "good " + i).toList());
    assertThat(desk().all()).allMatch(c -> c.state() == ClipState.READ && c.perMille() == 1000);
    assertThat(desk().points(all.get(0)).track().frames()).isEqualTo(FakeScan.FOUND.track().frames());
    awaitNoJobs();
  }

  @Test
  void progressIsSeenWhileAClipIsRead() throws Exception {
    desk().start();
    ClipRecord clip = take("hold");
    scan.nextHeld();
    assertThat(desk().clip(clip.id())).matches(c -> c.state() == ClipState.READING && c.perMille() == 500);
    assertThatThrownBy(() -> desk().retry(clip.id(), null, 0)).isInstanceOf(RefusedException.class).hasMessageContaining("being read");
    scan.goOn.release();
    await(clip, ClipState.READ);
  }

  /** Machines that start in the same moment: one of them had read that the clip waits before the other began it. */
  @Test
  void aMachineThatStartsLeavesAnotherTheClipThatItReads() throws Exception {
    desk().start();
    ClipRecord clip = take("hold");
    scan.nextHeld();
    w.database().write(h -> h.execute("UPDATE clip SET state = 'WAITING'"));
    FakeScan second = new FakeScan();
    try (Workbench other = Stores.open(dir, Fixtures.CLOCK, second)) {
      other.clips().start();
      int picked = w.database().read(h -> h.createQuery("SELECT count(*) FROM job WHERE picked = :yes").bind("yes", true).mapTo(Integer.class).one());
      assertThat(picked).isEqualTo(1);
    }
    w.database().write(h -> h.execute("UPDATE clip SET state = 'READING'"));
    scan.goOn.release();
    await(clip, ClipState.READ);
    assertThat(second.begun).isEmpty();
  }

  @Test
  void aClipCalledOffWhileItIsReadMakesRoomAndCanBeReadLater() throws Exception {
    desk().start();
    ClipRecord off = take("hold 1");
    ClipRecord waiting = take("good 2");
    ClipRecord next = take("good 3");
    scan.nextHeld();
    desk().cancel(waiting.id());
    desk().cancel(off.id());
    await(next, ClipState.READ);
    assertThat(desk().clip(off.id()).state()).isEqualTo(ClipState.CANCELLED);
    assertThat(desk().clip(waiting.id()).state()).isEqualTo(ClipState.CANCELLED);
    assertThat(scan.begun).containsExactly("hold 1", "good 3");
    scan.goOn.release();
    desk().retry(off.id(), new Box(1, 2, 30, 40), 5);
    await(off, ClipState.READ);
    assertThat(scan.orders.get(2).box()).isEqualTo(new Box(1, 2, 30, 40));
    assertThat(scan.orders.get(2).boxFrame()).isEqualTo(5);
    awaitNoJobs();
  }

  @Test
  void aClipCalledOffAndAskedForAgainAtOnceIsReadAgain() throws Exception {
    desk().start();
    for (int i = 0; i < 20; i++) {
      ClipRecord clip = take("hold " + i);
      scan.nextHeld();
      desk().cancel(clip.id());
      desk().retry(clip.id(), null, 0);
      scan.nextHeld();
      scan.goOn.release();
      await(clip, ClipState.READ);
    }
    awaitNoJobs();
  }

  @Test
  void aRefusedClipDoesNotHoldUpTheNextAndSaysWhy() throws Exception {
    desk().start();
    ClipRecord bad = take("bad");
    ClipRecord broken = take("broken");
    ClipRecord good = take("good");
    await(good, ClipState.READ);
    assertThat(desk().clip(bad.id())).matches(c -> c.state() == ClipState.REFUSED && "The film is dark.".equals(c.trouble()));
    assertThat(desk().clip(broken.id()).state()).isEqualTo(ClipState.REFUSED);
    assertThat(desk().clip(broken.id()).trouble()).contains("a made-up fault").contains("Have it read again");
    Files.writeString(dir.resolve("clips").resolve(Long.toString(bad.id())).resolve("film.mov"), "good now");
    desk().retry(bad.id(), null, 0);
    await(bad, ClipState.READ);
    assertThat(desk().clip(bad.id()).trouble()).isNull();
  }

  @Test
  void aClipThatIsRemovedWhileItIsReadLeavesNothing() throws Exception {
    desk().start();
    ClipRecord clip = take("hold");
    scan.nextHeld();
    desk().remove(clip.id());
    awaitNoJobs();
    assertThat(desk().all()).isEmpty();
    assertThat(dir.resolve("clips").resolve(Long.toString(clip.id()))).doesNotExist();
    ClipRecord next = take("good");
    await(next, ClipState.READ);
  }

  @Test
  void everyClipOfAnAthleteGoesWithItsFilesAndTheOthersStay() throws Exception {
    ClipRecord first = take("film");
    ClipRecord second = take("film");
    ClipRecord other = take(w, w.athletes().add(Fixtures.athlete("Bea")).id(), "film");

    desk().removeAll(ada);

    assertThat(desk().all()).extracting(ClipRecord::id).containsExactly(other.id());
    Path films = dir.resolve("clips");
    assertThat(films.resolve(String.valueOf(first.id()))).doesNotExist();
    assertThat(films.resolve(String.valueOf(second.id()))).doesNotExist();
    assertThat(films.resolve(String.valueOf(other.id()))).exists();
  }

  @Test
  void whatWasBeingReadWhenTheProgramWasClosedIsTakenUpFirst() throws Exception {
    desk().start();
    ClipRecord first = take("hold 1");
    ClipRecord second = take("good 2");
    scan.nextHeld();
    w.close();
    scan = new FakeScan();
    scan.goOn.release();
    w = Stores.open(dir, Fixtures.CLOCK, scan);
    assertThat(desk().clip(first.id()).state()).isEqualTo(ClipState.READING);
    desk().start();
    await(second, ClipState.READ);
    assertThat(desk().clip(first.id()).state()).isEqualTo(ClipState.READ);
    assertThat(scan.begun).containsExactly("hold 1", "good 2");
    awaitNoJobs();
  }

  @Test
  @SqliteFile("the lock beside the file says that its reader is gone; on a server heartbeats do")
  void whatWasBeingReadWhenTheProgramWasKilledIsTakenUpAtOnce() throws Exception {
    w.close();
    Process program = ChildProgram.start(ReadingProgram.class, dir.toString());
    assertThat(program.inputReader(StandardCharsets.UTF_8).readLine()).isEqualTo("reading");
    program.destroyForcibly();
    program.waitFor();
    w = Stores.open(dir, Fixtures.CLOCK, scan);
    assertThat(desk().all()).extracting(ClipRecord::state).containsExactly(ClipState.WAITING, ClipState.READING);
    int marked = w.database().read(h -> h.createQuery("SELECT count(*) FROM job WHERE picked = 1").mapTo(Integer.class).one());
    assertThat(marked).as("the killed program's mark is still on the row").isEqualTo(1);
    scan.goOn.release();
    desk().start();
    await("both read", () -> desk().all().stream().allMatch(c -> c.state() == ClipState.READ));
    assertThat(scan.begun).containsExactly("hold", "good");
  }

  @Test
  void aSecondProgramOnTheSameFolderLeavesTheFirstItsClipAndReadsTheNext() throws Exception {
    desk().start();
    ClipRecord first = take("hold 1");
    scan.nextHeld();
    FakeScan others = new FakeScan();
    try (Workbench second = Stores.open(dir, Fixtures.CLOCK, others)) {
      second.clips().start();
      ClipRecord next = take(second, ada, "good 2");
      await(second, next, ClipState.READ);
      assertThat(others.begun).containsExactly("good 2");
      second.clips().cancel(first.id());
      assertThat(second.clips().clip(first.id()).state()).isEqualTo(ClipState.CANCELLED);
    }
    scan.goOn.release();
    awaitNoJobs();
    assertThat(desk().clip(first.id()).state()).as("called off from the other program: seen at the next progress").isEqualTo(ClipState.CANCELLED);
  }

  /** Where the lock says that others work on the queue too, a job whose heartbeat has stopped is taken over all the same. */
  @Test
  void aJobWhoseHeartbeatStoppedIsTakenOver() throws Exception {
    desk().start();
    take("hold 1");
    scan.nextHeld();
    ClipRecord dead = take("good 2");
    w.database().write(h -> h.execute("UPDATE clip SET state = 'READING' WHERE id = ?", dead.id()));
    w.database()
        .write(
            h ->
                h.execute(
                    "UPDATE job SET picked = ?, picked_by = 'gone', last_heartbeat = execution_time - 61000000 WHERE task_instance = ?",
                    true, Long.toString(dead.id())));
    FakeScan others = new FakeScan();
    try (Workbench second = Stores.open(dir, Fixtures.CLOCK, others)) {
      second.clips().start();
      await(second, dead, ClipState.READ);
      assertThat(others.begun).containsExactly("good 2");
    }
    scan.goOn.release();
    awaitNoJobs();
  }

  @Test
  void aClipThatCameInButWasNeverQueuedIsQueuedAtTheStart() throws Exception {
    ClipRecord clip = take("good");
    w.database().write(h -> h.execute("DELETE FROM job"));
    desk().start();
    await(clip, ClipState.READ);
  }

  @Test
  void aClipAskedForAgainJustBeforeItsJobEndsIsReadAgain() throws Exception {
    List<Long> read = new ArrayList<>();
    try (JobQueue queue = new JobQueue(w.database(), new FilmHands(1))) {
      queue.start(
          id -> {
            read.add(id);
            if (read.size() == 1) {
              queue.add(id);
            }
          });
      queue.add(41);
      awaitNoJobs();
    }
    assertThat(read).containsExactly(41L, 41L);
  }

  @Test
  void aClipIsInTheQueueOnce() throws Exception {
    ClipRecord clip = take("good");
    try (JobQueue same = new JobQueue(w.database(), new FilmHands(1))) {
      same.add(clip.id());
    }
    assertThat(jobs()).isEqualTo(1);
  }

  /** A write that fails takes the job that it asked for with it. */
  @Test
  void aJobIsPartOfTheWriteThatAsksForIt() throws Exception {
    try (JobQueue queue = new JobQueue(w.database(), new FilmHands(1))) {
      assertThatThrownBy(
              () ->
                  w.database()
                      .write(
                          h -> {
                            queue.add(41);
                            throw new RefusedException("No.");
                          }))
          .hasMessage("No.");
      assertThat(jobs()).isZero();
    }
  }

  @Test
  void theFilmIsDroppedAfterReadingWhenTheCoachSaysSo() throws Exception {
    desk().keepFilms(false);
    desk().start();
    ClipRecord clip = take("good");
    await("film gone", () -> !desk().clip(clip.id()).filmKept());
    Path folder = dir.resolve("clips").resolve(Long.toString(clip.id()));
    assertThat(folder.resolve("film.mov")).doesNotExist();
    try (Stream<Path> stills = Files.list(folder.resolve("stills"))) {
      assertThat(stills.count()).as("pictures of the contacts stay").isBetween(1L, FakeScan.FOUND.track().frames() - 1L);
    }
    assertThat(desk().reading(clip.id()).contacts()).isNotEmpty();
    assertThatThrownBy(() -> desk().retry(clip.id(), null, 0)).isInstanceOf(RefusedException.class).hasMessageContaining("was dropped");
    desk().keepFilms(true);
    ClipRecord kept = take("good");
    await(kept, ClipState.READ);
    awaitNoJobs();
    assertThat(dir.resolve("clips").resolve(Long.toString(kept.id())).resolve("film.mov")).exists();
  }

  /** The truth is our own made-up athlete; lengths read off the clip are held against it loosely, the clip's own tests do so closely. */
  @Test
  void aRepIsLoggedOnceAndCanBeTakenBack() throws Exception {
    TrueClip truth = TrueClip.of(Sequence.parse("RRL RRL"), 2, 6.0, 120, Noise.USUAL, false, 3);
    desk().start();
    ClipRecord clip = take("good");
    await(clip, ClipState.READ);
    assertThatThrownBy(() -> desk().log(clip.id(), List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("no marks");
    desk().setup(clip.id(), new Setup(truth.marks(), new Setup.Pole(truth.poleFoot(), truth.poleTop(), truth.pole_m()), List.of(), 1, DeLeva.MALE));
    Rep rep = desk().log(clip.id(), List.of("low-knee@2"));
    assertThat(w.reps().inOrder(ada)).containsExactly(rep);
    assertThat(rep.footprints_m()).isNotEmpty().isSorted();
    assertThat(rep.faults()).containsExactly("low-knee@2");
    assertThat(desk().clip(clip.id()).repId()).isEqualTo(rep.id());
    assertThatThrownBy(() -> desk().log(clip.id(), List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("logged already");
    assertThat(w.reps().inOrder(ada)).hasSize(1);
    desk().unlog(clip.id());
    assertThat(w.reps().inOrder(ada)).isEmpty();
    assertThat(desk().clip(clip.id()).repId()).isZero();
    Rep second = desk().log(clip.id(), List.of());
    w.logbook().undo(ada, second.id());
    assertThat(desk().log(clip.id(), List.of()).id()).as("taken back elsewhere, the clip is free").isGreaterThan(second.id());
  }

  @Test
  void correctionsLastAndAreTakenBackOneByOne() throws Exception {
    desk().start();
    ClipRecord clip = take("good");
    await(clip, ClipState.READ);
    int contacts = desk().reading(clip.id()).contacts().size();
    double at = desk().reading(clip.id()).contacts().get(1).contact().middle_s();
    desk().correct(clip.id(), new Correction.DropContact(at));
    assertThatThrownBy(() -> desk().correct(clip.id(), new Correction.DropContact(-5))).isInstanceOf(RefusedException.class);
    w.close();
    w = Stores.open(dir, Fixtures.CLOCK, scan);
    assertThat(desk().reading(clip.id()).contacts()).hasSize(contacts - 1);
    assertThat(desk().clip(clip.id()).corrections()).containsExactly(new Correction.DropContact(at));
    desk().undo(clip.id());
    assertThat(desk().reading(clip.id()).contacts()).hasSize(contacts);
  }
}
