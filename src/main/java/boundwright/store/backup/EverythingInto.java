package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Puts rows that {@link Everything} told into a database without any, as they were: with their numbers, and with nothing added by the way.
 * All or nothing; close it, or nothing is kept.
 */
public final class EverythingInto implements AutoCloseable {
  private final Connection connection;
  private final List<String> triggers = new ArrayList<>();
  private final Set<String> tables = new HashSet<>();
  private final Map<String, Map<String, String>> types = new HashMap<>();
  private final Map<String, PreparedStatement> inserts = new HashMap<>();
  private boolean whole;

  EverythingInto(Path database) throws SQLException {
    connection = DriverManager.getConnection("jdbc:sqlite:" + database.toAbsolutePath());
    try (Statement s = connection.createStatement()) {
      s.execute("PRAGMA foreign_keys = OFF");
      connection.setAutoCommit(false);
      List<String> names = new ArrayList<>();
      try (ResultSet r = s.executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid")) {
        while (r.next()) {
          names.add(r.getString(1));
          triggers.add(r.getString(2));
        }
      }
      for (String name : names) {
        s.execute("DROP TRIGGER " + name);
      }
      tables.addAll(Everything.tables(s));
      for (String table : tables) {
        s.execute("DELETE FROM \"" + table + "\""); // what the scripts themselves put in is told too
      }
      s.execute("DELETE FROM sqlite_sequence");
    }
  }

  /**
   * A row of a table.
   *
   * @param values as {@link Everything.Listener#row}; bytes as Base64
   * @throws RefusedException if there is no such table or column, or the row cannot be kept
   */
  public void row(String table, Map<String, @Nullable Object> values) {
    try {
      Map<String, String> columns = columns(table);
      if (!columns.keySet().containsAll(values.keySet())) {
        Set<String> unknown = new HashSet<>(values.keySet());
        unknown.removeAll(columns.keySet());
        throw refused("The table " + table + " has no column " + unknown + ".");
      }
      PreparedStatement insert = insert(table, values.keySet());
      int at = 1;
      for (Map.Entry<String, @Nullable Object> e : values.entrySet()) {
        Object value = e.getValue();
        String type = columns.get(e.getKey());
        insert.setObject(at++, value instanceof String text && "BLOB".equals(type) ? Base64.getDecoder().decode(text) : value);
      }
      insert.execute();
    } catch (SQLException | IllegalArgumentException e) {
      throw refused("A row of the table " + table + " cannot be kept (" + e.getMessage() + ").", e);
    }
  }

  private static final String WAY_OUT = " Nothing was taken. Give a file that boundwright export --everything wrote.";

  private static RefusedException refused(String why) {
    return new RefusedException(why + WAY_OUT);
  }

  private static RefusedException refused(String why, Exception e) {
    return new RefusedException(why + WAY_OUT, e);
  }

  private Map<String, String> columns(String table) throws SQLException {
    if (!tables.contains(table)) {
      throw refused("There is no table '" + table.replaceAll("[^A-Za-z0-9_]", "?") + "'.");
    }
    Map<String, String> known = types.get(table);
    if (known == null) {
      known = new HashMap<>();
      try (Statement s = connection.createStatement();
          ResultSet r = s.executeQuery("SELECT name, type FROM pragma_table_info('" + table + "')")) {
        while (r.next()) {
          known.put(r.getString(1), r.getString(2));
        }
      }
      types.put(table, known);
    }
    return known;
  }

  private PreparedStatement insert(String table, Set<String> columns) throws SQLException {
    String key = table + columns;
    PreparedStatement there = inserts.get(key);
    if (there == null) {
      there =
          connection.prepareStatement(
              "INSERT INTO \"" + table + "\" (\"" + String.join("\", \"", columns) + "\") VALUES (" + "?, ".repeat(columns.size() - 1) + "?)");
      inserts.put(key, there);
    }
    return there;
  }

  /** The largest number that a table has given. */
  public void number(String table, long largest) {
    try (PreparedStatement s = connection.prepareStatement("INSERT OR REPLACE INTO sqlite_sequence (rowid, name, seq) VALUES ((SELECT rowid FROM sqlite_sequence WHERE name = ?), ?, ?)")) {
      columns(table);
      s.setString(1, table);
      s.setString(2, table);
      s.setLong(3, largest);
      s.execute();
    } catch (SQLException e) {
      throw refused("The largest number of the table " + table + " cannot be kept.", e);
    }
  }

  /** All rows have come. */
  void end() throws SQLException {
    try (Statement s = connection.createStatement()) {
      try (ResultSet r = s.executeQuery("SELECT \"table\", parent FROM pragma_foreign_key_check LIMIT 1")) {
        if (r.next()) {
          throw refused("A row of the table " + r.getString(1) + " belongs to one of " + r.getString(2) + " that is not there.");
        }
      }
      for (String trigger : triggers) {
        s.execute(trigger);
      }
      connection.commit();
      whole = true;
      connection.setAutoCommit(true);
      s.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
  }

  @Override
  public void close() throws SQLException {
    if (!whole) {
      connection.rollback();
    }
    connection.close();
  }
}
