package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.meet.BoardDistance;
import boundwright.meet.Entrant;
import boundwright.meet.MeetRules;
import boundwright.meet.MeetSheet;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two coaches with the same form open, and forms that are sent twice with a restart between. */
@SuppressWarnings("NullAway.Init") // filled in before each test
class TwoCoachesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final Pattern FIELD =
      Pattern.compile("<input (?!type=\"(?:radio|checkbox)\")[^>]*?name=\"([^\"]*)\"[^>]*?value=\"([^\"]*)\"|<select[^>]*name=\"([^\"]*)\"[^>]*>(.*?)</select>", Pattern.DOTALL);
  private static final Pattern CHOSEN = Pattern.compile("<option value=\"([^\"]*)\" selected");

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client first;
  private Client second;
  private Athlete ilka;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    first = new Client(server.port());
    second = new Client(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.BEGINNER, Foot.RIGHT, 2));
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  /** The fields of the form that goes to {@code path} as a browser would send them. */
  private static Map<String, String> form(String page, String path) {
    int from = page.indexOf("action=\"" + path + "\"");
    assertThat(from).as("a form to " + path).isPositive();
    Map<String, String> out = new TreeMap<>();
    for (Matcher m = FIELD.matcher(page.substring(from, page.indexOf("</form>", from))); m.find(); ) {
      if (m.group(1) != null) {
        out.put(m.group(1), m.group(2).replace("&amp;", "&").replace("&#34;", "\"").replace("&#39;", "'"));
      } else {
        Matcher c = CHOSEN.matcher(m.group(4));
        out.put(m.group(3), c.find() ? c.group(1) : "");
      }
    }
    return out;
  }

  private static HttpResponse<String> send(Client coach, String path, Map<String, String> form, String... changed) {
    Map<String, String> all = new TreeMap<>(form);
    for (int i = 0; i < changed.length; i += 2) {
      all.put(changed[i], changed[i + 1]);
    }
    List<String> fields = new ArrayList<>();
    all.forEach((name, value) -> fields.addAll(List.of(name, value)));
    return coach.post(path, fields.toArray(new String[0]));
  }

  private Athlete now() {
    return bench.athletes().byId(ilka.id()).orElseThrow();
  }

  @Test
  void fieldsThatOnlyOneCoachChangedAreBothKeptAndTheSecondIsTold() {
    String path = "/athlete/" + ilka.id() + "/edit";
    Map<String, String> a = form(first.get(path).body(), path);
    Map<String, String> b = form(second.get(path).body(), path);
    assertThat(send(first, path, a, "rung", "6").statusCode()).isEqualTo(200);
    HttpResponse<String> answer = send(second, path, b, "level", "ADVANCED");
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(now().rung()).as("the first coach's steps").isEqualTo(6);
    assertThat(now().level()).as("the second coach's level").isEqualTo(Level.ADVANCED);
    assertThat(answer.body()).contains("Changed meanwhile by somebody else, and it stands: 6 approach steps.");
  }

  @Test
  void aFieldThatBothChangedIsAskedWithBothValuesAndNothingIsOverwritten() {
    String path = "/athlete/" + ilka.id() + "/edit";
    Map<String, String> a = form(first.get(path).body(), path);
    Map<String, String> b = form(second.get(path).body(), path);
    send(first, path, a, "level", "ADVANCED", "rung", "6");
    HttpResponse<String> asked = send(second, path, b, "level", "INTERMEDIATE");
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("Kept meanwhile by somebody else: level " + Level.ADVANCED.label() + ". You wrote: level " + Level.INTERMEDIATE.label() + ".");
    assertThat(now().level()).isEqualTo(Level.ADVANCED);
    // saved again with both before them, the second coach's word holds, and the first one's steps stay
    Map<String, String> again = form(asked.body(), path);
    assertThat(again).containsEntry("level", "INTERMEDIATE").containsEntry("rung", "6");
    assertThat(send(second, path, again).statusCode()).isEqualTo(200);
    assertThat(now().level()).isEqualTo(Level.INTERMEDIATE);
    assertThat(now().rung()).isEqualTo(6);
  }

  @Test
  void theSameChangeByBothIsNoQuestion() {
    String path = "/athlete/" + ilka.id() + "/edit";
    Map<String, String> a = form(first.get(path).body(), path);
    Map<String, String> b = form(second.get(path).body(), path);
    send(first, path, a, "rung", "6");
    assertThat(send(second, path, b, "rung", "6").statusCode()).isEqualTo(200);
  }

  @Test
  void settingsOfTwoCoachesMergeAlsoWhenOneChangedTheUnit() {
    Map<String, String> a = form(first.get("/settings").body(), "/settings");
    Map<String, String> b = form(second.get("/settings").body(), "/settings");
    assertThat(send(first, "/settings", a, "unit", "FEET_INCHES", "runway", "45 m").statusCode()).isEqualTo(200);
    assertThat(send(second, "/settings", b, "setContacts", "12").body()).contains("with what somebody else changed meanwhile");
    assertThat(bench.settings().settings().setContacts()).isEqualTo(12);
    assertThat(bench.settings().settings().unit().name()).startsWith("FEET");
    assertThat(bench.settings().settings().facility().runway_m()).isEqualTo(45);
    Map<String, String> c = form(first.get("/settings").body(), "/settings");
    Map<String, String> d = form(second.get("/settings").body(), "/settings");
    send(first, "/settings", c, "place", "North field");
    HttpResponse<String> asked = send(second, "/settings", d, "place", "South field");
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("North field").contains("South field");
    assertThat(bench.settings().settings().facility().name()).isEqualTo("North field");
    assertThat(send(second, "/settings", form(asked.body(), "/settings")).statusCode()).isEqualTo(200);
    assertThat(bench.settings().settings().facility().name()).isEqualTo("South field");
  }

  @Test
  void aMeetOfTwoCoachesMerges() {
    MeetSheet meet = bench.meets().add(meet());
    String path = "/meet/" + meet.id() + "/edit";
    Map<String, String> a = form(first.get(path).body(), path);
    Map<String, String> b = form(second.get(path).body(), path);
    send(first, path, a, "name", "County meet", "seconds", "45");
    HttpResponse<String> asked = send(second, path, b, "name", "Club meet", "first", "2");
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("name County meet").contains("name Club meet");
    assertThat(bench.meets().byId(meet.id()).orElseThrow().name()).isEqualTo("County meet");
    assertThat(send(second, path, form(asked.body(), path)).statusCode()).isEqualTo(200);
    MeetSheet kept = bench.meets().byId(meet.id()).orElseThrow();
    assertThat(kept.name()).isEqualTo("Club meet");
    assertThat(kept.rules().firstRounds()).isEqualTo(2);
    assertThat(kept.rules().trialSeconds()).as("what only the first coach changed").isEqualTo(45);
  }

  private static MeetSheet meet() {
    return MeetSheet.of("Invented meet", LocalDate.of(2026, 5, 12), BoardDistance.ALL.get(0), null, MeetRules.DEFAULT);
  }

  @Test
  void limitsOfTwoCoachesMergeAndWhatBothChangedIsAskedBesideTheField() {
    for (List<String> f : List.of(List.of("guard", "hardContacts", "hardSteps", "spacing-refuse"), List.of("gate", "reps", "sessions", "stayDaysLong"))) {
      String path = "/settings/" + f.get(0);
      Map<String, String> a = form(first.get("/settings/guard").body(), path);
      Map<String, String> b = form(second.get("/settings/guard").body(), path);
      String mine = String.valueOf(Integer.parseInt(Objects.requireNonNull(a.get(f.get(1)))) + 1);
      String both = f.get(3);
      String theirs = String.valueOf(Integer.parseInt(a.get(both)) + 1);
      String other = String.valueOf(Integer.parseInt(a.get(both)) + 2);
      String alone = String.valueOf(Integer.parseInt(Objects.requireNonNull(a.get(f.get(2)))) + 1);
      assertThat(send(first, path, a, f.get(1), mine, both, theirs).statusCode()).isEqualTo(200);
      HttpResponse<String> asked = send(second, path, b, f.get(2), alone, both, other);
      assertThat(asked.statusCode()).as(path).isEqualTo(422);
      assertThat(asked.body()).contains("Kept meanwhile by somebody else: " + theirs + ". You wrote: " + other + ".").contains("<details open>");
      Map<String, String> stands = form(second.get("/settings/guard").body(), path);
      assertThat(stands).containsEntry(f.get(1), mine).containsEntry(both, theirs).containsEntry(f.get(2), Objects.requireNonNull(a.get(f.get(2))));
      // saved again with both before them; what only the first coach changed stays
      Map<String, String> again = form(asked.body(), path);
      assertThat(again).containsEntry(f.get(1), mine).containsEntry(both, other).containsEntry(f.get(2), alone);
      assertThat(send(second, path, again).statusCode()).as(path).isEqualTo(200);
      stands = form(second.get("/settings/guard").body(), path);
      assertThat(stands).containsEntry(f.get(1), mine).containsEntry(both, other).containsEntry(f.get(2), alone);
      Map<String, String> c = form(first.get("/settings/guard").body(), path);
      Map<String, String> d = form(second.get("/settings/guard").body(), path);
      send(first, path, c, f.get(1), Objects.requireNonNull(a.get(f.get(1))));
      assertThat(send(second, path, d, f.get(2), Objects.requireNonNull(a.get(f.get(2)))).body()).as(path).contains("with what somebody else changed meanwhile");
    }
  }

  @Test
  void anAthleteATestAndARunUpSentAgainAfterARestartAreNotThereTwice() {
    String athlete = "/athlete/" + ilka.id();
    List<List<String>> forms =
        List.of(
            List.of("/athlete/new", "/athlete/new", "name", "Bo Longstride", "level", "BEGINNER", "foot", "LEFT", "rung", "2"),
            List.of(athlete + "/edit", athlete + "/test", "kind", "STANDING_TRIPLE", "distance", "6.80", "steps", "", "date", "2026-05-01"),
            List.of(athlete + "/edit", athlete + "/runup", "steps", "4", "length", "6.10", "speed", "", "date", ""));
    List<Map<String, String>> sent = new ArrayList<>();
    for (List<String> f : forms) {
      Map<String, String> fields = new TreeMap<>(form(first.get(f.get(0)).body(), f.get(1)));
      for (int i = 2; i < f.size(); i += 2) {
        fields.put(f.get(i), f.get(i + 1));
      }
      sent.add(fields);
      assertThat(send(first, f.get(1), fields).statusCode()).as(f.get(1)).isEqualTo(200);
    }
    Athlete bo = bench.athletes().byName("Bo Longstride").orElseThrow();
    // changed since, so that the name alone would not keep the second away
    bench.athletes().update(new Athlete(bo.id(), "Bo Farstride", bo.level(), bo.takeOffFoot(), bo.rung()));
    int port = server.port();
    server.close();
    bench.close();
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", port);
    for (int i = 0; i < forms.size(); i++) {
      send(first, forms.get(i).get(1), sent.get(i));
    }
    assertThat(bench.athletes().all()).hasSize(2);
    assertThat(bench.athletes().profile(ilka).knownMarks()).hasSize(1);
    assertThat(bench.athletes().profile(ilka).runUps()).hasSize(1);
    assertThat(bench.taken(Objects.requireNonNull(sent.get(0).get("token")))).as("the one token stands for").contains(bo.id());
  }

  /** Every kind of entry that would hurt when doubled is sent, the program is started anew, and the very same form comes again. */
  @Test
  void aFormSentAgainAfterARestartIsNotTakenTwice() {
    String athlete = "/athlete/" + ilka.id();
    MeetSheet meet = bench.meets().add(meet());
    long entrant = bench.meets().enter(meet.id(), new Entrant(0, ilka.id(), ilka.name())).id();
    List<List<String>> forms =
        List.of(
            List.of(athlete + "/load", athlete + "/work", "kind", "SPRINT", "amount", "60", "grade", "10"),
            List.of(athlete + "/care", athlete + "/pain", "area", "left knee", "level", "3", "settled", ""),
            List.of(athlete + "/jump", athlete + "/jump", "hop", "5.10", "step", "3.90", "jump", "4.90", "from", "BOARD"),
            List.of(athlete + "/run-up", athlete + "/run-up", "steps", "12", "start", "20", "gap", "5"),
            List.of(athlete + "/aim", athlete + "/aim", "tap", "5"),
            List.of("/meet/" + meet.id(), "/meet/" + meet.id() + "/attempt", "entrant", "" + entrant, "round", "1", "result", "FOUL"));
    List<Map<String, String>> sent = new ArrayList<>();
    for (List<String> f : forms) {
      String page = first.get(f.get(0)).body();
      Map<String, String> fields = new TreeMap<>(Map.of("csrf", Client.hidden(page, "csrf"), "token", Client.hidden(page, "token")));
      for (int i = 2; i < f.size(); i += 2) {
        fields.put(f.get(i), f.get(i + 1));
      }
      sent.add(fields);
      send(first, f.get(1), fields);
    }
    // mended since: the form that comes late must not win
    send(first, "/meet/" + meet.id() + "/attempt", Map.of("csrf", sent.get(5).get("csrf"), "token", "0".repeat(31) + "7", "entrant", "" + entrant, "round", "1", "result", "PASS"));
    List<Long> before = counts();
    assertThat(before.stream().filter(n -> n > 0).count()).as("entries that were kept: " + before).isEqualTo(6);
    int port = server.port();
    server.close();
    bench.close();
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", port);
    for (int i = 0; i < forms.size(); i++) {
      send(first, forms.get(i).get(1), sent.get(i));
    }
    assertThat(counts()).isEqualTo(before);
    assertThat(bench.meets().byId(meet.id()).orElseThrow().attempts().get(0).attempt().result().name()).isEqualTo("PASS");
  }

  private List<Long> counts() {
    List<Long> out = new ArrayList<>();
    for (String table : List.of("other_work", "pain", "measured_jump", "long_jump", "run_through", "board_gap", "meet_attempt")) {
      try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("boundwright.db"));
          Statement s = c.createStatement();
          ResultSet r = s.executeQuery("SELECT count(*) FROM " + table)) {
        out.add(r.getLong(1));
      } catch (SQLException e) {
        throw new AssertionError(table, e);
      }
    }
    return out;
  }
}
