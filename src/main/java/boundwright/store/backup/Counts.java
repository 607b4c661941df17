package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.sqlite.SQLiteConfig;

/**
 * What a database holds, by which two copies of it are compared.
 *
 * @param version number of the newest script that it has seen
 * @param written transactions that were kept in it, 0 for one of before these were counted
 * @param erasures athletes who were erased from it
 * @param rows how many rows each table has
 */
public record Counts(int version, long written, long erasures, Map<String, Long> rows) {
  /** What is made again from the rest, or only waits for its turn: to have less of it is no loss. */
  private static final Set<String> PASSING = Set.of("job", "learned", "squad_prior", "phone_code", "account_link", "account_session", "passkey_challenge", "department_visit", "wrong_try", "taken", "written", "changed", "erasure");

  /** Takes a copy. */
  public Counts {
    rows = Map.copyOf(rows);
  }

  /**
   * Counts in a file that nobody writes to; the file stays as it is.
   *
   * @throws RefusedException if it cannot be read as a database of this program
   */
  public static Counts of(Path file) {
    try (Connection c = looking(file)) {
      return of(c);
    } catch (SQLException e) {
      throw new RefusedException("The file " + file + " cannot be read as a database (" + e.getMessage() + "). Take another backup.", e);
    }
  }

  /** A connection that changes nothing, not even the log beside the file. */
  static Connection looking(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(5_000);
    return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
  }

  /** Counts in a file. */
  static Counts of(Connection c) throws SQLException {
    return of(c, new SqliteCatalogue());
  }

  /** Counts, in a transaction that sees one moment where others write. */
  public static Counts of(Connection c, Catalogue catalogue) throws SQLException {
    try (Statement s = c.createStatement()) {
      List<String> tables = catalogue.tables(s);
      Map<String, Long> rows = new TreeMap<>();
      for (String table : tables) {
        rows.put(table, one(s, "SELECT count(*) FROM \"" + table + "\""));
      }
      return new Counts(
          version(s),
          tables.contains("written") ? one(s, "SELECT coalesce(max(count), 0) FROM written") : 0,
          rows.getOrDefault("erasure", 0L),
          rows);
    }
  }

  /** Number of the newest script that a database of this program has seen. */
  static int version(Statement s) throws SQLException {
    return (int) one(s, "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE success");
  }

  /** Whether a database has a table. */
  static boolean has(Statement s, String table) throws SQLException {
    return one(s, "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = '" + table + "'") > 0;
  }

  /** The first column of what a question answers, row by row. */
  static List<String> texts(Statement s, String sql) throws SQLException {
    List<String> out = new ArrayList<>();
    try (ResultSet r = s.executeQuery(sql)) {
      while (r.next()) {
        out.add(r.getString(1));
      }
    }
    return out;
  }

  /** The number that a question answers, or 0. */
  static long one(Statement s, String sql) throws SQLException {
    try (ResultSet r = s.executeQuery(sql)) {
      return r.next() ? r.getLong(1) : 0;
    }
  }

  /** Rows of a table; 0 for one that it does not have. */
  public long of(String table) {
    return rows.getOrDefault(table, 0L);
  }

  /**
   * In which tables a later copy has fewer rows than this one although nobody was erased in between; empty if it has all. Tables that
   * only one of them knows are passed over.
   */
  public List<String> fewerIn(Counts later) {
    if (later.erasures > erasures) {
      return List.of();
    }
    return rows.entrySet().stream()
        .filter(e -> !PASSING.contains(e.getKey()))
        .filter(e -> later.rows.getOrDefault(e.getKey(), Long.MAX_VALUE) < e.getValue())
        .map(Map.Entry::getKey)
        .sorted()
        .toList();
  }
}
