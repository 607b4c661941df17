package boundwright.store.backup;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Fills an SQLite file whose connection does not look at references. */
final class SqliteFilling implements Filling {
  private final List<String> triggers = new ArrayList<>();

  @Override
  public void begin(Statement s, List<String> tables) throws SQLException {
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
    for (String table : tables) {
      s.execute("DELETE FROM \"" + table + "\""); // what the scripts themselves put in is told too
    }
    s.execute("DELETE FROM sqlite_sequence");
  }

  @Override
  public Map<String, Kind> columns(Statement s, String table) throws SQLException {
    Map<String, Kind> out = new HashMap<>();
    try (ResultSet r = s.executeQuery("SELECT name, type FROM pragma_table_info('" + table + "')")) {
      while (r.next()) {
        out.put(r.getString(1), "BLOB".equals(r.getString(2)) ? Kind.BYTES : Kind.PLAIN);
      }
    }
    return out;
  }

  @Override
  public void number(Statement s, String table, long largest) throws SQLException {
    s.execute("DELETE FROM sqlite_sequence WHERE name = '" + table + "'");
    s.execute(
        "INSERT INTO sqlite_sequence (name, seq) SELECT name, " + largest + " FROM sqlite_schema WHERE type = 'table' AND name = '" + table + "' AND sql LIKE '%AUTOINCREMENT%'");
  }

  @Override
  public String end(Statement s) throws SQLException {
    try (ResultSet r = s.executeQuery("SELECT \"table\", parent FROM pragma_foreign_key_check LIMIT 1")) {
      if (r.next()) {
        return "A row of the table " + r.getString(1) + " belongs to one of " + r.getString(2) + " that is not there.";
      }
    }
    for (String trigger : triggers) {
      s.execute(trigger);
    }
    return "";
  }
}
