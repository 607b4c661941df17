package boundwright.store.engine;

import boundwright.store.backup.Catalogue;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What a schema of PostgreSQL says of itself: of the one that the connection sees. */
final class PostgresCatalogue implements Catalogue {
  /** The order in which rows came, in tables without a number of their own: SQLite has it without being told. */
  static final String ROWID = "rowid";

  /** Its numbers are given again in SQLite, so the largest of them says nothing. */
  private static final String GIVEN_AGAIN = "phone";

  /**
   * A column that gives numbers by itself.
   *
   * @param sequence what gives them, to be named to the database
   * @param last the largest that was given, 0 for none
   */
  record Giver(String table, String column, String sequence, long last) {}

  @Override
  public List<String> tables(Statement s) throws SQLException {
    return texts(
        s,
        "SELECT c.relname FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = current_schema()"
            + " AND c.relkind = 'r' AND c.relname NOT LIKE 'flyway%' ORDER BY c.relname COLLATE \"C\"");
  }

  @Override
  public String rows(Statement s, String table, String where) throws SQLException {
    List<String> columns = new ArrayList<>();
    boolean counted = false;
    try (ResultSet r = s.executeQuery("SELECT attname, format_type(atttypid, NULL) FROM pg_attribute " + of(table) + " AND attnum > 0 AND NOT attisdropped ORDER BY attnum")) {
      while (r.next()) {
        String name = r.getString(1);
        if (name.equals(ROWID)) {
          counted = true;
        } else {
          columns.add("boolean".equals(r.getString(2)) ? "CASE WHEN \"" + name + "\" THEN 1 ELSE 0 END AS \"" + name + "\"" : "\"" + name + "\"");
        }
      }
    }
    String order = counted ? ROWID : key(s, table);
    return "SELECT " + String.join(", ", columns) + " FROM \"" + table + "\"" + (where.isEmpty() ? "" : " WHERE " + where) + " ORDER BY " + order;
  }

  private static String of(String table) {
    return "WHERE attrelid = CAST('\"" + table + "\"' AS regclass)";
  }

  /** The columns of the primary key. */
  static String key(Statement s, String table) throws SQLException {
    return String.join(
        ", ",
        texts(
            s,
            "SELECT '\"' || a.attname || '\"' FROM pg_index i CROSS JOIN LATERAL unnest(i.indkey) WITH ORDINALITY AS k (number, place)"
                + " JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.number"
                + " WHERE i.indrelid = CAST('\"" + table + "\"' AS regclass) AND i.indisprimary ORDER BY k.place"));
  }

  /** The columns that give numbers by themselves. */
  List<Giver> givers(Statement s) throws SQLException {
    List<Giver> out = new ArrayList<>();
    try (ResultSet r =
        s.executeQuery(
            "SELECT t.relname, a.attname, CAST(CAST(q.oid AS regclass) AS text), coalesce(pg_sequence_last_value(q.oid), 0) FROM pg_class q"
                + " JOIN pg_depend d ON d.objid = q.oid AND d.classid = CAST('pg_class' AS regclass) AND d.deptype = 'i'"
                + " JOIN pg_class t ON t.oid = d.refobjid JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = d.refobjsubid"
                + " JOIN pg_namespace n ON n.oid = t.relnamespace WHERE q.relkind = 'S' AND n.nspname = current_schema()")) {
      while (r.next()) {
        out.add(new Giver(r.getString(1), r.getString(2), r.getString(3), r.getLong(4)));
      }
    }
    return out;
  }

  @Override
  public Map<String, Long> numbers(Statement s) throws SQLException {
    Map<String, Long> out = new TreeMap<>();
    for (Giver g : givers(s)) {
      if (g.last() > 0 && !g.column().equals(ROWID) && !g.table().equals(GIVEN_AGAIN)) {
        out.put(g.table(), g.last());
      }
    }
    return out;
  }

  @Override
  public List<Reference> references(Statement s) throws SQLException {
    List<Reference> out = new ArrayList<>();
    try (ResultSet r =
        s.executeQuery(
            "SELECT t.relname, a.attname, f.relname, b.attname, CASE c.confdeltype WHEN 'c' THEN 'CASCADE' WHEN 'n' THEN 'SET NULL' ELSE 'NO ACTION' END"
                + " FROM pg_constraint c JOIN pg_class t ON t.oid = c.conrelid JOIN pg_class f ON f.oid = c.confrelid"
                + " JOIN pg_namespace n ON n.oid = t.relnamespace"
                + " JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = c.conkey[1] JOIN pg_attribute b ON b.attrelid = f.oid AND b.attnum = c.confkey[1]"
                + " WHERE c.contype = 'f' AND n.nspname = current_schema() ORDER BY t.relname COLLATE \"C\", a.attname COLLATE \"C\"")) {
      while (r.next()) {
        out.add(new Reference(r.getString(1), r.getString(2), r.getString(3), r.getString(4), r.getString(5)));
      }
    }
    return out;
  }

  private static List<String> texts(Statement s, String sql) throws SQLException {
    List<String> out = new ArrayList<>();
    try (ResultSet r = s.executeQuery(sql)) {
      while (r.next()) {
        out.add(r.getString(1));
      }
    }
    return out;
  }
}
