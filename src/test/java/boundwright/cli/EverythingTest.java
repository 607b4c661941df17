package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSquad;
import boundwright.store.Stores;
import boundwright.store.Workbench;
import boundwright.store.backup.Everything;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Everything out and in again. The tables and their columns are asked of the database: a table that a later script makes fails here until it is
 * filled or named with a reason.
 */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class EverythingTest {
  @TempDir Path dir;
  private Terminal terminal;
  private int made;

  @BeforeEach
  void aSquadWithARowInEveryTable() throws Exception {
    terminal = new Terminal(dir);
    try (Workbench bench = Workbench.open(dir.resolve("data"), Terminal.CLOCK)) {
      DemoSquad.fill(bench);
    }
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("data/boundwright.db"));
        Statement s = c.createStatement()) {
      s.execute("PRAGMA foreign_keys = OFF");
      List<String> triggers = list(s, "SELECT name FROM sqlite_schema WHERE type = 'trigger'");
      List<String> again = list(s, "SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
      for (String t : triggers) {
        s.execute("DROP TRIGGER " + t);
      }
      for (String table : tables(s)) {
        boolean full = true;
        for (String column : list(s, "SELECT name FROM pragma_table_info('" + table + "')")) {
          full &= count(s, "SELECT count(*) FROM \"" + table + "\" WHERE \"" + column + "\" IS NOT NULL") > 0;
        }
        if (!full) {
          fill(s, table);
        }
      }
      for (String sql : again) {
        s.execute(sql);
      }
    }
  }

  /** A row with something in every column that its rules allow; what it means does not matter here, only that it comes back. */
  private void fill(Statement s, String table) throws Exception {
    Map<String, String> values = new LinkedHashMap<>();
    Map<String, String> parents = new LinkedHashMap<>();
    try (ResultSet r = s.executeQuery("SELECT \"from\", \"table\", coalesce(\"to\", 'id') FROM pragma_foreign_key_list('" + table + "')")) {
      while (r.next()) {
        parents.put(
            r.getString(1),
            "coalesce((SELECT max(" + r.getString(3) + ") FROM " + r.getString(2) + " WHERE " + r.getString(3) + " NOT IN (SELECT coalesce(" + r.getString(1) + ", -1) FROM \"" + table + "\")), (SELECT max(" + r.getString(3) + ") FROM " + r.getString(2) + "))");
      }
    }
    String rules = list(s, "SELECT sql FROM sqlite_schema WHERE name = '" + table + "'").get(0);
    try (ResultSet r = s.executeQuery("SELECT name, type FROM pragma_table_info('" + table + "')")) {
      while (r.next()) {
        String column = r.getString(1);
        Matcher allowed = Pattern.compile(column + " (?:IN \\(|BETWEEN )('[^']*'|\\d+)").matcher(rules);
        values.put(
            column,
            parents.containsKey(column) ? parents.get(column)
                : allowed.find() ? allowed.group(1)
                : switch (r.getString(2)) {
                  case "TEXT" -> rules.contains("length(" + column + ") = 64") ? "lower(hex(randomblob(32)))" : "lower(hex(randomblob(16)))";
                  case "BLOB" -> "randomblob(40)";
                  case "REAL" -> "0.1 + 0.2";
                  default -> String.valueOf(1000 + ++made);
                });
      }
    }
    // either an athlete of the squad or a rival
    if (table.equals("meet_entrant")) {
      values.put("athlete_id", "NULL");
    }
    // a number of an athlete stands only where somebody is one
    if (table.equals("membership")) {
      values.put("role", "'ATHLETE'");
    }
    // on the way to a department somebody has a session or a link, not both
    if (table.equals("department_visit")) {
      values.put("purpose", "'CONNECT'");
      values.put("link", "NULL");
    }
    s.execute("INSERT INTO \"" + table + "\" (\"" + String.join("\", \"", values.keySet()) + "\") VALUES (" + String.join(", ", values.values()) + ")");
  }

  private static List<String> list(Statement s, String sql) throws Exception {
    List<String> out = new ArrayList<>();
    try (ResultSet r = s.executeQuery(sql)) {
      while (r.next()) {
        out.add(r.getString(1));
      }
    }
    return out;
  }

  private static long count(Statement s, String sql) throws Exception {
    return Long.parseLong(list(s, sql).get(0));
  }

  private static List<String> tables(Statement s) throws Exception {
    return list(s, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%' ORDER BY rowid");
  }

  @Test
  void whatIsExportedComesBackToTheLastByte() throws Exception {
    Terminal.Said first = terminal.run("export", "--everything", "--out", "first.json");
    assertThat(first.exit()).as(first.err()).isZero();
    Terminal.Said taken = terminal.run("import", "--everything", "first.json", "--data", "other");
    assertThat(taken.exit()).as(taken.err()).isZero();
    assertThat(terminal.run("export", "--everything", "--out", "second.json", "--data", "other").exit()).isZero();
    assertThat(Files.readAllBytes(dir.resolve("second.json"))).isEqualTo(Files.readAllBytes(dir.resolve("first.json")));
    JsonNode file = new com.fasterxml.jackson.databind.ObjectMapper().readTree(dir.resolve("first.json").toFile());
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("data/boundwright.db"));
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("other/boundwright.db"));
        Statement s = c.createStatement();
        Statement o = other.createStatement()) {
      for (String table : tables(s)) {
        JsonNode rows = file.get("tables").get(table);
        if (Everything.LEFT_OUT.containsKey(table)) {
          assertThat(rows).as(table + ": " + Everything.LEFT_OUT.get(table)).isNull();
          continue;
        }
        assertThat(rows.size()).as("rows of %s", table).isPositive().isEqualTo((int) count(o, "SELECT count(*) FROM \"" + table + "\""));
        for (String column : list(s, "SELECT name FROM pragma_table_info('" + table + "')")) {
          assertThat(rows).as("%s.%s in some row", table, column).anySatisfy(row -> assertThat(row.get(column).isNull()).isFalse());
        }
      }
      assertThat(list(o, "SELECT sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name")).isEqualTo(list(s, "SELECT sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name"));
      assertThat(tables(s)).containsAll(Everything.LEFT_OUT.keySet());
    }
    assertThat(Files.readString(dir.resolve("first.json"))).doesNotContainIgnoringCase("secret_hash");
  }

  @Test
  void aMoveIntoPostgresAndBackKeepsEveryByte() throws Exception {
    String server = Stores.address("moved");
    Path film = Files.createDirectories(dir.resolve("data/clips/1")).resolve("film.mov");
    Files.writeString(film, "invented");
    terminal.run("export", "--everything", "--out", "first.json");

    Terminal.Said there = terminal.run("--json", "move", "--from", "data", "--to", server);
    assertThat(there.exit()).as(there.err()).isZero();
    assertThat(there.json().get("everything").asText()).isEqualTo(sha256(dir.resolve("first.json")));
    assertThat(terminal.run("export", "--everything", "--out", "second.json", "--database", server).exit()).isZero();
    assertThat(dir.resolve("second.json")).hasSameBinaryContentAs(dir.resolve("first.json"));

    Terminal.Said back = terminal.run("move", "--from", server, "--to", "home", "--data", "data");
    assertThat(back.exit()).as(back.err()).isZero();
    assertThat(terminal.run("export", "--everything", "--out", "third.json", "--data", "home").exit()).isZero();
    assertThat(dir.resolve("third.json")).hasSameBinaryContentAs(dir.resolve("first.json"));
    assertThat(dir.resolve("home/clips/1/film.mov")).hasContent("invented");
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("data/boundwright.db"));
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + dir.resolve("home/boundwright.db"));
        Statement s = c.createStatement();
        Statement o = other.createStatement()) {
      for (String table : tables(s)) { // what an export leaves out went along too
        assertThat(count(o, "SELECT count(*) FROM \"" + table + "\"")).as(table).isEqualTo(count(s, "SELECT count(*) FROM \"" + table + "\""));
      }
    }
    assertThat(terminal.run("check-data", "--database", server).out()).contains("athletes");
  }

  @Test
  void aMoveIntoAPlaceThatHoldsSomethingOrOfNothingChangesNothing() throws Exception {
    String server = Stores.address("taken");
    assertThat(terminal.run("move", "--from", "data", "--to", server).exit()).isZero();
    assertThat(terminal.run("export").err()).as("films of two stores in one folder").contains("was moved to", "open it with --database");
    assertThat(terminal.run("move", "--from", "data", "--to", Stores.address("twice")).err()).contains("was moved to");
    Files.delete(dir.resolve("data/boundwright.moved"));
    assertThat(terminal.run("move", "--from", "data", "--to", server).err()).contains("rows already", "nothing is ever put over them");
    assertThat(terminal.run("move", "--from", server, "--to", "data").err()).contains("holds a store already");
    assertThat(terminal.run("move", "--from", "nowhere", "--to", server).err()).contains("nothing to move");
    assertThat(terminal.run("move", "--from", "data", "--to", "other").err()).contains("from a folder into a PostgreSQL");
    assertThat(terminal.run("move", "--from", Stores.address("none"), "--to", "other").err()).contains("nothing to move");
    try (Workbench open = Workbench.open(dir.resolve("data"), Terminal.CLOCK)) {
      assertThat(open.athletes().all()).isNotEmpty();
      assertThat(terminal.run("move", "--from", "data", "--to", Stores.address("free")).err()).contains("is open with the folder");
    }
  }

  @Test
  void aBackupOfPostgresIsOneThatARestoreTakes() throws Exception {
    String server = Stores.address("backed");
    terminal.run("export", "--everything", "--out", "first.json");
    assertThat(terminal.run("move", "--from", "data", "--to", server).exit()).isZero();
    Terminal.Said made = terminal.run("backup", "--plain", "gone.zip", "--database", server);
    assertThat(made.exit()).as(made.err()).isZero();
    assertThat(terminal.run("restore", "gone.zip", "--database", server).err()).contains("without --database", "boundwright move");
    Terminal.Said back = terminal.run("restore", "gone.zip", "--data", "restored");
    assertThat(back.exit()).as(back.err()).isZero();
    assertThat(terminal.run("export", "--everything", "--out", "second.json", "--data", "restored").exit()).isZero();
    assertThat(dir.resolve("second.json")).hasSameBinaryContentAs(dir.resolve("first.json"));
  }

  private static String sha256(Path file) throws Exception {
    return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
  }

  @Test
  void aSquadIsNeverMixedWithAnotherAndABadFileTakesNothing() throws Exception {
    terminal.run("export", "--everything", "--out", "first.json");
    assertThat(terminal.run("import", "--everything", "first.json").err()).contains("holds a squad, which is never mixed");
    String whole = Files.readString(dir.resolve("first.json"), StandardCharsets.UTF_8);
    for (String bad :
        List.of(
            whole.substring(0, whole.length() / 2), "{}", "", "[]", "date,athlete\n", whole.replace("\"version\":", "\"versions\":"),
            whole.replace("\"rep\":[", "\"learned\":["), whole.replaceFirst("\"version\":\\d+", "\"version\":99"), whole.replace("\"athlete_id\":1,", "\"athlete_id\":987654,"))) {
      Files.writeString(dir.resolve("bad.json"), bad, StandardCharsets.UTF_8);
      Terminal.Said said = terminal.run("import", "--everything", "bad.json", "--data", "empty");
      assertThat(said.exit()).as(said.err()).isEqualTo(2);
      assertThat(said.err()).contains("othing was taken");
      assertThat(dir.resolve("empty/boundwright.db")).doesNotExist();
    }
    assertThat(Set.of(terminal.run("import", "--everything", "first.json", "--data", "empty").exit())).containsExactly(0);
  }
}
