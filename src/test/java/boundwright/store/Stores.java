package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.clip.day.SessionDesk;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.session.CutProcess;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Database;
import boundwright.store.engine.PostgresAddress;
import boundwright.store.engine.Schema;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jdbi.v3.core.statement.SqlLogger;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/**
 * Where the tests' stores are: in the test's folder, or, where the build runs the store's tests a second time with {@code
 * -Dboundwright.test.store=postgres}, in a schema of a real PostgreSQL: one server for the process, one schema for each folder that is in use.
 */
public final class Stores {
  private static final boolean POSTGRES = "postgres".equals(System.getProperty("boundwright.test.store"));

  private static final Map<Path, String> LENT = new LinkedHashMap<>();
  private static final Set<String> SPOILT = new HashSet<>();
  private static @Nullable EmbeddedPostgres server;

  private Stores() {}

  /** Whether this is the run on PostgreSQL. */
  public static boolean onPostgres() {
    return POSTGRES;
  }

  /** The place of the store of a folder, the same each time. */
  public static DataPlace at(Path dir) {
    return POSTGRES ? new DataPlace(dir, schema(lentTo(dir))) : DataPlace.of(dir);
  }

  /** The schema lent to a folder: one whose folder is gone with its test is emptied and lent again, as making one takes long. */
  private static synchronized String lentTo(Path dir) {
    Path folder = dir.toAbsolutePath().normalize();
    String own = LENT.get(folder);
    if (own != null) {
      return own;
    }
    Path gone = LENT.keySet().stream().filter(f -> !Files.exists(f) && !SPOILT.contains(LENT.get(f))).findFirst().orElse(null);
    String left = gone == null ? null : LENT.remove(gone);
    String name = left == null ? "lent_" + (LENT.size() + 1) : left;
    if (left != null) {
      empty(name);
    }
    LENT.put(folder, name);
    return name;
  }

  /** Takes every row out, and lets the numbers begin again. */
  private static void empty(String schema) {
    try (Connection c = DriverManager.getConnection(address(schema));
        Statement s = c.createStatement()) {
      s.execute(
          "DO $$ DECLARE t record; BEGIN PERFORM set_config('session_replication_role', 'replica', true);"
              + " FOR t IN SELECT c.relname, c.relkind FROM pg_class c WHERE c.relnamespace = CAST(current_schema() AS regnamespace) AND c.relkind IN ('r', 'S') AND c.relname NOT LIKE 'flyway%' LOOP"
              + " IF t.relkind = 'r' THEN EXECUTE 'DELETE FROM ' || t.relname; ELSE EXECUTE 'ALTER SEQUENCE ' || t.relname || ' RESTART'; END IF; END LOOP;"
              + " INSERT INTO written (one, count) VALUES (1, 0); INSERT INTO club (name, name_key, since) VALUES ('Our club', 'our club', 0); END $$");
    } catch (SQLException e) {
      throw new AssertionError(schema, e);
    }
  }

  /** A connection of its own to a store, as another program would have. */
  static Connection look(Path dir) throws SQLException {
    if (!POSTGRES) {
      return DriverManager.getConnection("jdbc:sqlite:" + dir.resolve(Schema.FILE_NAME));
    }
    return DriverManager.getConnection(address(lentTo(dir)));
  }

  /** A schema for a folder, on a server that runs from the first time it is asked for to the end of the run. */
  public static PostgresAddress schemaOf(Path dir) {
    return schema(nameOf(dir));
  }

  private static String nameOf(Path dir) {
    return "t" + UUID.nameUUIDFromBytes(dir.toAbsolutePath().normalize().toString().getBytes(StandardCharsets.UTF_8)).toString().replace("-", "");
  }

  /** How a plain driver reaches the schema of a folder that {@link #schemaOf} names. */
  public static String plainAddressOf(Path dir) {
    return address(nameOf(dir));
  }

  /** A schema of that server. */
  public static PostgresAddress schema(String name) {
    return PostgresAddress.of(address(name), Map.of());
  }

  /** A schema of that server, as it is written on the command line. */
  public static String address(String name) {
    return "jdbc:postgresql://localhost:" + server().getPort() + "/postgres?user=postgres&currentSchema=" + name;
  }

  /** The server; its data need not outlive the run, so nothing waits for the disk. */
  public static synchronized EmbeddedPostgres server() {
    EmbeddedPostgres running = server;
    if (running == null) {
      try {
        EmbeddedPostgres started = EmbeddedPostgres.builder().setServerConfig("fsync", "off").setServerConfig("max_connections", "200").start();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(started)));
        server = started;
        return started;
      } catch (IOException e) {
        throw new UncheckedIOException("PostgreSQL does not start on this machine", e);
      }
    }
    return running;
  }

  private static void stop(EmbeddedPostgres started) {
    try {
      started.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A number of the settings as it is kept, with its unit. */
  static String setting(Workbench w, String key) {
    return w.database()
        .read(h -> h.createQuery("SELECT number, unit FROM setting WHERE key = :key").bind("key", key).map((r, c) -> r.getDouble(1) + " " + r.getString(2)).one());
  }

  /** The pages of a store's file hold a text no more. Those of a server are its own to clear away, which it does in time. */
  static void assertNotInFile(Path dir, String text) throws IOException {
    if (!POSTGRES) {
      assertThat(new String(Files.readAllBytes(dir.resolve(Schema.FILE_NAME)), StandardCharsets.ISO_8859_1)).doesNotContain(text);
    }
  }

  /** What a piece of work asks of the database, a statement each, in order. The work is undone if it throws. */
  public static List<String> asked(Workbench w, Runnable work) {
    List<String> out = new ArrayList<>();
    w.database()
        .write(
            h -> {
              h.getConfig(SqlStatements.class)
                  .setSqlLogger(
                      new SqlLogger() {
                        @Override
                        public void logBeforeExecution(StatementContext context) {
                          out.add(String.valueOf(context.getRenderedSql()));
                        }
                      });
              work.run(); // joins this write, and so its connection
              return out;
            });
    return out;
  }

  /** From now on no row goes into a table. */
  static void refuseRows(Workbench w, String table) {
    if (POSTGRES) {
      SPOILT.add(lentTo(w.database().folder()));
    }
    w.database()
        .write(
            h -> {
              if (!POSTGRES) {
                return h.execute("CREATE TRIGGER no_row BEFORE INSERT ON " + table + " BEGIN SELECT RAISE(ABORT, 'no'); END");
              }
              h.execute("CREATE FUNCTION no_row() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'no'; END $$");
              return h.execute("CREATE TRIGGER no_row BEFORE INSERT ON " + table + " FOR EACH ROW EXECUTE FUNCTION no_row()");
            });
  }

  public static Workbench open(Path dir, Clock clock) {
    return Workbench.open(at(dir), clock);
  }

  public static Workbench open(Path dir, Clock clock, Database.Tuning tuning) {
    return Workbench.open(at(dir), clock, tuning);
  }

  public static Workbench open(Path dir, Clock clock, ClipDesk.Scan scan) {
    return Workbench.open(at(dir), clock, scan, CutProcess::cut);
  }

  public static Workbench open(Path dir, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut) {
    return Workbench.open(at(dir), clock, scan, cut);
  }
}
