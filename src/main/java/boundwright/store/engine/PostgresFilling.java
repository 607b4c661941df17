package boundwright.store.engine;

import boundwright.store.backup.Filling;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Fills a schema of PostgreSQL; needs no more rights than those of its owner. */
final class PostgresFilling implements Filling {
  private static final String ASTRAY = "23503";

  private final PostgresCatalogue catalogue = new PostgresCatalogue();
  private List<String> tables = List.of();

  @Override
  public void begin(Statement s, List<String> told) throws SQLException {
    tables = told;
    s.execute("SET CONSTRAINTS ALL DEFERRED");
    for (String table : tables) {
      s.execute("ALTER TABLE \"" + table + "\" DISABLE TRIGGER USER");
    }
    for (String table : tables) {
      s.execute("DELETE FROM \"" + table + "\""); // what the scripts themselves put in is told too
    }
  }

  @Override
  public Map<String, Kind> columns(Statement s, String table) throws SQLException {
    Map<String, Kind> out = new HashMap<>();
    try (ResultSet r =
        s.executeQuery(
            "SELECT attname, format_type(atttypid, NULL) FROM pg_attribute WHERE attrelid = CAST('\"" + table + "\"' AS regclass) AND attnum > 0 AND NOT attisdropped")) {
      while (r.next()) {
        if (!r.getString(1).equals(PostgresCatalogue.ROWID)) {
          out.put(
              r.getString(1),
              switch (r.getString(2)) {
                case "bytea" -> Kind.BYTES;
                case "boolean" -> Kind.TRUTH;
                default -> Kind.PLAIN;
              });
        }
      }
    }
    return out;
  }

  @Override
  public void number(Statement s, String table, long largest) throws SQLException {
    for (PostgresCatalogue.Giver g : catalogue.givers(s)) {
      if (g.table().equals(table) && !g.column().equals(PostgresCatalogue.ROWID)) {
        raise(s, g, largest);
      }
    }
  }

  private static void raise(Statement s, PostgresCatalogue.Giver giver, long to) throws SQLException {
    if (to > giver.last()) {
      s.execute("SELECT setval(CAST('" + giver.sequence() + "' AS regclass), " + to + ")");
    }
  }

  @Override
  public String end(Statement s) throws SQLException {
    try {
      s.execute("SET CONSTRAINTS ALL IMMEDIATE");
    } catch (SQLException e) {
      if (ASTRAY.equals(e.getSQLState())) {
        return "A row belongs to one that is not there (" + e.getMessage() + ").";
      }
      throw e;
    }
    for (String table : tables) {
      s.execute("ALTER TABLE \"" + table + "\" ENABLE TRIGGER USER");
    }
    for (PostgresCatalogue.Giver g : catalogue.givers(s)) {
      try (ResultSet r = s.executeQuery("SELECT coalesce(max(\"" + g.column() + "\"), 0) FROM \"" + g.table() + "\"")) {
        long largest = r.next() ? r.getLong(1) : 0;
        raise(s, g, largest);
      }
    }
    return "";
  }
}
