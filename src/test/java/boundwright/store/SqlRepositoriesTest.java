package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is kept comes back, after the folder was closed and opened again. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SqlRepositoriesTest {
  @TempDir Path dir;
  private Workbench w;

  @BeforeEach
  void open() {
    w = Stores.open(dir.resolve("squad"), Fixtures.CLOCK);
  }

  @AfterEach
  void close() {
    w.close();
  }

  private void again() {
    w.close();
    open();
  }

  @Test
  void athletesComeBack() {
    Athlete ada = w.athletes().add(new Athlete(0, "Ada Fenn", Level.BEGINNER, Foot.LEFT, 0));
    Athlete bo = w.athletes().add(new Athlete(0, "bo Reed", Level.ADVANCED, Foot.RIGHT, 12));
    w.athletes().update(bo.onRung(8));
    again();
    assertThat(w.athletes().all()).containsExactly(ada, bo.onRung(8));
    assertThat(w.athletes().byId(ada.id())).contains(ada);
    assertThat(w.athletes().byId(99)).isEmpty();
  }

  @Test
  void namesMeetWhateverTheCaseAndTheSpelling() {
    Athlete stored = w.athletes().add(Fixtures.athlete("Zoë ÖSTLUND"));
    assertThat(w.athletes().byName("  zoe\u0308   östlund ")).contains(stored);
    assertThat(w.athletes().byName("Zoe Ostlund")).isEmpty();
    assertThatThrownBy(() -> w.athletes().add(Fixtures.athlete("ZOË Östlund")))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Zoë ÖSTLUND already");
    Athlete other = w.athletes().add(Fixtures.athlete("Zoe Ostlund"));
    assertThatThrownBy(() -> w.athletes().update(new Athlete(other.id(), "zoë östlund", Level.BEGINNER, Foot.LEFT, 2)))
        .isInstanceOf(RefusedException.class);
    w.athletes().update(new Athlete(stored.id(), "zoë östlund", Level.BEGINNER, Foot.LEFT, 2));
    assertThat(w.athletes().all()).hasSize(2);
  }

  @Test
  void anAthleteWhoIsGoneIsNotUpdated() {
    assertThatThrownBy(() -> w.athletes().update(Fixtures.athlete("Ada").withId(7)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Ada is not in the store");
    assertThatThrownBy(() -> w.reps().write(s -> s.add(Fixtures.tap(7, Fixtures.TODAY))))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the store");
    assertThatThrownBy(() -> w.athletes().addRunUp(7, new MeasuredRunUp(0, 4, 6.1, null, Fixtures.TODAY)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("not in the store");
  }

  @Test
  void testsAndRunUpsComeBackOldestFirst() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    w.athletes().addKnownMark(ada.id(), new KnownMark(0, KnownMark.Kind.BEST_TRIPLE, 10, 11.37, Fixtures.TODAY));
    w.athletes().addKnownMark(ada.id(), new KnownMark(0, KnownMark.Kind.STANDING_FIVE, 0, 10.1, Fixtures.TODAY.minusDays(9)));
    w.athletes().addRunUp(ada.id(), new MeasuredRunUp(0, 6, 9.9, 6.25, Fixtures.TODAY));
    w.athletes().addRunUp(ada.id(), new MeasuredRunUp(0, 4, 6.1, null, Fixtures.TODAY));
    again();
    var profile = w.athletes().profile(ada);
    assertThat(profile.knownMarks())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("id")
        .containsExactly(
            new KnownMark(0, KnownMark.Kind.STANDING_FIVE, 0, 10.1, Fixtures.TODAY.minusDays(9)),
            new KnownMark(0, KnownMark.Kind.BEST_TRIPLE, 10, 11.37, Fixtures.TODAY));
    assertThat(profile.runUps())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("id")
        .containsExactly(
            new MeasuredRunUp(0, 6, 9.9, 6.25, Fixtures.TODAY), new MeasuredRunUp(0, 4, 6.1, null, Fixtures.TODAY));
    w.athletes().removeKnownMark(ada.id(), profile.knownMarks().get(0).id());
    w.athletes().removeRunUp(ada.id() + 1, profile.runUps().get(0).id());
    assertThat(w.athletes().profile(ada).knownMarks()).containsExactly(profile.knownMarks().get(1));
    assertThat(w.athletes().profile(ada).runUps()).hasSize(2);
    w.athletes().removeRunUp(ada.id(), profile.runUps().get(0).id());
    assertThat(w.athletes().profile(ada).runUps()).containsExactly(profile.runUps().get(1));
  }

  @Test
  void everyRepComesBackToTheLastBit() {
    long seed = 20260512;
    Random random = new Random(seed);
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    List<Rep> kept = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      Rep rep = Fixtures.any(random, (i % 3 == 0 ? ada : bo).id());
      kept.add(w.reps().write(s -> s.add(rep)));
    }
    again();
    Comparator<Rep> order = Comparator.comparing(Rep::date).thenComparing(Rep::id);
    for (Athlete a : List.of(ada, bo)) {
      List<Rep> expected = kept.stream().filter(r -> r.athleteId() == a.id()).sorted(order).toList();
      assertThat(w.reps().inOrder(a.id())).as("seed %d", seed).isEqualTo(expected);
      List<Rep> newest = expected.stream().sorted(order.reversed()).limit(20).toList();
      assertThat(w.reps().recent(a.id(), 20)).as("seed %d", seed).isEqualTo(newest);
    }
  }

  @Test
  void theNumberOfARepTakenBackIsNeverGivenAgain() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    Rep first = w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
    assertThat(w.reps().<Boolean>write(s -> s.remove(first.id()))).isTrue();
    assertThat(w.reps().<Boolean>write(s -> s.remove(first.id()))).isFalse();
    again();
    Rep second = w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
    assertThat(second.id()).isGreaterThan(first.id());
    assertThat(w.reps().<Optional<Rep>>write(s -> s.find(first.id()))).isEmpty();
    assertThat(w.reps().<Optional<Rep>>write(s -> s.find(second.id()))).contains(second);
  }

  @Test
  void aWriteThatFailsKeepsNothingAndAnInnerOneOnlyItself() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    assertThatThrownBy(
            () ->
                w.reps()
                    .write(
                        s -> {
                          w.athletes().add(Fixtures.athlete("Bo"));
                          s.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
                          throw new IllegalStateException("stop");
                        }))
        .hasMessage("stop");
    assertThat(w.athletes().all()).containsExactly(ada);
    assertThat(w.reps().inOrder(ada.id())).isEmpty();

    w.reps()
        .write(
            s -> {
              Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
              assertThat(w.athletes().byName("bo")).contains(bo);
              assertThatThrownBy(
                      () ->
                          w.reps()
                              .write(
                                  inner -> {
                                    inner.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
                                    throw new IllegalStateException("inner");
                                  }))
                  .hasMessage("inner");
              return s.add(Fixtures.tap(bo.id(), Fixtures.TODAY));
            });
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
    assertThat(w.athletes().byName("Bo").map(bo -> w.reps().inOrder(bo.id()).size())).contains(1);
  }

  @Test
  void aTransactionThatTheEngineEndedItselfLeavesTheStoreUsable() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    assertThatThrownBy(
            () ->
                w.database()
                    .write(
                        h -> {
                          w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
                          h.execute("ROLLBACK");
                          throw new IllegalStateException("gone");
                        }))
        .hasMessage("gone");
    for (int i = 0; i < 8; i++) {
      w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
    }
    assertThat(w.reps().inOrder(ada.id())).hasSize(8);
  }

  @Test
  void anOuterWriteDoesNotGoOnAfterTheEngineEndedItInAnInnerOne() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    assertThatThrownBy(
            () ->
                w.database()
                    .write(
                        h -> {
                          w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
                          assertThatThrownBy(
                                  () ->
                                      w.reps()
                                          .write(
                                              s -> {
                                                h.execute("ROLLBACK");
                                                throw new IllegalStateException("gone");
                                              }))
                              .hasMessage("gone");
                          return "answered";
                        }))
        .hasMessage("gone");
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
  }

  @Test
  void writersOfOneProgramWaitForEachOther() throws Exception {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    int threads = 6;
    CountDownLatch go = new CountDownLatch(1);
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    List<Future<Integer>> done = new ArrayList<>();
    for (int t = 0; t < threads; t++) {
      done.add(
          pool.submit(
              () -> {
                go.await();
                for (int i = 0; i < 10; i++) {
                  // Reads inside, so that a writer that overlapped would be seen as a rep too many or too few.
                  w.reps()
                      .write(
                          s -> {
                            int before = s.inOrder(ada.id()).size();
                            s.add(Fixtures.tap(ada.id(), Fixtures.TODAY));
                            assertThat(s.inOrder(ada.id())).hasSize(before + 1);
                            return before;
                          });
                }
                return 10;
              }));
    }
    go.countDown();
    for (Future<Integer> f : done) {
      assertThat(f.get()).isEqualTo(10);
    }
    pool.shutdown();
    assertThat(w.reps().inOrder(ada.id())).hasSize(10 * threads);
  }

  @Test
  void theWriterDiesWithItsWrite() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    var leaked = w.reps().write(s -> s);
    assertThatThrownBy(() -> leaked.add(Fixtures.tap(ada.id(), Fixtures.TODAY))).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void settingsAndPlanComeBack() {
    assertThat(w.settings().settings()).isEqualTo(CoachSettings.DEFAULT);
    assertThat(w.settings().plan()).isEqualTo(new DayPlan("", List.of()));
    CoachSettings settings =
        new CoachSettings(
            LengthUnit.FEET_INCHES,
            new MarkSettings(0.85, 0.1, 0.45),
            new Facility("Back field", 33.3, 7.25, 81, Surface.GRASS),
            8);
    DayPlan plan =
        new DayPlan(
            "Tuesday",
            List.of(
                new Drill(Sequence.parse("RRL x2"), null, 1, 3, true),
                new Drill(Sequence.parse("RL x5"), 0, 2, 2, false)));
    w.settings().keep(settings);
    w.settings().keep(new DayPlan("Monday", List.of(plan.drills().get(1), plan.drills().get(1), plan.drills().get(1))));
    w.settings().keep(plan);
    again();
    assertThat(w.settings().settings()).isEqualTo(settings);
    assertThat(w.settings().plan()).isEqualTo(plan);
  }

  @Test
  void lengthsAreKeptInMetresWithTheirUnitNeverAsTheCoachWritesThem() {
    w.settings().keep(new CoachSettings(LengthUnit.FEET_INCHES, MarkSettings.DEFAULT, Facility.DEFAULT, 10));
    assertThat(Stores.setting(w, "facility.runway")).isEqualTo("40.0 m");
  }

  @Test
  @SqliteFile("reads the pages of the file")
  void anErasedAthleteIsNowhereInTheFiles() throws Exception {
    Athlete ada = w.athletes().add(Fixtures.athlete("Quillonia Fenn"));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo"));
    w.athletes().addRunUp(ada.id(), new MeasuredRunUp(0, 4, 6.1, null, Fixtures.TODAY));
    w.athletes().addKnownMark(ada.id(), new KnownMark(0, KnownMark.Kind.STANDING_FIVE, 0, 10.1, Fixtures.TODAY));
    w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
    w.reps().write(s -> s.add(Fixtures.tap(bo.id(), Fixtures.TODAY)));
    assertThat(filesHold("Quillonia")).isTrue();
    w.athletes().erase(ada.id());
    assertThat(w.athletes().all()).containsExactly(bo);
    assertThat(w.reps().inOrder(ada.id())).isEmpty();
    assertThat(w.reps().inOrder(bo.id())).hasSize(1);
    assertThat(
            w.database()
                .<Integer>read(
                    h ->
                        h.createQuery("SELECT (SELECT count(*) FROM run_up) + (SELECT count(*) FROM known_mark)")
                            .mapTo(Integer.class)
                            .one()))
        .isZero();
    assertThat(filesHold("Quillonia")).isFalse();
    assertThat(filesHold("quillonia")).isFalse();
    w.athletes().erase(ada.id());
  }

  private boolean filesHold(String text) throws Exception {
    try (var files = Files.walk(dir.resolve("squad"))) {
      for (Path f : files.filter(Files::isRegularFile).toList()) {
        if (new String(Files.readAllBytes(f), StandardCharsets.ISO_8859_1).contains(text)) {
          return true;
        }
      }
    }
    return false;
  }

  @Test
  void aWordOfAnotherProgramIsRefusedNotGuessed() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    w.reps().write(s -> s.add(Fixtures.tap(ada.id(), Fixtures.TODAY)));
    w.database().write(h -> h.execute("UPDATE rep SET surface = 'MOON'"));
    assertThatThrownBy(() -> w.reps().inOrder(ada.id())).isInstanceOf(RefusedException.class).hasMessageContaining("MOON");
  }

  @Test
  void aFaultWithASemicolonIsRefused() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada"));
    Rep tap = Fixtures.tap(ada.id(), Fixtures.TODAY);
    Rep odd =
        new Rep(0, ada.id(), tap.date(), tap.sequence(), 4, Surface.TRACK, List.of(), null, tap.outcome(), null, List.of("a;b"));
    assertThatThrownBy(() -> w.reps().write(s -> s.add(odd))).isInstanceOf(RefusedException.class);
  }

  @Test
  @SqliteFile("asks for SQLite's own plan of a query")
  void theNewestRepsAndAllRepsAreReadStraightFromTheIndex() {
    for (String order : List.of("ORDER BY date DESC, id DESC LIMIT 20", "ORDER BY date, id")) {
      List<String> plan =
          w.database()
              .read(
                  h ->
                      h.createQuery("EXPLAIN QUERY PLAN SELECT * FROM rep WHERE athlete_id = 1 " + order)
                          .map((r, c) -> r.getString("detail"))
                          .list());
      assertThat(plan).singleElement().asString().contains("USING INDEX rep_in_order");
    }
  }
}
