package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.function.IntConsumer;
import java.util.zip.CRC32;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * Brings a schema of PostgreSQL to the form of this program, and refuses one that is not ours to touch. One that is up to date is only looked
 * at; programs that are started at once wait for the one that runs the scripts.
 */
final class PostgresSchema {
  /** The scripts: one that holds what SQLite's first seventeen leave, then one of each number as for SQLite. */
  static final String LOCATION = "classpath:db/postgres";

  private final PostgresAddress address;

  PostgresSchema(PostgresAddress address) {
    this.address = address;
  }

  /**
   * Makes or updates the schema.
   *
   * @param before told the number of the form that comes, before a schema that holds something is changed
   */
  void bringUpToDate(IntConsumer before) {
    PostgresTrouble trouble = new PostgresTrouble(address);
    try (Connection c = DriverManager.getConnection(address.url(), address.secrets());
        Statement s = c.createStatement()) {
      if (version(s) < Schema.NEWEST) {
        migrate(s, before);
      }
    } catch (SQLException e) {
      throw trouble.said(e);
    } catch (FlywayException e) {
      throw trouble.said(e);
    }
  }

  /** Whether a program of ours made it. */
  boolean isThere() {
    try (Connection c = DriverManager.getConnection(address.url(), address.secrets());
        Statement s = c.createStatement()) {
      return version(s) > 0;
    } catch (SQLException e) {
      throw new PostgresTrouble(address).said(e);
    }
  }

  private void migrate(Statement s, IntConsumer before) throws SQLException {
    s.execute("SELECT pg_advisory_lock(" + key() + ")"); // until this connection is closed
    int seen = version(s);
    if (seen < Schema.NEWEST) {
      if (seen > 0) {
        before.accept(Schema.NEWEST);
      } else {
        checkEncoding(s);
      }
      flyway().migrate();
    }
  }

  /** The migration tool on this schema. */
  Flyway flyway() {
    PGSimpleDataSource source = new PGSimpleDataSource();
    source.setURL(address.url());
    source.setUser(address.secrets().getProperty("user"));
    source.setPassword(address.secrets().getProperty("password"));
    return Flyway.configure()
        .dataSource(source)
        .schemas(address.schema())
        .createSchemas(true)
        .locations(LOCATION)
        .failOnMissingLocations(true)
        .loggers("slf4j")
        .load();
  }

  private long key() {
    CRC32 sum = new CRC32();
    sum.update(("boundwright " + address.schema()).getBytes(StandardCharsets.UTF_8));
    return sum.getValue();
  }

  private void checkEncoding(Statement s) throws SQLException {
    String encoding = text(s, "SHOW server_encoding");
    if (!"UTF8".equals(encoding)) {
      throw new RefusedException("The database " + address + " keeps texts as " + encoding + ", in which not every name can be written. Make one with the encoding UTF8.");
    }
  }

  /** Number of the newest script that the schema has seen, 0 if it is new. */
  private int version(Statement s) throws SQLException {
    String schema = address.schema();
    if ("f".equals(text(s, "SELECT to_regclass('" + schema + ".flyway_schema_history') IS NOT NULL"))) {
      if (!"0".equals(text(s, "SELECT count(*) FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = '" + schema + "' AND c.relkind IN ('r', 'v', 'm', 'p')"))) {
        throw new RefusedException(
            "The schema of " + address + " holds tables of another program. Nothing in it was changed. Name another with currentSchema=NAME in the address.");
      }
      return 0;
    }
    int seen = Integer.parseInt(text(s, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM " + schema + ".flyway_schema_history WHERE success"));
    if (seen > Schema.NEWEST) {
      throw new RefusedException(
          "The database " + address + " was written by a newer boundwright (its version " + seen + ", this program knows up to " + Schema.NEWEST
              + "). Nothing in it was changed. Run the newer program.");
    }
    return seen;
  }

  private static String text(Statement s, String sql) throws SQLException {
    try (ResultSet r = s.executeQuery(sql)) {
      return r.next() ? String.valueOf(r.getString(1)) : "";
    }
  }
}
