package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Puts rows that {@link Everything} told into a database without any, as they were: with their numbers, and with nothing added by the way.
 * All or nothing; close it, or nothing is kept.
 */
public final class EverythingInto implements AutoCloseable {
  private static final String WAY_OUT = " Nothing was taken. Give a file that boundwright export --everything wrote.";
  /** Rows that are sent at once. */
  private static final int MOST = 500;

  private final Connection connection;
  private final Statement statement;
  private final Filling filling;
  private final Set<String> tables = new HashSet<>();
  private final Map<String, Map<String, Filling.Kind>> kinds = new HashMap<>();
  private final Map<String, PreparedStatement> inserts = new HashMap<>();
  private String waiting = "";
  private @Nullable PreparedStatement batch;
  private int inBatch;
  private boolean ready;
  private boolean whole;

  /** Into a database file; closed with this. */
  public static EverythingInto file(Path database, Everything.Which which) throws SQLException {
    Connection c = DriverManager.getConnection("jdbc:sqlite:" + database.toAbsolutePath());
    try {
      try (Statement s = c.createStatement()) {
        s.execute("PRAGMA foreign_keys = OFF");
      }
      return new EverythingInto(c, new SqliteCatalogue(), new SqliteFilling(), which);
    } catch (SQLException | RuntimeException e) {
      c.close();
      throw e;
    }
  }

  /** @param connection closed with this */
  public EverythingInto(Connection connection, Catalogue catalogue, Filling filling, Everything.Which which) throws SQLException {
    this.connection = connection;
    this.filling = filling;
    connection.setAutoCommit(false);
    this.statement = connection.createStatement();
    tables.addAll(Everything.tables(statement, catalogue, which));
    filling.begin(statement, Everything.tables(statement, catalogue, which));
  }

  /**
   * A row of a table.
   *
   * @param values as {@link Everything.Listener#row}; bytes as such or as Base64
   * @throws RefusedException if there is no such table or column, or the row cannot be kept
   */
  public void row(String table, Map<String, @Nullable Object> values) {
    try {
      Map<String, Filling.Kind> columns = columns(table);
      if (!columns.keySet().containsAll(values.keySet())) {
        Set<String> unknown = new HashSet<>(values.keySet());
        unknown.removeAll(columns.keySet());
        throw refused("The table " + table + " has no column " + unknown + ".");
      }
      PreparedStatement insert = insert(table, values.keySet());
      int at = 1;
      for (Map.Entry<String, @Nullable Object> e : values.entrySet()) {
        insert.setObject(at++, value(columns.getOrDefault(e.getKey(), Filling.Kind.PLAIN), e.getValue()));
      }
      insert.addBatch();
      if (++inBatch >= MOST) {
        send();
      }
    } catch (SQLException | IllegalArgumentException e) {
      throw unkept(table, e);
    }
  }

  private static @Nullable Object value(Filling.Kind kind, @Nullable Object told) {
    return switch (kind) {
      case PLAIN -> told;
      case BYTES -> told instanceof String text ? Base64.getDecoder().decode(text) : told;
      case TRUTH -> told instanceof Number n ? (Object) (n.longValue() != 0) : told;
    };
  }

  private static RefusedException unkept(String table, Exception e) {
    return refused("A row of the table " + table + " cannot be kept (" + e.getMessage() + ").", e);
  }

  private static RefusedException refused(String why) {
    return new RefusedException(why + WAY_OUT);
  }

  private static RefusedException refused(String why, Exception e) {
    return new RefusedException(why + WAY_OUT, e);
  }

  private Map<String, Filling.Kind> columns(String table) throws SQLException {
    if (!tables.contains(table)) {
      throw refused("There is no table '" + table.replaceAll("[^A-Za-z0-9_]", "?") + "'.");
    }
    Map<String, Filling.Kind> known = kinds.get(table);
    if (known == null) {
      known = filling.columns(statement, table);
      kinds.put(table, known);
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
    if (batch != there) {
      send();
      batch = there;
      waiting = table;
    }
    return there;
  }

  private void send() throws SQLException {
    PreparedStatement full = batch;
    if (full != null && inBatch > 0) {
      inBatch = 0;
      try {
        full.executeBatch();
      } catch (SQLException e) {
        throw unkept(waiting, e);
      }
    }
  }

  /** The largest number that a table has given. */
  public void number(String table, long largest) {
    try {
      send();
      columns(table);
      filling.number(statement, table, largest);
    } catch (SQLException e) {
      throw refused("The largest number of the table " + table + " cannot be kept.", e);
    }
  }

  /** All rows have come: they are checked and can be read back by the same connection. */
  public void ready() throws SQLException {
    send();
    String astray = filling.end(statement);
    if (!astray.isEmpty()) {
      throw refused(astray);
    }
    ready = true;
  }

  /** All rows have come and are kept. */
  public void end() throws SQLException {
    if (!ready) {
      ready();
    }
    connection.commit();
    whole = true;
  }

  @Override
  public void close() throws SQLException {
    try (connection) {
      if (!whole) {
        connection.rollback();
      }
    }
  }
}
