package boundwright.store.backup;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What an SQLite file says of itself. */
public final class SqliteCatalogue implements Catalogue {
  /** Its table of forms has no number of its own, and SQLite keeps none for it. */
  private static final String WITHOUT_ROWID = "taken";

  @Override
  public List<String> tables(Statement s) throws SQLException {
    return Counts.texts(s, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%' ORDER BY name");
  }

  @Override
  public String rows(Statement s, String table, String where) {
    return "SELECT * FROM \"" + table + "\"" + (where.isEmpty() ? "" : " WHERE " + where) + " ORDER BY " + (table.equals(WITHOUT_ROWID) ? "token" : "rowid");
  }

  @Override
  public Map<String, Long> numbers(Statement s) throws SQLException {
    Map<String, Long> out = new TreeMap<>();
    try (ResultSet r = s.executeQuery("SELECT name, seq FROM sqlite_sequence")) {
      while (r.next()) {
        out.put(r.getString(1), r.getLong(2));
      }
    }
    return out;
  }

  @Override
  public List<Reference> references(Statement s) throws SQLException {
    List<Reference> out = new ArrayList<>();
    try (ResultSet r =
        s.executeQuery(
            "SELECT t.name AS own, f.\"from\" AS own_column, f.\"table\" AS target, f.\"to\" AS target_column, f.on_delete"
                + " FROM sqlite_schema t, pragma_foreign_key_list(t.name) f WHERE t.type = 'table' ORDER BY t.name, f.\"from\"")) {
      while (r.next()) {
        out.add(new Reference(r.getString(1), r.getString(2), r.getString(3), r.getString(4), r.getString(5)));
      }
    }
    return out;
  }
}
