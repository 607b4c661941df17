package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import boundwright.quantity.RefusedException;
import boundwright.store.engine.Schema;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** A store of the third version, with a row in every table, comes through to the fourth with nothing lost. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("files of older programs, of which PostgreSQL has none")
class ClipMigrationTest {
  @TempDir Path dir;
  private SQLiteDataSource source;

  @BeforeEach
  void aStoreOfTheThirdVersion() throws SQLException {
    source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + dir.resolve(Schema.FILE_NAME));
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("3").load().migrate();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      JumpMigrationTest.rowsOfTheSecondVersion(s);
      s.execute("INSERT INTO measured_jump VALUES (9, 3, '2026-03-07', NULL, 4.1, 3.2, 3.9, NULL, 'TOE', '')");
      s.execute("INSERT INTO jump_contact VALUES (9, 1, 8.9, 8.6, -0.4, 2.1, 1.1, 0.9, 0.4)");
      s.execute("INSERT INTO run_through VALUES (10, 3, '2026-03-08', 12, 25.3, '3.1;;0.04', 0.4, NULL, '')");
      s.execute("INSERT INTO board_gap VALUES (12, 3, '2026-03-09', 0.07, 0, NULL, '')");
      s.execute("INSERT INTO meet VALUES (13, 'Invented Meet', '2026-03-10', 'club', 9, NULL, 3, 6, 8, 'REVERSED', 'BOARD', 60)");
      s.execute("INSERT INTO meet_entrant VALUES (14, 13, 3, NULL)");
      s.execute("INSERT INTO meet_attempt VALUES (15, 14, 1, 'VALID', 11.23, NULL, NULL, 0, '')");
    }
  }

  @Test
  void everyRowOfEveryTableIsThereAsItWas() throws SQLException {
    Map<String, List<String>> before = JumpMigrationTest.everything(source);
    assertThat(before).hasSize(24).allSatisfy((table, rows) -> assertThat(rows).as(table).hasSize(1));
    Stores.open(dir, Fixtures.CLOCK).close();
    Map<String, List<String>> after = JumpMigrationTest.everything(source);
    before.forEach(
        (table, rows) ->
            assertThat(after.get(table)).as(table + ": a newer script may add columns at the end").singleElement(STRING).startsWith(rows.get(0)));
    assertThat(after).hasSize(89);
  }

  @Test
  void anAthleteAndARepOfBeforeTakeAClip() {
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      SqlClips clips = new SqlClips(w.database());
      long id = clips.add(SqlClipsTest.plain(3)).id();
      clips.logged(id, 11);
      assertThat(clips.find(id).orElseThrow().repId()).isEqualTo(11);
      assertThat(clips.keepFilms()).isTrue();
    }
  }

  /** A migration that cannot be written leaves the store of the third version, which the older program still reads. */
  @Test
  void aMigrationThatFailsHalfWayLeavesTheStore() throws SQLException {
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      // stands in the way of the last table of the script
      s.execute("CREATE VIEW job AS SELECT 1 AS one");
    }
    Map<String, List<String>> before = JumpMigrationTest.everything(source);
    assertThatThrownBy(() -> Stores.open(dir, Fixtures.CLOCK)).isInstanceOf(RefusedException.class);
    assertThat(JumpMigrationTest.everything(source)).isEqualTo(before);
  }
}
