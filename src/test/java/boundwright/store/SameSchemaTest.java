package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Schema;
import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The scripts in db/migration and in db/postgres leave the same schema: tables, columns in their order, types, what may be missing, keys,
 * references, indexes and triggers, each as its own database says it. What is meant to differ is written down here.
 */
@SqliteFile("asks both databases in every run")
class SameSchemaTest {
  /** The last of SQLite's scripts that are one baseline for PostgreSQL. */
  private static final int BASELINE = 17;

  @TempDir Path dir;
  private Connection lite;
  private Connection server;

  @BeforeEach
  void open() throws SQLException {
    Workbench.open(dir, Fixtures.CLOCK).close();
    Workbench.open(new DataPlace(dir, Stores.schema("same_schema")), Fixtures.CLOCK).close();
    lite = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve(Schema.FILE_NAME));
    server = DriverManager.getConnection(Stores.address("same_schema"));
  }

  @AfterEach
  void close() throws SQLException {
    lite.close();
    server.close();
  }

  private static List<String> ask(Connection c, String sql) {
    List<String> out = new ArrayList<>();
    try (Statement s = c.createStatement();
        ResultSet r = s.executeQuery(sql)) {
      while (r.next()) {
        StringBuilder row = new StringBuilder();
        for (int i = 1; i <= r.getMetaData().getColumnCount(); i++) {
          row.append(i == 1 ? "" : " ").append(r.getString(i));
        }
        out.add(row.toString());
      }
      return out;
    } catch (SQLException e) {
      throw new AssertionError(sql, e);
    }
  }

  private List<String> tables() {
    return ask(lite, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%' ORDER BY name");
  }

  @Test
  void theTablesAreTheSame() {
    assertThat(
            ask(server, "SELECT table_name FROM information_schema.tables WHERE table_schema = 'same_schema' AND table_name NOT LIKE 'flyway%' ORDER BY table_name COLLATE \"C\""))
        .isEqualTo(tables());
  }

  @Test
  void theColumnsAreTheSameInTheirOrder() {
    for (String table : tables()) {
      List<String> expected =
          ask(lite, "SELECT name, type, CASE WHEN \"notnull\" OR (pk > 0 AND type = 'INTEGER') THEN 'NO' ELSE 'YES' END, coalesce(dflt_value, '-') FROM pragma_table_info('" + table + "') ORDER BY cid")
              .stream()
              .map(c -> c.replace(" INTEGER ", " bigint ").replace(" REAL ", " double precision ").replace(" BLOB ", " bytea ").replace(" TEXT ", " text "))
              .map(c -> c.equals("picked bigint NO -") ? "picked boolean NO -" : c) // the job library asks for it
              .collect(Collectors.toList());
      List<String> keyed = ask(lite, "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 AND type <> 'INTEGER'");
      // a key may not be missing in PostgreSQL; SQLite lets one that is no number be, and the program never leaves it out
      expected.replaceAll(c -> keyed.contains(c.split(" ")[0]) ? c.replace(" YES ", " NO ") : c);
      List<String> found =
          ask(
              server,
              "SELECT column_name, data_type, is_nullable, replace(coalesce(column_default, '-'), '::text', '') FROM information_schema.columns WHERE table_schema = 'same_schema' AND table_name = '" + table
                  + "' AND column_name <> 'rowid' ORDER BY ordinal_position");
      assertThat(found).as(table).isEqualTo(expected);
    }
  }

  @Test
  void everyTextIsInTheOrderOfItsBytes() {
    assertThat(
            ask(server, "SELECT table_name, column_name FROM information_schema.columns WHERE table_schema = 'same_schema' AND table_name NOT LIKE 'flyway%' AND data_type = 'text' AND collation_name IS DISTINCT FROM 'C'"))
        .isEmpty();
  }

  @Test
  void aTableWithoutANumberOfItsOwnKeepsTheOrderOfItsRows() {
    for (String table : tables()) {
      boolean counted = !ask(server, "SELECT 1 FROM information_schema.columns WHERE table_schema = 'same_schema' AND table_name = '" + table + "' AND column_name = 'rowid'").isEmpty();
      boolean own = ask(lite, "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 AND type = 'INTEGER'").size() == 1
          && ask(lite, "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0").size() == 1;
      boolean without = ask(lite, "SELECT sql FROM sqlite_schema WHERE name = '" + table + "'").get(0).contains("WITHOUT ROWID");
      assertThat(counted).as(table).isEqualTo(!own && !without);
    }
  }

  @Test
  void theKeysAndIndexesAreTheSame() {
    for (String table : tables()) {
      Set<String> expected = new TreeSet<>();
      List<String> key = ask(lite, "SELECT name FROM pragma_table_info('" + table + "') WHERE pk > 0 ORDER BY pk");
      if (!key.isEmpty()) {
        expected.add("key " + key);
      }
      for (String index : ask(lite, "SELECT name FROM pragma_index_list('" + table + "') WHERE origin <> 'pk'")) {
        String sql = Objects.requireNonNullElse(ask(lite, "SELECT coalesce(sql, '') FROM sqlite_schema WHERE name = '" + index + "'").get(0), "");
        String unique = ask(lite, "SELECT \"unique\" FROM pragma_index_list('" + table + "') WHERE name = '" + index + "'").get(0).equals("1") ? "unique " : "index ";
        if (sql.isEmpty()) {
          expected.add(unique + String.join(", ", ask(lite, "SELECT name FROM pragma_index_info('" + index + "') ORDER BY seqno")));
        } else {
          expected.add(unique + normal(sql.substring(sql.indexOf('(') + 1)));
        }
      }
      Set<String> found = new TreeSet<>();
      for (String index :
          ask(server, "SELECT CASE WHEN i.indisprimary THEN 'key ' WHEN i.indisunique THEN 'unique ' ELSE 'index ' END || pg_get_indexdef(i.indexrelid) FROM pg_index i WHERE i.indrelid = CAST('" + table + "' AS regclass)")) {
        String columns = normal(index.substring(index.indexOf('(') + 1));
        found.add(index.startsWith("key ") ? "key [" + columns + "]" : index.substring(0, index.indexOf(' ') + 1) + columns);
      }
      assertThat(found).as(table).isEqualTo(expected);
    }
  }

  /** What stands in the brackets of an index, as both write it. */
  private static String normal(String rest) {
    return rest.replace("(0)::bigint", "0").replace("COALESCE", "coalesce").replaceAll("\\bWHERE \\((.*)\\)$", "WHERE $1").replaceAll("\\)(?= WHERE|$)", "").replaceAll("\\s+", " ").replace("\"", "").strip();
  }

  @Test
  void theReferencesAndTriggersAreTheSame() {
    assertThat(
            ask(
                server,
                "SELECT t.relname, a.attname, f.relname, b.attname, CASE c.confdeltype WHEN 'c' THEN 'CASCADE' WHEN 'n' THEN 'SET NULL' ELSE 'NO ACTION' END FROM pg_constraint c"
                    + " JOIN pg_class t ON t.oid = c.conrelid JOIN pg_class f ON f.oid = c.confrelid JOIN pg_namespace n ON n.oid = t.relnamespace"
                    + " JOIN pg_attribute a ON a.attrelid = t.oid AND a.attnum = c.conkey[1] JOIN pg_attribute b ON b.attrelid = f.oid AND b.attnum = c.confkey[1]"
                    + " WHERE c.contype = 'f' AND n.nspname = 'same_schema' AND c.condeferrable ORDER BY t.relname COLLATE \"C\", a.attname COLLATE \"C\""))
        .isEqualTo(
            ask(
                lite,
                "SELECT t.name, f.\"from\", f.\"table\", f.\"to\", f.on_delete FROM sqlite_schema t, pragma_foreign_key_list(t.name) f WHERE t.type = 'table' ORDER BY t.name, f.\"from\""));
    assertThat(ask(server, "SELECT t.tgname, c.relname FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid JOIN pg_namespace n ON n.oid = c.relnamespace WHERE NOT t.tgisinternal AND n.nspname = 'same_schema' ORDER BY t.tgname"))
        .isEqualTo(ask(lite, "SELECT name, tbl_name FROM sqlite_schema WHERE type = 'trigger' ORDER BY name"));
  }

  @Test
  void theNumberOfRulesOfEachTableIsTheSame() {
    for (String table : tables()) {
      String sql = ask(lite, "SELECT sql FROM sqlite_schema WHERE name = '" + table + "'").get(0).replaceAll("--[^\n]*", "");
      int expected = sql.split("\\bCHECK\\b", -1).length - 1 - (table.equals("job") ? 1 : 0); // picked is a BOOLEAN
      assertThat(ask(server, "SELECT 1 FROM pg_constraint WHERE contype = 'c' AND conrelid = CAST('" + table + "' AS regclass)")).as(table).hasSize(expected);
    }
  }

  @Test
  void everyScriptAfterTheBaselineIsThereTwice() throws IOException, URISyntaxException {
    assertThat(numbers("/db/postgres")).isEqualTo(numbers("/db/migration").stream().filter(n -> n >= BASELINE).collect(Collectors.toCollection(TreeSet::new)));
    assertThat(numbers("/db/postgres")).contains(BASELINE, Schema.NEWEST);
  }

  private static Set<Integer> numbers(String folder) throws IOException, URISyntaxException {
    URL place = SameSchemaTest.class.getResource(folder);
    try (Stream<Path> all = Files.list(Path.of(Objects.requireNonNull(place).toURI()))) {
      return all.map(f -> String.valueOf(f.getFileName())).map(f -> Integer.valueOf(f.replaceAll("V(\\d+)__.*", "$1"))).collect(Collectors.toCollection(TreeSet::new));
    }
  }
}
