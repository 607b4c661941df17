package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import com.github.kagkarlsson.scheduler.jdbc.PostgreSqlJdbcCustomization;
import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The queue of clips on a real PostgreSQL with several programs at work. Only the table of the jobs is there: the rest of the
 * store has no PostgreSQL schema yet.
 */
class QueueOnPostgresTest {
  private static final String TABLE =
      "CREATE TABLE job (task_name TEXT NOT NULL, task_instance TEXT NOT NULL, task_data BYTEA, execution_time TIMESTAMPTZ NOT NULL,"
          + " picked BOOLEAN NOT NULL, picked_by TEXT, last_success TIMESTAMPTZ, last_failure TIMESTAMPTZ, consecutive_failures INTEGER,"
          + " last_heartbeat TIMESTAMPTZ, version BIGINT NOT NULL, PRIMARY KEY (task_name, task_instance))";
  private static final int CLIPS = 40;
  private static EmbeddedPostgres server;

  @BeforeAll
  static void start() {
    try {
      server = EmbeddedPostgres.start();
    } catch (IOException | RuntimeException e) {
      Assumptions.abort("Not checked, because PostgreSQL does not start on this machine: " + e.getMessage());
    }
  }

  @AfterAll
  static void stop() throws IOException {
    if (server != null) {
      server.close();
    }
  }

  @BeforeEach
  void table() throws SQLException {
    try (Connection c = server.getPostgresDatabase().getConnection(); Statement s = c.createStatement()) {
      s.execute("DROP TABLE IF EXISTS job");
      s.execute(TABLE);
    }
  }

  private static Database database() {
    HikariConfig pooled = new HikariConfig();
    pooled.setDataSource(server.getPostgresDatabase());
    pooled.setMaximumPoolSize(6);
    return new Database(Path.of("postgres"), new HikariDataSource(pooled), Database.BUSY_TIMEOUT_MS);
  }

  private static JobQueue queue(Database database) {
    return new JobQueue(database, new PostgreSqlJdbcCustomization(false, true), 2, false);
  }

  private static int jobs(Database database) {
    return database.read(h -> h.createQuery("SELECT count(*) FROM job").mapTo(Integer.class).one());
  }

  @Test
  void severalProgramsReadEachClipOnce() throws Exception {
    Map<Long, Integer> times = new ConcurrentHashMap<>();
    Set<String> hands = ConcurrentHashMap.newKeySet();
    CountDownLatch all = new CountDownLatch(CLIPS);
    try (Database one = database(); Database two = database(); JobQueue a = queue(one); JobQueue b = queue(two)) {
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
      for (int i = 0; i < 200 && jobs(one) > 0; i++) {
        Thread.sleep(50);
      }
      assertThat(jobs(one)).isZero();
      assertThat(times).hasSize(CLIPS).allSatisfy((clip, n) -> assertThat(n).as("clip %d", clip).isEqualTo(1));
      assertThat(hands).containsExactlyInAnyOrder("a", "b");
    }
  }

  @Test
  void aJobOfAWriteThatFailsIsNotThereAndOneCalledOffIsNotRead() {
    try (Database one = database(); JobQueue a = queue(one)) {
      assertThatThrownBy(
              () -> one.write(h -> {
                    a.add(1);
                    throw new RefusedException("Not this one.");
                  }))
          .isInstanceOf(RefusedException.class);
      assertThat(jobs(one)).isZero();
      a.add(2);
      a.add(2);
      assertThat(jobs(one)).isEqualTo(1);
      a.cancel(2);
      assertThat(jobs(one)).isZero();
    }
  }

  @Test
  void aProgramThatIsClosedLeavesItsClipToTheOthers() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch read = new CountDownLatch(1);
    try (Database one = database(); Database two = database(); JobQueue b = queue(two)) {
      JobQueue a = queue(one);
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
}
