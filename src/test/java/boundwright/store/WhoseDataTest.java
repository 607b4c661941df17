package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.load.LegCare.Pain;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The database notes whose data changed; a table that is new is either watched or says here why nobody need know. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class WhoseDataTest {
  private static final String ACCOUNTS = "who may come in: asked anew for every page";
  private static final String FILMS = "what is on film: no kept answer rests on it";
  private static final String IMPORTS = "what came from which file";
  private static final String SEASON = "plans of a season have a cache of their own";
  private static final Map<String, String> NOT_WATCHED = new HashMap<>();

  static {
    List.of("account", "account_link", "account_session", "club", "membership", "noted", "passkey", "passkey_challenge", "phone", "phone_code", "wrong_try", "calendar_secret", "transfer_offer", "department_bond", "department_visit")
        .forEach(t -> NOT_WATCHED.put(t, ACCOUNTS));
    List.of("clip_correction", "clip_mark", "clip_points", "session_film", "session_rep", "job", "consent").forEach(t -> NOT_WATCHED.put(t, FILMS));
    List.of("import_file", "import_rep", "import_athlete", "import_meet", "import_entrant", "import_attempt", "import_group", "import_member", "import_filled", "import_columns")
        .forEach(t -> NOT_WATCHED.put(t, IMPORTS));
    List.of("season", "season_edition", "season_member", "season_member_before", "season_version", "season_year").forEach(t -> NOT_WATCHED.put(t, SEASON));
    List.of("squad_group", "group_member").forEach(t -> NOT_WATCHED.put(t, "read anew for every page"));
    List.of("athlete_token", "erasure", "taken", "written", "changed").forEach(t -> NOT_WATCHED.put(t, "says nothing of a body or a jump"));
    NOT_WATCHED.put("rung_decision", "family_rung says from where");
    NOT_WATCHED.put("second_look", "another observer's, on a page that is not kept");
    NOT_WATCHED.put("meet_beside", "counts when it is chosen, and then it is an attempt");
  }

  @TempDir Path dir;
  private Workbench w;

  @BeforeEach
  void open() {
    w = Stores.open(dir, Fixtures.CLOCK);
  }

  @AfterEach
  void close() {
    w.close();
  }

  @Test
  @SqliteFile("the triggers of the two are compared by SameSchemaTest")
  void everyTableIsWatchedOrSaysWhyNot() {
    List<String> tables = ask("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'flyway%'");
    Set<String> watched = new TreeSet<>();
    for (String table : tables) {
      List<String> own = ask("SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = '" + table + "'");
      if (own.containsAll(List.of(table + "_added", table + "_edited", table + "_removed"))) {
        watched.add(table);
      }
    }
    Set<String> neither = new TreeSet<>(tables);
    neither.removeAll(watched);
    assertThat(neither).isEqualTo(new TreeSet<>(NOT_WATCHED.keySet()));
  }

  private List<String> ask(String sql) {
    return w.database().read(h -> h.createQuery(sql).mapTo(String.class).list());
  }

  private Changes.Versions now() {
    return Objects.requireNonNull(w.changes().now());
  }

  @Test
  void whoseDataChangedIsSeenAndNobodyElses() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada Longshore"));
    Athlete bo = w.athletes().add(Fixtures.athlete("Bo Farfield"));
    Changes.Versions before = now();
    assertThat(now()).as("nothing was written").isSameAs(before);
    w.care().addPain(ada.id(), new Pain(0, Fixtures.TODAY, "left shin", 3, null, false));
    assertThat(now().of(ada.id())).isGreaterThan(before.of(ada.id()));
    assertThat(now().of(bo.id())).isEqualTo(before.of(bo.id()));
    before = now();
    CoachSettings s = w.settings().kept();
    w.settings().keep(new CoachSettings(LengthUnit.FEET_INCHES, s.marks(), s.facility(), s.setContacts()));
    assertThat(now().of(bo.id())).as("settings are everybody's").isGreaterThan(before.of(bo.id()));
  }

  @Test
  void whatIsUndoneWasNoChangeAndInsideAWriteNothingIsSaid() {
    Athlete ada = w.athletes().add(Fixtures.athlete("Ada Longshore"));
    Changes.Versions before = now();
    try {
      w.together(
          () -> {
            w.care().addPain(ada.id(), new Pain(0, Fixtures.TODAY, "left shin", 3, null, false));
            assertThat(w.changes().now()).isNull();
            throw new IllegalArgumentException("undone");
          });
    } catch (IllegalArgumentException e) {
      assertThat(now()).isSameAs(before);
    }
  }
}
