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
  /** What is not told, and why. */
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
          Map.entry("account_link", "a secret: links to log in are made anew"),
          Map.entry("account_session", "a secret: everybody logs in again"),
          Map.entry("passkey_challenge", "for minutes"),
          Map.entry("wrong_try", "for minutes"));

  private Everything() {}

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
   * Reads a database as it stands at one moment; others may write meanwhile.
   *
   * @return how many rows were told
   */
  public static int tell(Path database, Listener to) {
    try (Connection c = Counts.looking(database)) {
      c.setAutoCommit(false);
      int rows = 0;
      try (Statement s = c.createStatement()) {
        to.version(Counts.of(c).version());
        for (String table : tables(s)) {
          to.table(table);
          try (ResultSet r = s.executeQuery("SELECT * FROM \"" + table + "\" ORDER BY rowid")) {
            while (r.next()) {
              to.row(row(r));
              rows++;
            }
          }
        }
        try (ResultSet r = s.executeQuery("SELECT name, seq FROM sqlite_sequence ORDER BY name")) {
          while (r.next()) {
            if (!LEFT_OUT.containsKey(r.getString(1))) {
              to.number(r.getString(1), r.getLong(2));
            }
          }
        }
      }
      c.rollback();
      return rows;
    } catch (SQLException e) {
      throw new RefusedException("The database " + database + " could not be read to its end (" + e.getMessage() + "). Look at it with boundwright check-data.", e);
    }
  }

  /** The tables that are told. */
  static List<String> tables(Statement s) throws SQLException {
    return Counts.tables(s).stream().filter(t -> !LEFT_OUT.containsKey(t)).toList();
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
