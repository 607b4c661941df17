package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.person.Scope;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.Restore;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Database;
import boundwright.store.engine.FilmHands;
import boundwright.store.engine.JobQueue;
import boundwright.store.engine.PostgresAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What only a store on a server has: several programs that write at once, troubles of the server, and backups that are files. */
@SqliteFile("is of PostgreSQL alone, in every run")
class PostgresTest {
  private static final int CLIPS = 40;

  @TempDir Path dir;

  private DataPlace place() {
    return new DataPlace(dir, Stores.schemaOf(dir));
  }

  private Workbench open() {
    return Workbench.open(place(), Fixtures.CLOCK);
  }

  private Database database() {
    return Database.open(place(), Database.Tuning.USUAL, Fixtures.CLOCK);
  }

  /** As two processes would: each its own line of writers, nothing shared but the server. Read, decided, written; none lost. */
  @Test
  void whatOneProgramDecidesAnotherDoesNotChangeMeanwhile() throws Exception {
    int rounds = 100;
    List<Thread> hands = new ArrayList<>();
    List<Throwable> wrong = new ArrayList<>();
    try (Database one = database();
        Database two = database();
        Database three = database()) {
      one.write(h -> h.execute("INSERT INTO setting (key, number, unit) VALUES ('sum', 0, '1')"));
      for (Database each : List.of(one, two, three)) {
        Thread hand =
            new Thread(
                () -> {
                  try {
                    for (int i = 0; i < rounds; i++) {
                      each.write(
                          h -> {
                            double now = h.createQuery("SELECT number FROM setting WHERE key = 'sum'").mapTo(Double.class).one();
                            return h.execute("UPDATE setting SET number = ? WHERE key = 'sum'", now + 1);
                          });
                    }
                  } catch (RuntimeException e) {
                    synchronized (wrong) {
                      wrong.add(e);
                    }
                  }
                });
        hands.add(hand);
        hand.start();
      }
      for (Thread hand : hands) {
        hand.join();
      }
      assertThat(wrong).isEmpty();
      assertThat(one.<Double>read(h -> h.createQuery("SELECT number FROM setting WHERE key = 'sum'").mapTo(Double.class).one())).isEqualTo(3.0 * rounds);
    }
  }

  @Test
  void anotherProgramsWriteIsSeenAtOnceAndItsFormIsTakenOnce() {
    String token = "0123456789abcdef0123456789abcdef";
    try (Workbench one = open();
        Workbench two = open()) {
      Changes.Versions before = Objects.requireNonNull(one.changes().now());
      assertThat(two.once(token, () -> two.athletes().add(Fixtures.athlete("Ada Longshore")).id())).isPresent();
      long added = two.athletes().all().get(0).id();
      assertThat(Objects.requireNonNull(one.changes().now()).of(added)).isGreaterThan(before.of(added));
      assertThat(one.once(token, () -> one.athletes().add(Fixtures.athlete("Bo Secondtime")).id())).isEmpty();
      assertThat(one.athletes().all()).hasSize(1);
      Changes.Versions still = Objects.requireNonNull(one.changes().now());
      assertThat(one.athletes().all()).hasSize(1);
      assertThat(one.changes().now()).isSameAs(still);
    }
  }

  @Test
  void aStoreOfAnOlderProgramIsKeptAsABackupAndBroughtUpToDate() throws Exception {
    String at = Stores.plainAddressOf(dir);
    Flyway.configure()
        .dataSource(at, null, null)
        .createSchemas(true)
        .locations("classpath:db/postgres")
        .target("17")
        .load()
        .migrate();
    try (Connection c = DriverManager.getConnection(at);
        Statement s = c.createStatement()) {
      s.execute("INSERT INTO athlete (name, name_key, level, take_off_foot, rung) VALUES ('Ada Longshore', 'ada longshore', 'INTERMEDIATE', 'R', 4)");
      s.execute("INSERT INTO film_consent (athlete_id, may, date) SELECT id, 1, '2026-05-01' FROM athlete");
      s.execute("INSERT INTO rep (athlete_id, date, sequence, approach_steps, surface, outcome, judged) SELECT id, '2026-05-01', 'RRL', 4, 'TRACK', 'IN', 0 FROM athlete");
    }
    try (Workbench w = open()) {
      Athlete ada = w.athletes().byName("Ada Longshore").orElseThrow();
      assertThat(w.reps().inOrder(ada.id())).hasSize(1);
      assertThat(w.people().standing(ada.id(), Scope.FILM).may()).isTrue();
      Path before;
      try (Stream<Path> kept = Files.walk(dir)) {
        before = kept.filter(f -> f.getFileName().toString().contains("before")).filter(Files::isRegularFile).findFirst().orElseThrow();
      }
      assertThat(before.getFileName().toString()).contains("before");
      try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + before);
          Statement s = c.createStatement();
          ResultSet r = s.executeQuery("SELECT name FROM athlete")) {
        assertThat(r.next()).isTrue();
        assertThat(r.getString(1)).isEqualTo("Ada Longshore");
      }
    }
  }

  @Test
  void storesOfOneServerDoNotSeeEachOther() {
    try (Workbench one = open();
        Workbench second = Workbench.open(place().club(2), Fixtures.CLOCK)) {
      one.athletes().add(Fixtures.athlete("Ada Longshore"));
      assertThat(second.athletes().all()).isEmpty();
      second.athletes().add(Fixtures.athlete("Ada Longshore"));
      assertThat(one.athletes().all()).hasSize(1);
      assertThat(second.database().folder()).isEqualTo(dir.resolve("clubs").resolve("2"));
    }
  }

  @Test
  void aBackupIsTheFileThatAFolderWouldHaveGiven() {
    Path file;
    try (Workbench w = open()) {
      long ada = w.athletes().add(Fixtures.athlete("Ada Longshore")).id();
      w.reps().write(s -> s.add(Fixtures.tap(ada, Fixtures.TODAY)));
      long gone = w.athletes().add(Fixtures.athlete("Bo Erased")).id();
      w.athletes().erase(gone);
      file = w.backups().now().file();
    }
    Path other = dir.resolve("other");
    Restore.Result back = Workbench.restoring(other, Fixtures.CLOCK).from(file, () -> new char[0]);
    assertThat(back.counts().of("rep")).isEqualTo(1);
    try (Workbench w = Workbench.open(other, Fixtures.CLOCK)) {
      assertThat(w.athletes().all()).extracting(a -> a.name()).containsExactly("Ada Longshore");
      assertThat(w.athletes().add(Fixtures.athlete("Cy Next")).id()).as("a number that was given is not given again").isEqualTo(3);
    }
  }

  @Test
  void severalProgramsReadEachClipOnce() throws Exception {
    Map<Long, Integer> times = new ConcurrentHashMap<>();
    Set<String> hands = ConcurrentHashMap.newKeySet();
    CountDownLatch all = new CountDownLatch(CLIPS);
    try (Database one = database(); Database two = database(); JobQueue a = new JobQueue(one, new FilmHands(2)); JobQueue b = new JobQueue(two, new FilmHands(2))) {
      for (long clip = 1; clip <= CLIPS; clip++) {
        a.add(clip);
      }
      for (JobQueue q : List.of(a, b)) {
        String name = q == a ? "a" : "b";
        q.start(
            clip -> {
              Thread.sleep(20);
              hands.add(name);
              times.merge(clip, 1, Integer::sum);
              all.countDown();
            });
      }
      assertThat(all.await(60, TimeUnit.SECONDS)).as("all read; read so far: %s", times.keySet()).isTrue();
      for (int i = 0; i < 200 && one.counts().of("job") > 0; i++) {
        Thread.sleep(50);
      }
      assertThat(one.counts().of("job")).isZero();
      assertThat(times).hasSize(CLIPS).allSatisfy((clip, n) -> assertThat(n).as("clip %d", clip).isEqualTo(1));
      assertThat(hands).containsExactlyInAnyOrder("a", "b");
    }
  }

  @Test
  void aProgramThatIsClosedLeavesItsClipToTheOthers() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch read = new CountDownLatch(1);
    try (Database one = database(); Database two = database(); JobQueue b = new JobQueue(two, new FilmHands(2))) {
      JobQueue a = new JobQueue(one, new FilmHands(2));
      a.add(7);
      a.start(
          clip -> {
            begun.countDown();
            Thread.sleep(60_000);
          });
      assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
      a.close();
      b.start(clip -> read.countDown());
      assertThat(read.await(30, TimeUnit.SECONDS)).as("the clip is read by the other").isTrue();
    }
  }

  @Test
  void aWriterOfAnotherProgramIsWaitedForAndThenSaid() throws SQLException {
    try (Workbench w = Workbench.open(place(), Fixtures.CLOCK, new Database.Tuning(50, 0));
        Connection other = DriverManager.getConnection(Stores.address(schemaName()));
        Statement s = other.createStatement()) {
      other.setAutoCommit(false);
      s.execute("UPDATE written SET count = count + 1");
      assertThatThrownBy(() -> w.athletes().add(Fixtures.athlete("Ada Longshore"))).isInstanceOf(RefusedException.class).hasMessageContaining("Another boundwright is writing");
      other.rollback();
      assertThat(w.athletes().add(Fixtures.athlete("Ada Longshore")).id()).isPositive();
    }
  }

  private String schemaName() {
    String said = Stores.schemaOf(dir).toString();
    return said.substring(said.indexOf("schema ") + 7, said.length() - 1);
  }

  @Test
  void aConnectionThatTheServerCutsIsSaidAndTheNextWriteGoesThrough() throws SQLException {
    try (Workbench w = open();
        Connection other = DriverManager.getConnection(Stores.address(schemaName()));
        Statement s = other.createStatement()) {
      AtomicInteger tries = new AtomicInteger();
      assertThatThrownBy(
              () ->
                  w.together(
                      () -> {
                        cutOthers(s);
                        tries.incrementAndGet();
                        return w.athletes().add(Fixtures.athlete("Ada Longshore"));
                      }))
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("cannot be reached")
          .hasMessageContaining("look whether the last entry is there");
      assertThat(w.athletes().all()).isEmpty();
      assertThat(w.athletes().add(Fixtures.athlete("Ada Longshore")).id()).isPositive();
      assertThat(tries).hasValue(1);
    }
  }

  private static void cutOthers(Statement s) {
    try {
      s.execute("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'boundwright' AND pid <> pg_backend_pid()");
    } catch (SQLException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aPasswordStandsInNoSentence() {
    String secret = "Gehe1mnis";
    for (String address :
        List.of(
            "jdbc:postgresql://localhost:1/none?user=coach&password=" + secret,
            "jdbc:postgresql://coach:" + secret + "@localhost/none",
            "jdbc:postgresql:none?password=" + secret,
            "jdbc:postgresql://localhost:" + Stores.server().getPort() + "/nowhere?user=nobody&password=" + secret,
            "jdbc:postgresql://localhost:notaport/none?password=" + secret,
            "jdbc:postgresql://localhost/none?currentSchema=Pg%20odd&password=" + secret)) {
      assertThatThrownBy(() -> Workbench.open(new DataPlace(dir, PostgresAddress.of(address, Map.of())), Fixtures.CLOCK).close())
          .as(address)
          .isInstanceOf(RefusedException.class)
          .satisfies(e -> assertThat(e.getMessage()).doesNotContain(secret));
    }
    assertThat(PostgresAddress.of("jdbc:postgresql://h/d?password=" + secret, Map.of()).toString()).isEqualTo("h/d (schema boundwright)");
  }

  @Test
  void tablesOfAnotherProgramAndOfANewerOneAreNotTouched() throws SQLException {
    try (Connection c = DriverManager.getConnection(Stores.address("public"));
        Statement s = c.createStatement()) {
      s.execute("CREATE SCHEMA others");
      s.execute("CREATE TABLE others.theirs (n INTEGER)");
    }
    assertThatThrownBy(() -> Workbench.open(new DataPlace(dir, Stores.schema("others")), Fixtures.CLOCK).close()).hasMessageContaining("holds tables of another program");
    open().close();
    try (Connection c = DriverManager.getConnection(Stores.address(schemaName()));
        Statement s = c.createStatement()) {
      s.execute("UPDATE flyway_schema_history SET version = '999' WHERE version IS NOT NULL");
    }
    assertThatThrownBy(() -> open().close()).hasMessageContaining("written by a newer boundwright (its version 999");
  }
}
