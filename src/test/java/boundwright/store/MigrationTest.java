package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.MeasuredRunUp;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import boundwright.readiness.JudgedReps;
import boundwright.store.engine.Schema;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteDataSource;

/** A store of an older program comes through with nothing lost. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
@SqliteFile("files of older programs, of which PostgreSQL has none")
class MigrationTest {
  private static final List<String> TABLES = List.of("athlete", "known_mark", "run_up", "rep", "learned", "setting", "drill");

  @TempDir Path dir;
  private Path file;
  private SQLiteDataSource source;

  @BeforeEach
  void anOldStore() throws SQLException {
    file = dir.resolve(Schema.FILE_NAME);
    source = new SQLiteDataSource();
    source.setUrl("jdbc:sqlite:" + file);
    Flyway.configure().dataSource(source).locations("classpath:db/migration").target("1").load().migrate();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      s.execute("INSERT INTO athlete VALUES (3, 'Ada Fenn', 'ada fenn', 'BEGINNER', 'L', 2), (5, 'Bo', 'bo', 'ADVANCED', 'R', 8)");
      s.execute("INSERT INTO known_mark VALUES (1, 3, 'STANDING_FIVE', 0, 9.87, '2026-03-01')");
      s.execute("INSERT INTO run_up VALUES (4, 5, 8, 13.4, 7.9, '2026-03-02')");
      s.execute(
          "INSERT INTO rep VALUES"
              + " (11, 3, '2026-03-03', 'RL x5', 2, 'GRASS', '2.1;;6.2', NULL, 'IN', 20.5, NULL),"
              + " (12, 3, '2026-03-03', 'RRL', 2, 'TRACK', NULL, 7.31, NULL, NULL, 'dangling-toe;forward-lean'),"
              + " (17, 5, '2026-03-04', 'RRL', 8, 'TRACK', NULL, NULL, 'SHORT', 9.9, 'Odd Name; low_knee'),"
              + " (18, 5, '2026-03-04', 'RRL', 8, 'TRACK', NULL, NULL, 'SHORT', 9.9, 'Clean')");
      s.execute("INSERT INTO learned VALUES (3, x'00', x'00')");
      s.execute("INSERT INTO setting VALUES ('marks.chance', 0.8, '1', NULL), ('facility.name', NULL, NULL, 'Back field')");
      s.execute("INSERT INTO drill VALUES (1, 'RRL x2', NULL, 1, 2, 1)");
    }
  }

  private List<String> rows(String table, String columns) throws SQLException {
    List<String> out = new ArrayList<>();
    try (Connection c = source.getConnection();
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("SELECT " + columns + " FROM " + table + " ORDER BY 1")) {
      while (r.next()) {
        StringBuilder row = new StringBuilder();
        for (int i = 1; i <= r.getMetaData().getColumnCount(); i++) {
          row.append(r.getString(i)).append('|');
        }
        out.add(row.toString());
      }
    }
    return out;
  }

  @Test
  void everyRowOfEveryTableIsThereAsItWas() throws SQLException {
    List<List<String>> before = new ArrayList<>();
    for (String t : TABLES) {
      before.add(rows(t, columns(t)));
    }
    Stores.open(dir, Fixtures.CLOCK).close();
    for (int i = 0; i < TABLES.size(); i++) {
      assertThat(rows(TABLES.get(i), columns(TABLES.get(i)))).as(TABLES.get(i)).isNotEmpty().isEqualTo(before.get(i));
    }
  }

  private static String columns(String table) {
    // Of a rep, what was seen wrong is looked at below: its spelling is evened out.
    return "rep".equals(table)
        ? "id, athlete_id, date, sequence, approach_steps, surface, footprints_m, landing_m, outcome, mark_to_sand_m"
        : "*";
  }

  @Test
  void aRepWithFaultsWasJudgedAndOneWithoutWasNot() {
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      Athlete ada = w.athletes().byName("Ada Fenn").orElseThrow();
      assertThat(w.reps().inOrder(ada.id())).extracting(Rep::judged).containsExactly(false, true);
      assertThat(w.reps().inOrder(ada.id()).get(1).faults()).containsExactly("dangling-toe", "forward-lean");
      assertThat(w.reps().inOrder(ada.id()).get(0).outcome()).isEqualTo(Outcome.IN);
      assertThat(w.reps().inOrder(5)).extracting(Rep::judged).containsExactly(true, true);
      assertThat(w.reps().inOrder(5)).extracting(Rep::faults).containsExactly(List.of("odd-name", "low-knee"), List.of());
      assertThat(JudgedReps.of(w.reps().inOrder(5).get(0)).keys()).containsExactlyInAnyOrder("odd-name", "low-knee");
      assertThat(w.athletes().profile(ada).knownMarks())
          .containsExactly(new KnownMark(1, KnownMark.Kind.STANDING_FIVE, 0, 9.87, LocalDate.of(2026, 3, 1)));
      assertThat(w.athletes().profile(w.athletes().byId(5).orElseThrow()).runUps())
          .containsExactly(new MeasuredRunUp(4, 8, 13.4, 7.9, LocalDate.of(2026, 3, 2)));
      assertThat(w.settings().settings().marks().chance()).isEqualTo(0.8);
      assertThat(w.settings().settings().facility().name()).isEqualTo("Back field");
      assertThat(w.settings().plan().drills()).hasSize(1);
    }
  }

  @Test
  void numbersThatWereGivenAreNotGivenAgain() throws SQLException {
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      s.execute("DELETE FROM rep WHERE id = 18");
    }
    try (Workbench w = Stores.open(dir, Fixtures.CLOCK)) {
      Rep next = w.reps().write(r -> r.add(Fixtures.tap(5, Fixtures.TODAY)));
      assertThat(next.id()).isGreaterThan(18);
    }
  }

  /** A migration that cannot be written leaves the old store, which the old program still reads. */
  @Test
  void aMigrationThatFailsHalfWayLeavesTheOldStore() throws Exception {
    try (Connection c = source.getConnection();
        Statement s = c.createStatement()) {
      // Stands in the way of the last table of the script.
      s.execute("CREATE VIEW test_score AS SELECT 1 AS one");
    }
    assertThatThrownBy(() -> Stores.open(dir, Fixtures.CLOCK)).isInstanceOf(RefusedException.class);
    assertThat(rows("rep", "*")).hasSize(4).allSatisfy(r -> assertThat(r.chars().filter(ch -> ch == '|').count()).isEqualTo(11));
  }
}
