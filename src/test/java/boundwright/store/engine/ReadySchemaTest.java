package boundwright.store.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** A new file that the build's script made is the file that the migration tool would have made. */
@SuppressWarnings("NullAway.Init") // filled in before each test
class ReadySchemaTest {
  @TempDir Path folder;

  /** When the tool ran, and for how long, is the only difference that there may be. */
  private static List<String> timeless(String script) {
    return script.lines().map(l -> l.replaceAll("'\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:[0-9.]+', \\d+, 1\\)", "WHEN)")).toList();
  }

  private Path migrated() {
    Path file = folder.resolve("migrated.db");
    Schema.makeFile(file, Schema.NEWEST);
    return file;
  }

  private static Connection open(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  @Test
  void theBuildsScriptIsOfTheMigrationsThatAreThere() throws Exception {
    String ready = Objects.requireNonNull(ReadySchema.script(), "the build wrote no ready.sql: run mvn process-classes");
    assertThat(timeless(ready)).isEqualTo(timeless(ReadySchema.script(migrated())));
  }

  @Test
  void aFileMadeByTheScriptHasTheSameObjectsAndRowsAndTheToolFindsNothingToDo() throws Exception {
    String script = ReadySchema.script(migrated());
    Path file = folder.resolve("ready.db");
    try (Connection c = open(file)) {
      ReadySchema.into(c, script);
    }
    assertThat(ReadySchema.script(file)).isEqualTo(script).contains("CREATE TRIGGER", "INSERT INTO \"club\"");
    SQLiteDataSource source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file);
    var tool = Schema.flyway(source);
    tool.validate();
    assertThat(tool.migrate().migrationsExecuted).isZero();
  }

  @Test
  void aScriptThatFailsLeavesTheFileEmpty() throws Exception {
    String script = ReadySchema.script(migrated()) + "CREATE TABLE club (id INTEGER);\n";
    Path file = folder.resolve("ready.db");
    try (Connection c = open(file)) {
      assertThatThrownBy(() -> ReadySchema.into(c, script)).isInstanceOf(SQLException.class);
    }
    assertThat(ReadySchema.script(file)).isEqualTo(";\n");
  }
}
