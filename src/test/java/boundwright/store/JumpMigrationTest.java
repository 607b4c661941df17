package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.STRING;

import boundwright.approach.board.GapEntry;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Schema;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** A store of the second version, with a row in every table, comes through to the third with nothing lost. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("files of older programs, of which PostgreSQL has none")
class JumpMigrationTest {
  @TempDir Path dir;
  private SQLiteDataSource source;

  @BeforeEach
  void aStoreOfTheSecondVersion() throws SQLException {
    source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + dir.resolve(Schema.FILE_NAME));
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("2").load().migrate();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      rowsOfTheSecondVersion(s);
    }
  }

  /** A row in every table. */
  static void rowsOfTheSecondVersion(Statement s) throws SQLException {
    s.execute("INSERT INTO athlete VALUES (3, 'Ada Fenn', 'ada fenn', 'BEGINNER', 'L', 2)");
    s.execute("INSERT INTO known_mark VALUES (1, 3, 'STANDING_FIVE', 0, 9.87, '2026-03-01')");
    s.execute("INSERT INTO run_up VALUES (4, 3, 8, 13.4, 7.9, '2026-03-02')");
    s.execute(
        "INSERT INTO rep (id, athlete_id, date, sequence, approach_steps, surface, footprints_m, landing_m, outcome, mark_to_sand_m,"
            + " faults, judged) VALUES (11, 3, '2026-03-03', 'RL x5', 2, 'GRASS', '2.1;;6.2', NULL, 'IN', 20.5, 'dangling-toe', 1)");
    s.execute("INSERT INTO learned VALUES (3, x'00', x'00')");
    s.execute("INSERT INTO setting VALUES ('marks.chance', 0.8, '1', NULL)");
    s.execute("INSERT INTO drill VALUES (1, 'RRL x2', NULL, 1, 2, 1)");
    s.execute("INSERT INTO care VALUES (3, 1, '2026-01-05')");
    s.execute("INSERT INTO pain VALUES (2, 3, '2026-03-04', 'left shin', 2, NULL, 0)");
    s.execute("INSERT INTO medical_hold VALUES (5, 3, '2026-02-01', 'invented', NULL, NULL)");
    s.execute("INSERT INTO guard_override VALUES (6, 3, '2026-03-04', 'RAMP', 'CAUTION', 'said', 'a reason of words')");
    s.execute("INSERT INTO session_rating VALUES (3, '2026-03-04', 6, 50)");
    s.execute("INSERT INTO family_rung VALUES (3, 'ALTERNATE', 4)");
    s.execute("INSERT INTO rung_decision VALUES (7, 3, 'ALTERNATE', '2026-03-05', 2, 4, 'PASS', '')");
    s.execute("INSERT INTO own_fault VALUES ('late-arms', 'late arms', 'a', 'b', 'c', 'd')");
    s.execute("INSERT INTO second_look VALUES (11, 'bo', 'Bo', 'dangling-toe@2')");
    s.execute("INSERT INTO test_score VALUES (8, 3, 'STANDING_FIVE', 0, 9.9, 'm', NULL, '2026-03-06', 'TRACK', 'spikes', 'still', 3, '')");
  }

  private Map<String, List<String>> everything() throws SQLException {
    return everything(source);
  }

  /** All rows of all tables. */
  static Map<String, List<String>> everything(SQLiteDataSource source) throws SQLException {
    Map<String, List<String>> out = new LinkedHashMap<>();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      List<String> tables = new ArrayList<>();
      try (ResultSet r =
          s.executeQuery("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%' ORDER BY 1")) {
        while (r.next()) {
          tables.add(r.getString(1));
        }
      }
      for (String table : tables) {
        List<String> rows = new ArrayList<>();
        try (ResultSet r = s.executeQuery("SELECT * FROM " + table + " ORDER BY 1")) {
          while (r.next()) {
            StringBuilder row = new StringBuilder();
            for (int i = 1; i <= r.getMetaData().getColumnCount(); i++) {
              row.append(r.getString(i)).append('|');
            }
            rows.add(row.toString());
          }
        }
        out.put(table, rows);
      }
    }
    return out;
  }

  @Test
  void everyRowOfEveryTableIsThereAsItWas() throws SQLException {
    Map<String, List<String>> before = everything();
    assertThat(before).hasSize(17).allSatisfy((table, rows) -> assertThat(rows).as(table).hasSize(1));
    Stores.open(dir, Fixtures.CLOCK).close();
    Map<String, List<String>> after = everything();
    before.forEach(
        (table, rows) ->
            assertThat(after.get(table)).as(table + ": a newer script may add columns at the end").singleElement(STRING).startsWith(rows.get(0)));
    assertThat(after).hasSize(89);
  }

  @Test
  void anAthleteOfBeforeTakesTheNewEntries() {
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      GapEntry gap = w.boardLog().add(new GapEntry(0, 3, Fixtures.TODAY, 0.1, 0, null, ""));
      assertThat(w.boardLog().gaps(3)).containsExactly(gap);
      assertThat(w.reps().inOrder(3)).hasSize(1);
    }
  }

  /** A migration that cannot be written leaves the store of the second version, which the older program still reads. */
  @Test
  void aMigrationThatFailsHalfWayLeavesTheStore() throws SQLException {
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      // stands in the way of the last table of the script
      s.execute("CREATE VIEW meet_attempt AS SELECT 1 AS one");
    }
    Map<String, List<String>> before = everything();
    assertThatThrownBy(() -> Stores.open(dir, Fixtures.CLOCK)).isInstanceOf(RefusedException.class);
    assertThat(everything()).isEqualTo(before);
  }
}
