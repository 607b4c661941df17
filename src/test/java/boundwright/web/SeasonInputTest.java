package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.demo.InventedFolder;
import boundwright.load.LegCare.MedicalHold;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.Period;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.Venue;
import boundwright.season.Wish;
import boundwright.season.mend.Happened;
import boundwright.store.Workbench;
import boundwright.store.season.SeasonFile;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season begun and changed on the pages alone. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class SeasonInputTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-09-27T09:00:00Z"), ZoneId.of("Europe/Berlin"));
  private static final Pattern FIELD = Pattern.compile("<(?:input|select)[^>]* name=\"([^\"]+)\"[^>]*>");

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private String csrf = "";

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private HttpResponse<String> post(String path, String... fields) {
    csrf = csrf.isEmpty() ? Client.hidden(client.get("/season/new").body(), "csrf") : csrf;
    List<String> all = new ArrayList<>(List.of("csrf", csrf));
    all.addAll(List.of(fields));
    return client.post(path, all.toArray(String[]::new));
  }

  private HttpResponse<String> begin() {
    return post("/season/new", "name", "Summer (invented)", "first", "2026-10-05", "last", "2027-03-28");
  }

  private SeasonInput input() {
    return bench.seasons().input(1).orElseThrow();
  }

  private HttpResponse<String> change(String piece, String at, String... fields) {
    List<String> all = new ArrayList<>(List.of("season", "1", "at", at, "edition", String.valueOf(bench.seasons().byId(1).orElseThrow().edition()), "action", "keep"));
    all.addAll(List.of(fields));
    return post("/season/input/" + piece, all.toArray(String[]::new));
  }

  private Member member(String name) {
    return input().squad().stream().filter(m -> m.name().equals(name)).findFirst().orElseThrow();
  }

  /** The form of a piece as a browser would send it, untouched. */
  private String[] untouched(String piece, String at) {
    String page = client.get("/season/input/" + piece + "?season=1&at=" + at).body();
    List<String> out = new ArrayList<>();
    Matcher m = FIELD.matcher(page.substring(page.indexOf("name=\"edition\"")));
    while (m.find()) {
      String tag = m.group();
      String name = m.group(1);
      if (List.of("csrf", "season", "at", "edition").contains(name)) {
        continue;
      }
      if (tag.startsWith("<select")) {
        String options = page.substring(page.indexOf(tag), page.indexOf("</select>", page.indexOf(tag)));
        Matcher chosen = Pattern.compile("value=\"([^\"]*)\" selected").matcher(options);
        Matcher first = Pattern.compile("value=\"([^\"]*)\"").matcher(options);
        out.addAll(List.of(name, chosen.find() ? chosen.group(1) : first.find() ? first.group(1) : ""));
      } else if (!tag.contains("checkbox")) {
        Matcher value = Pattern.compile(" value=\"([^\"]*)\"").matcher(tag);
        out.addAll(List.of(name, value.find() ? written(value.group(1)) : ""));
      } else if (tag.contains(" checked")) {
        out.addAll(List.of(name, "on"));
      }
    }
    return out.toArray(String[]::new);
  }

  private static String written(String html) {
    return html.replace("&#34;", "\"").replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
  }

  @Test
  void aSeasonBeginsWithWhatTheProgramKnows() {
    assertThat(client.get("/season").body()).contains("No season yet.", "href=\"/season/new\"").doesNotContain("guard");
    Athlete first = bench.athletes().all().get(0);
    bench.care().setGrowing(first.id(), true, LocalDate.of(2025, 3, 1));
    bench.care().openHold(first.id(), new MedicalHold(0, LocalDate.of(2026, 9, 20), "left shin", null, null));
    assertThat(begin().body()).contains("The season is begun with what the program knows.", "Look through it:", first.name());
    SeasonInput in = input();
    assertThat(in.squad()).extracting(Member::name).isEqualTo(bench.athletes().all().stream().map(Athlete::name).toList());
    for (Member m : in.squad()) {
      for (DrillFamily f : DrillFamily.values()) {
        assertThat(m.steps(f)).as(m.name()).isEqualTo(bench.ladderDesk().rung(m.athlete(), f));
      }
      assertThat(m.past().days()).as("the log's own days").isEqualTo(bench.workLog().since(List.of(m.athlete()), LocalDate.of(2026, 8, 9)).get(m.id()));
    }
    assertThat(member(first.name()).growing()).isTrue();
    assertThat(member(first.name()).firstSession()).isEqualTo("2025-03-01");
    assertThat(client.get("/season/input/athlete?season=1&at=" + first.id()).body()).contains("On medical hold since 20 Sep 2026").doesNotContain("shin");
    HttpResponse<String> again = begin();
    assertThat(again.statusCode()).isEqualTo(422);
    assertThat(again.body()).contains("begins on 2026-10-05 already", "value=\"Summer (invented)\"");
  }

  @Test
  void whatCannotBeginIsSaidBesideItsFieldAndNothingTypedIsLost() {
    HttpResponse<String> short_ = post("/season/new", "name", "Mine", "first", "2026-10-05", "last", "2026-10-01");
    assertThat(short_.statusCode()).isEqualTo(422);
    assertThat(short_.body()).contains("value=\"Mine\"", "value=\"2026-10-01\"", "has -3 days; it may have 7 to 400");
    assertThat(post("/season/new", "name", "", "first", "2026-10-05", "last", "2027-01-01").body()).contains("1 to 60 characters");
    assertThat(post("/season/new", "name", "Mine", "first", "soon", "last", "2027-01-01").body()).contains("value=\"soon\"", "is no date");
    assertThat(bench.seasons().all()).isEmpty();
  }

  @Test
  void allOfItIsEnteredOnThePagesAndTheFileSaysTheSame() {
    begin();
    Athlete a = bench.athletes().all().get(0);
    assertThat(change("days", "", "name", "Two peaks (invented)", "first", "2026-10-05", "last", "2027-06-27", "periods[1].from", "2027-01-11", "periods[1].part", "specific preparation",
            "periods[4].from", "2027-03-01", "periods[4].part", "competition").body()).contains("It is kept.");
    change("meet", "", "name", "Indoor (invented)", "date", "2027-02-20", "everybody", "usual");
    String key = input().meets().get(0).key();
    change("meet", key, "name", "Indoor (invented)", "date", "2027-02-27", "who." + a.id(), "main");
    change("place", "", "name", "Tidewater gym", "surface", "sprung floor", "athletesAtOnce", "8", "sand", "on", "hours.monday", "18:00-20:00", "closed[2].from", "2026-12-24", "closed[2].to", "2027-01-02",
        "closed[3].from", "2027-02-01");
    change("athlete", String.valueOf(a.id()), "level", "advanced", "takeOffFoot", "left", "approachStepsByFamily.alternate", "6", "approachStepsByFamily.single-leg", "2",
        "approachStepsByFamily.combination", "4", "fullRunUpSteps", "14", "on.monday", "on", "on.saturday", "on", "largestWeek_standingBounds", "420", "joins", "2026-11-02", "firstSession", "2025-01-01",
        "growing", "on", "away[1].from", "2026-12-01", "away[1].to", "2026-12-05", "away[1].why", "soft", "away[9].from", "2027-01-05", "away[9].why", "travel", "wishes[1].date", "2026-11-09",
        "wishes[1].wish", "no session", "wishes[2].date", "2026-11-16", "wishes[2].wish", "short jumps", "in." + key, "main");
    change("rules", "", "week.competition.share", "0,6", "week.competition.bounds", "2", "taper.days", "10", "lighterEvery_weeks", "0", "notice_days", "3",
        "unplanned.awayOrHeld_days", "12", "unplanned.grassClosed_share.july", "0,02");
    SeasonInput in = input();
    assertThat(in.name()).isEqualTo("Two peaks (invented)");
    assertThat(in.periods()).containsExactly(new Period(Period.Kind.SPECIFIC, LocalDate.of(2027, 1, 11)), new Period(Period.Kind.COMPETITION, LocalDate.of(2027, 3, 1)));
    assertThat(in.meets()).containsExactly(new Meet(key, "Indoor (invented)", LocalDate.of(2027, 2, 27)));
    Venue gym = in.venues().get(2);
    assertThat(gym.sand()).isTrue();
    assertThat(gym.hours()).containsExactly(Map.entry(DayOfWeek.MONDAY, new Venue.Hours(LocalTime.of(18, 0), LocalTime.of(20, 0))));
    assertThat(gym.closed()).containsExactly(new Span(LocalDate.of(2026, 12, 24), LocalDate.of(2027, 1, 2)), new Span(LocalDate.of(2027, 2, 1), LocalDate.of(2027, 2, 1)));
    Member m = in.squad().get(0);
    assertThat(m.days()).containsExactlyInAnyOrder(DayOfWeek.MONDAY, DayOfWeek.SATURDAY);
    assertThat(m.away())
        .containsExactly(
            new Away(new Span(LocalDate.of(2026, 12, 1), LocalDate.of(2026, 12, 5)), Away.Why.SOFT), new Away(new Span(LocalDate.of(2027, 1, 5), LocalDate.of(2027, 1, 5)), Away.Why.TRAVEL));
    assertThat(m.wishes()).hasSize(2).contains(new Wish(LocalDate.of(2026, 11, 9), null));
    assertThat(m.entries()).containsExactly(new Entry(key, Entry.Importance.MAIN));
    assertThat(m.steps(DrillFamily.SINGLE_LEG)).isEqualTo(2);
    assertThat(m.peakWeek()).isEqualTo(420);
    assertThat(in.squad().get(1).entries()).as("nobody else was chosen on the second page").isEmpty();
    assertThat(in.rules().week(Period.Kind.COMPETITION).share()).isEqualTo(0.6);
    assertThat(in.rules().taper().days()).isEqualTo(10);
    assertThat(in.rules().lighterEvery()).isZero();
    assertThat(in.rules().testEvery()).as("an empty field is as usual").isEqualTo(6);
    assertThat(in.rules().unplanned().awayDays()).isEqualTo(12);
    assertThat(in.rules().unplanned().grassClosed(Month.JULY)).isEqualTo(0.02);
    change("rules", "", untouched("rules", ""));
    assertThat(input()).as("what was said of days that nobody plans stays").isEqualTo(in);
    fileSaysTheSame(in);
  }

  private void fileSaysTheSame(SeasonInput in) {
    byte[] file = client.get("/season/file.json?season=1").body().getBytes(StandardCharsets.UTF_8);
    assertThat(SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id())).isEqualTo(in);
  }

  /** Forms that are sent as they are shown change nothing, whatever was entered before. Seeded. */
  @Test
  void aFormThatIsKeptUntouchedChangesNothing() {
    begin();
    long seed = 20261129;
    Random random = new Random(seed);
    for (int trial = 0; trial < 2; trial++) {
      String as = "seed " + seed + " trial " + trial;
      LocalDate day = LocalDate.of(2026, 10, 6).plusDays(random.nextInt(150));
      Member m = input().squad().get(random.nextInt(input().squad().size()));
      change("meet", "", "name", "Meet " + trial + " \"é<\"", "date", day.toString(), "everybody", random.nextBoolean() ? "main" : "usual");
      List<String> fields = new ArrayList<>(List.of(untouched("athlete", String.valueOf(m.id()))));
      fields.addAll(List.of("away[40].from", day.toString(), "away[40].why", random.nextBoolean() ? "away" : "held", "wishes[30].date", day.plusDays(1).toString(), "wishes[30].wish", "bounds"));
      assertThat(change("athlete", String.valueOf(m.id()), fields.toArray(String[]::new)).body()).as(as).contains("It is kept.");
      SeasonInput in = input();
      int edition = bench.seasons().byId(1).orElseThrow().edition();
      change("days", "", untouched("days", ""));
      change("rules", "", untouched("rules", ""));
      in.meets().forEach(x -> change("meet", x.key(), untouched("meet", x.key())));
      in.venues().forEach(v -> change("place", v.key(), untouched("place", v.key())));
      change("athlete", String.valueOf(m.id()), untouched("athlete", String.valueOf(m.id())));
      assertThat(input().equals(in)).as(as).isTrue();
      assertThat(bench.seasons().byId(1).orElseThrow().edition()).as(as).isEqualTo(edition);
      fileSaysTheSame(in);
    }
  }

  @Test
  void aWrongFieldIsToldBesideItInTheFilesOwnWords() {
    begin();
    SeasonInput before = input();
    String id = String.valueOf(before.squad().get(0).id());
    beside(change("place", "", "name", "Gym", "surface", "grass", "athletesAtOnce", "many", "hours.tuesday", "17:00-19:00"), "place-athletesAtOnce-error", "'many' is out of range: a whole number from 1 to 400.", "value=\"17:00-19:00\"");
    beside(change("place", "", "name", "Gym", "surface", "grass", "athletesAtOnce", "3", "hours.tuesday", "5 to 7"), "place-hours-tuesday-error", "'5 to 7' are no hours", "value=\"5 to 7\"");
    beside(change("place", "", "name", "Gym", "surface", "grass", "athletesAtOnce", "3", "closed[1].from", "2027-01-05", "closed[1].to", "2027-01-01"), "place-closed-1--error", "end before they begin", "value=\"2027-01-05\"");
    beside(change("meet", "", "name", "", "date", "2027-01-05"), "meet-name-error", "This is missing.", "value=\"2027-01-05\"");
    beside(change("meet", "", "name", "Late", "date", "2028-01-05"), "meet-date-error", "lies outside the season", "value=\"Late\"");
    beside(change("days", "", "name", "S", "first", "2026-10-05", "last", "2029-10-05"), "days-last-error", "it may have 7 to 400", "value=\"2029-10-05\"");
    List<String> fields = new ArrayList<>(List.of(untouched("athlete", id)));
    fields.removeAll(List.of("on.monday", "on.tuesday", "on.wednesday", "on.thursday", "on.friday", "on.saturday", "on.sunday", "on"));
    beside(change("athlete", id, fields.toArray(String[]::new)), "athlete-days-error", "no day of the week", "name=\"largestWeek_standingBounds\"");
    beside(change("rules", "", "taper.days", "2"), "rules-taper-days-error", "out of range: a whole number from 7 to 28", "value=\"2\"");
    beside(change("rules", "", "taper.leastCut", "0.9", "taper.cut", "0.2"), "rules-taper-error", "out of order", "value=\"0.9\"");
    assertThat(input()).isEqualTo(before);
    assertThat(client.get("/season/input/moon?season=1").statusCode()).isEqualTo(404);
    assertThat(client.get("/season/input/meet?season=1&at=moon").statusCode()).isEqualTo(404);
    assertThat(client.get("/season/input/athlete?season=1&at=").statusCode()).isEqualTo(404);
  }

  /** Names that no page has: a sentence, and nothing is changed. */
  @Test
  void fieldsThatDoNotFitTogetherAreRefusedInASentence() {
    begin();
    SeasonInput before = input();
    for (String[] fields : new String[][] {{".", "x"}, {"hours", "x", "hours.monday", "18:00-20:00"}, {"closed", "x", "closed[1].from", "2026-12-24"}}) {
      HttpResponse<String> answer = change("place", "", fields);
      assertThat(answer.statusCode()).as(fields[0]).isEqualTo(422);
      assertThat(answer.body()).as(fields[0]).contains("does not fit the others of this form");
    }
    assertThat(input()).isEqualTo(before);
  }

  private static void beside(HttpResponse<String> answer, String id, String sentence, String kept) {
    assertThat(answer.statusCode()).as(id).isEqualTo(422);
    String at = answer.body().substring(Math.max(0, answer.body().indexOf("id=\"" + id + "\"")));
    assertThat(at.substring(0, Math.min(at.length(), at.indexOf("</div>"))).replace("&#39;", "'")).as(id).contains(id, sentence);
    assertThat(answer.body()).contains(kept);
  }

  @Test
  void thePagesSpeakAsACoachDoes() {
    begin();
    change("meet", "", "name", "Indoor (invented)", "date", "2027-02-20", "everybody", "main");
    long id = input().squad().get(0).id();
    for (String page :
        new String[] {"/season", "/season/new", "/season/input?season=1", "/season/input/days?season=1&at=", "/season/input/meet?season=1&at=", "/season/input/place?season=1&at=pit",
          "/season/input/athlete?season=1&at=" + id, "/season/input/rules?season=1&at="}) {
      String said = client.get(page).body().replaceAll("<[^>]*>", " ");
      assertThat(said).as(page).doesNotContainPattern("(?i)\\b(guards?|windows?|rungs?|gates?|judged)\\b");
    }
  }

  @Test
  void aPieceIsTakenOutWithWhatHangsOnIt() {
    begin();
    change("meet", "", "name", "Gone (invented)", "date", "2027-02-20", "everybody", "main");
    String key = input().meets().get(0).key();
    assertThat(input().squad()).allMatch(m -> m.entries().size() == 1);
    assertThat(post("/season/input/meet", "season", "1", "at", key, "edition", "2", "action", "remove").body()).contains("It is taken out.");
    assertThat(input().meets()).isEmpty();
    assertThat(input().squad()).allMatch(m -> m.entries().isEmpty());
    String undo = post("/season/input/undo", "season", "1", "edition", "3").body();
    assertThat(undo).contains("The last change is taken back.", "Gone (invented)");
    assertThat(post("/season/input/undo", "season", "1", "edition", "3").statusCode()).as("a second tap").isEqualTo(422);
    long id = input().squad().get(0).id();
    post("/season/input/athlete", "season", "1", "at", String.valueOf(id), "edition", "4", "action", "remove");
    assertThat(input().squad()).noneMatch(m -> m.id() == id);
    assertThat(post("/season/input/add", "season", "1", "athlete", String.valueOf(id)).body()).contains("They are in the season.");
    assertThat(input().squad()).anyMatch(m -> m.id() == id);
    post("/season/input/place", "season", "1", "at", "grass", "edition", "6", "action", "remove");
    HttpResponse<String> last = post("/season/input/place", "season", "1", "at", "pit", "edition", "7", "action", "remove");
    assertThat(last.statusCode()).isEqualTo(422);
    assertThat(last.body()).contains("no place to train");
  }

  @Test
  void twoWhoChangeTheSamePieceAreTold() {
    begin();
    String[] mine = {"season", "1", "at", "", "edition", "1", "action", "keep", "notice_days", "5"};
    change("rules", "", "notice_days", "4");
    HttpResponse<String> late = post("/season/input/rules", mine);
    assertThat(late.statusCode()).isEqualTo(422);
    assertThat(late.body()).contains("changed meanwhile", "value=\"5\"");
    assertThat(input().rules().noticeDays()).isEqualTo(4);
    mine[5] = Client.hidden(late.body(), "edition");
    assertThat(post("/season/input/rules", mine).body()).contains("It is kept.");
    assertThat(input().rules().noticeDays()).isEqualTo(5);
    assertThat(post("/season/input/meet", "season", "1", "at", "", "edition", "1", "action", "keep", "name", "Other piece", "date", "2027-01-05").body()).contains("It is kept.");
  }

  @Test
  void aPublishedPlanIsOfTheSeasonBeforeAndIsMended() {
    begin();
    SeasonInput in = input();
    bench.seasons().publish(1, new SeasonPlan(in.name(), 0, in.squad().stream().map(m -> new SeasonPlan.Year(m.id(), m.name(), List.of(), List.of(), List.of())).toList()), DAY.instant());
    assertThat(client.get("/season").body()).doesNotContain("was made before the last change");
    change("rules", "", "notice_days", "4");
    assertThat(client.get("/season").body()).contains("Version 1 was made before the last change of the season.", "Mend the plan");
    String mended = post("/season/mend", "season", "1").body();
    assertThat(mended).contains("No day changes against version 1.");
    assertThat(post("/season/publish", "season", "1", "proposal", Client.hidden(mended, "proposal")).body()).contains("Version 2 is published.").doesNotContain("was made before the last change");
    assertThat(post("/season/mend", "season", "1").body()).contains("Nothing to mend was entered");
  }

  @Test
  void awayAndClosedAreTakenBackOnThePage() {
    begin();
    SeasonInput in = input();
    Away away = new Away(new Span(LocalDate.of(2026, 10, 12), LocalDate.of(2026, 10, 20)), Away.Why.AWAY);
    SeasonInput gone = in.withSquad(in.squad().stream().map(m -> m.id() == in.squad().get(0).id() ? m.withAway(away) : m).toList());
    bench.seasons().keep(1, Happened.closed(gone, "grass", LocalDate.of(2026, 10, 13)));
    bench.seasons().publish(1, new SeasonPlan(in.name(), 0, in.squad().stream().map(m -> new SeasonPlan.Year(m.id(), m.name(), List.of(), List.of(), List.of())).toList()), DAY.instant());
    String name = in.squad().get(0).name();
    assertThat(client.get("/season").body()).contains("Away and closed, as entered", name + ", away, Mon 12 Oct to Tue 20 Oct", "Grass, closed, Tue 13 Oct");
    String id = String.valueOf(in.squad().get(0).id());
    String[] back = {"season", "1", "athlete", id, "why", "AWAY", "place", "", "from", "2026-10-12", "to", "2026-10-20"};
    assertThat(post("/season/input/there", back).body()).contains("It is taken back.", "Mend the plan");
    assertThat(post("/season/input/there", back).statusCode()).as("a second tap").isEqualTo(422);
    post("/season/input/there", "season", "1", "athlete", "", "why", "", "place", "grass", "from", "2026-10-13", "to", "2026-10-13");
    assertThat(input()).isEqualTo(in);
    assertThat(client.get("/season").body()).doesNotContain("Away and closed, as entered");
  }
}
