package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Every field of every table, as it is kept. Which tables there are is asked of the database, so that one of a later program cannot be
 * forgotten; a test fills each of them and each of their columns.
 */
public final class Everything {
  /** What is not told to a file that leaves, and why. */
  public static final Map<String, String> LEFT_OUT =
      Map.ofEntries(
          Map.entry("phone", "a secret: phones are paired again"),
          Map.entry("phone_code", "a secret, for ten minutes"),
          Map.entry("calendar_secret", "a secret: calendars get a new address"),
          Map.entry("job", "waits for its turn on this machine only"),
          Map.entry("taken", "forms of pages that were open on this machine"),
          Map.entry("learned", "worked out again from the reps"),
          Map.entry("squad_prior", "worked out again from the reps"),
          Map.entry("written", "counts what was written on this machine"),
          Map.entry("changed", "says of what is kept in memory whether it still holds"),
          Map.entry("account_link", "a secret: links to log in are made anew"),
          Map.entry("account_session", "a secret: everybody logs in again"),
          Map.entry("passkey_challenge", "for minutes"),
          Map.entry("department_visit", "for minutes"),
          Map.entry("wrong_try", "for minutes"));

  /** Rows that are asked for at once where the database sends them in parts. */
  private static final int FETCH = 1_000;

  private Everything() {}

  /** What is told. */
  public enum Which {
    /** What is of use anywhere, without secrets. */
    LEAVING,
    /** All tables, for a copy that stays with the same coach. */
    ALL;

    boolean told(String table) {
      return this == ALL || !LEFT_OUT.containsKey(table);
    }
  }

  /** Told what is there, in an order that is always the same. */
  public interface Listener {
    /** The number of the schema's newest script. */
    void version(int version);

    /** The table whose rows follow. */
    void table(String name);

    /** A row by column: texts, whole numbers as {@code Long} or {@code Integer}, others as {@code Double}, bytes, or null. */
    void row(Map<String, @Nullable Object> values);

    /** The largest number that a table has given, so that it is not given again; after all rows. */
    void number(String table, long largest);
  }

  /**
   * Reads a database file as it stands at one moment; others may write meanwhile.
   *
   * @return how many rows were told
   */
  public static int tell(Path database, Which which, Listener to) {
    try (Connection c = Counts.looking(database)) {
      c.setAutoCommit(false);
      int rows = tell(c, new SqliteCatalogue(), which, to);
      c.rollback();
      return rows;
    } catch (SQLException e) {
      throw new RefusedException("The database " + database + " could not be read to its end (" + e.getMessage() + "). Look at it with boundwright check-data.", e);
    }
  }

  /**
   * Reads a database in a transaction that sees one moment of it.
   *
   * @return how many rows were told
   */
  public static int tell(Connection c, Catalogue catalogue, Which which, Listener to) throws SQLException {
    int rows = 0;
    try (Statement s = c.createStatement()) {
      s.setFetchSize(FETCH);
      to.version(Counts.version(s));
      for (String table : tables(s, catalogue, which)) {
        to.table(table);
        try (ResultSet r = s.executeQuery(catalogue.rows(s, table, ""))) {
          while (r.next()) {
            to.row(row(r));
            rows++;
          }
        }
      }
      for (Map.Entry<String, Long> number : catalogue.numbers(s).entrySet()) {
        // a table that gave none says so in one database and nothing in the other
        if (which.told(number.getKey()) && number.getValue() > 0) {
          to.number(number.getKey(), number.getValue());
        }
      }
    }
    return rows;
  }

  /** The tables that are told. */
  static List<String> tables(Statement s, Catalogue catalogue, Which which) throws SQLException {
    return catalogue.tables(s).stream().filter(which::told).toList();
  }

  private static Map<String, @Nullable Object> row(ResultSet r) throws SQLException {
    ResultSetMetaData columns = r.getMetaData();
    Map<String, @Nullable Object> row = new LinkedHashMap<>();
    for (int i = 1; i <= columns.getColumnCount(); i++) {
      row.put(columns.getColumnName(i), r.getObject(i));
    }
    return row;
  }
}
