package boundwright.store.engine;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The newest schema of an SQLite file as one script: what all migrations leave in an empty file, the migration tool's own table included. The build
 * writes it down, so that a new file is ready without starting that tool, which takes most of a second. Where a build left none, the tool does it.
 */
public final class ReadySchema {
  private static final String NAME = "ready.sql";
  /** Tables before their rows, and triggers last, as none may fire here. */
  private static final String OBJECTS =
      "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%%' ESCAPE '\\' AND type %s ORDER BY rowid";

  private ReadySchema() {}

  /** Run by the build: writes the script into the folder named first. */
  public static void main(String[] arguments) throws IOException, SQLException {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    Path scratch = Files.createTempDirectory("ready");
    Path file = scratch.resolve(Schema.FILE_NAME);
    try {
      Schema.makeFile(file, Schema.NEWEST);
      Files.writeString(folder.resolve(NAME), script(file));
    } finally {
      Files.deleteIfExists(file);
      Files.deleteIfExists(scratch);
    }
  }

  /** What makes an empty file like this one. */
  static String script(Path file) throws SQLException {
    List<String> out = new ArrayList<>();
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file.toAbsolutePath());
        Statement s = c.createStatement()) {
      out.addAll(texts(s, String.format(OBJECTS, "= 'table'")));
      for (String table : texts(s, "SELECT name FROM sqlite_schema WHERE type = 'table' AND (name NOT LIKE 'sqlite\\_%' ESCAPE '\\' OR name = 'sqlite_sequence') ORDER BY rowid")) {
        String columns = String.join(" || ', ' || ", texts(s, "SELECT 'quote(\"' || name || '\")' FROM pragma_table_info('" + table + "') ORDER BY cid"));
        out.addAll(texts(s, "SELECT 'INSERT INTO \"" + table + "\" VALUES (' || " + columns + " || ')' FROM \"" + table + "\""));
      }
      out.addAll(texts(s, String.format(OBJECTS, "IN ('index', 'view')")));
      out.addAll(texts(s, String.format(OBJECTS, "= 'trigger'")));
    }
    return String.join(";\n", out) + ";\n";
  }

  /** The script that the build wrote, or null where there is none. */
  static @Nullable String script() throws IOException {
    try (InputStream in = ReadySchema.class.getResourceAsStream("/db/" + NAME)) {
      return in == null ? null : new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Runs a script in a file without tables, all or nothing. */
  static void into(Connection c, String script) throws SQLException {
    c.setAutoCommit(false);
    try (Statement s = c.createStatement()) {
      s.executeUpdate(script);
      c.commit();
    } catch (SQLException e) {
      c.rollback();
      throw e;
    }
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
