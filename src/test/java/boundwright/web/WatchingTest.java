package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.evidence.JumpSources;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding.Rule;
import boundwright.load.GuardOverride;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LoadSources;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.LastWeek;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.technique.Teaching;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The second half of the coach's day over HTTP: guard, care, ladder, technique, tests, limits. Expected figures are own output. */
class WatchingTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private Client client;
  private Athlete ilka;
  private String page;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
    bench.settings().keep(new DayPlan("Bounding", List.of(new Drill(Sequence.parse("RRL x2"), null, 2, 3, true))));
    page = "/athlete/" + ilka.id();
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  @Test
  void theCoachChoosesHowTheFootLandsByApproach() {
    assertThat(client.get("/settings").body()).contains("Whole foot, ankle set, from so many approach steps");
    assertThat(client.post("/settings/teaching", "csrf", csrf(), "wholeFootFrom", "fast").statusCode()).isEqualTo(422);
    assertThat(client.post("/settings/teaching", "csrf", csrf(), "wholeFootFrom", "40").body()).contains("40").contains("out of range");
    assertThat(bench.looks().teaching()).isEqualTo(Teaching.DEFAULT);
    client.post("/settings/teaching", "csrf", csrf(), "wholeFootFrom", "8");
    assertThat(bench.looks().teaching()).isEqualTo(new Teaching(8));
    assertThat(client.get(page + "?sequence=RRL&steps=6").body()).contains("stabs with the toe");
    assertThat(client.get(page + "?sequence=RRL&steps=8").body()).contains("not the whole foot").doesNotContain("stabs with the toe");
  }

  @Test
  void everyNewPageAnswersWithAndWithoutReps() {
    List<String> paths =
        List.of(
            "/watch", page + "/care", page + "/ready", page + "/load", page + "/technique", page + "/second", page + "/tests", "/settings/guard");
    for (String path : paths) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).as(path).isEqualTo(200);
      assertThat(r.body()).as(path).doesNotContain(" style=\"").doesNotContain("<style").doesNotContain("onclick");
    }
    log(TODAY, true, "toe-up@3");
    log(TODAY.minusDays(3), true);
    log(TODAY.minusDays(3), false);
    for (String path : paths) {
      assertThat(client.get(path).statusCode()).as(path).isEqualTo(200);
    }
    HttpResponse<String> pdf = client.get(page + "/report.pdf");
    assertThat(pdf.headers().firstValue("Content-Type")).contains("application/pdf");
    assertThat(pdf.body()).startsWith("%PDF");
    assertThat(client.get("/athlete/999/care").statusCode()).isEqualTo(404);
  }

  @Test
  void aTapIsNotLookedAtUntilTheCoachSaysSo() {
    assertThat(client.get(page).body()).containsPattern("name=\"judged\" value=\"no\" checked").doesNotContainPattern("name=\"judged\" value=\"yes\" checked");
    tap();
    assertThat(newest().judged()).as("nothing is sent: nobody looked").isFalse();
    tap("judged", "no");
    assertThat(newest().judged()).isFalse();
    tap("judged", "yes");
    assertThat(newest().judged()).isTrue();
    assertThat(newest().faults()).isEmpty();
    assertThat(client.get(page).body()).as("clean is never chosen beforehand, not even after a clean one").containsPattern("name=\"judged\" value=\"no\" checked");
    tap("judged", "no", "fault", "knee-up");
    assertThat(newest().judged()).as("who ticks a fault did look").isTrue();
    assertThat(newest().faults()).containsExactly("knee-up");
    tap("judged", "yes", "fault", "toe-up", "fault", "toe-up@3", "fault", "toe-up@5", "fault", "knee-up");
    assertThat(newest().faults()).containsExactlyInAnyOrder("toe-up@3", "toe-up@5", "knee-up");
    String said = tap("judged", "yes", "fault", "knee-up@2").body();
    assertThat(newest().faults()).as("a contact whose fault was taken off again does not count").isEmpty();
    assertThat(said).doesNotContain("Before the next rep");
  }

  @Test
  void aTickedFaultSaysWhatToSayAndWhereToLook() {
    String body = tap("judged", "yes", "fault", "toe-up", "fault", "toe-up@4").body();
    assertThat(body).contains("Say: Toe up, ankle like a board.").contains("Before the next rep");
    assertThat(body).contains("look one contact earlier, at contact 3 (left)").contains("Ankle hops with the toe held up");
    assertThat(body).contains("toe dangles at 4");
  }

  @Test
  void aFaultOnAContactThatIsNotThereIsRefused() {
    assertThat(tap("judged", "yes", "fault", "toe-up", "fault", "toe-up@9").body()).contains("has 6 contacts");
    assertThat(bench.reps().inOrder(ilka.id())).isEmpty();
  }

  @Test
  void theGuardCountsWhatIsDoneAndWhatIsPlannedAndIsAskedAfterEveryRep() {
    String before = client.get(page).body();
    assertThat(before).contains("So far allowed (0 contacts), with the plan caution (36)");
    assertThat(tap().body()).as("a planned rep that was done is not counted twice").contains("So far caution (6 contacts), with the plan caution (36)");
    String concrete = client.get(page + "?sequence=RRL&steps=4&surface=CONCRETE&sand=no").body();
    assertThat(concrete).contains("guard refused").contains("This drill is not in the plan. On concrete: never.");
    assertThat(concrete.indexOf("On concrete: never.")).as("the refusal stands before the marks").isLessThan(concrete.indexOf("id=\"mark-label\""));
  }

  @Test
  void aRefusalNamesLimitValueSourceAndWayOutAndLoggingGoesOn() {
    bench.settings().keep(new DayPlan("Much", List.of(new Drill(Sequence.parse("RRL x2"), null, 10, 3, true))));
    String body = client.get(page).body();
    assertThat(body).contains("180 contacts in the session").contains("refused above 120").contains("Take out a set.");
    assertThat(body).contains("180 contacts, limit 120").contains("Potach and Chu, NSCA Essentials, 4th ed. 2016 (second-hand");
    assertThat(tap().statusCode()).isEqualTo(200);
    assertThat(bench.reps().inOrder(ilka.id())).hasSize(1);
  }

  @Test
  void aCoachGoesOnWithATypedReasonThatIsKeptForGood() {
    bench.settings().keep(new DayPlan("Much", List.of(new Drill(Sequence.parse("RRL x2"), null, 10, 3, true))));
    String body = client.get(page).body();
    HttpResponse<String> bare = client.post(page + "/override", override(body, Rule.SESSION_CONTACTS, "ok"));
    assertThat(bare.statusCode()).isEqualTo(422);
    assertThat(bare.body()).contains("A reason has 8 to 300 characters; this one has 2").contains("value=\"ok\"");
    assertThat(bench.care().overrides(ilka.id(), 9)).isEmpty();
    String[] twice = override(body, Rule.SESSION_CONTACTS, "Last session before a week of rest");
    client.post(page + "/override", twice);
    String after = client.post(page + "/override", twice).body();
    List<GuardOverride> kept = bench.care().overrides(ilka.id(), 9);
    assertThat(kept).as("a double tap is one decision").hasSize(1);
    assertThat(kept.get(0).answer()).isEqualTo(Answer.REFUSED);
    assertThat(kept.get(0).date()).isEqualTo(TODAY);
    assertThat(after).contains("You go on all the same: Last session before a week of rest");
    assertThat(client.get(page + "/care").body()).contains("Last session before a week of rest").contains("Kept for good");
    assertThat(client.post(page + "/override", override(body, Rule.PAIN, "There is no pain at all")).body()).contains("no concern about pain");
  }

  @Test
  void aMedicalHoldIsNotLiftedByACoach() {
    String csrf = csrf();
    HttpResponse<String> opened = client.post(page + "/hold", once("note", "Set by the club's medical staff"));
    assertThat(opened.body()).contains("The medical hold is open").contains("On medical hold since");
    String body = client.get(page).body();
    assertThat(body).contains("guard refused").contains("On medical hold since").doesNotContain("Keep this reason and go on");
    assertThat(client.get(page + "/care").body()).doesNotContain("lift it</button>").contains("A coach cannot lift it");
    for (Rule rule : List.of(Rule.MEDICAL_HOLD, Rule.SURFACE)) {
      HttpResponse<String> r = client.post(page + "/override", override(body, rule, "The athlete feels fine today"));
      assertThat(r.statusCode()).as(rule.name()).isEqualTo(422);
      assertThat(r.body()).contains("named clinician");
    }
    assertThat(bench.care().overrides(ilka.id(), 9)).isEmpty();
    MedicalHold hold = bench.care().care(ilka.id(), TODAY).holds().get(0);
    String end = page + "/hold/" + hold.id() + "/end";
    assertThat(client.post(end, once("clearedBy", "", "clearedOn", "2026-05-12")).statusCode()).isEqualTo(422);
    assertThat(client.post(end, once("clearedBy", "Dr Sedge (invented)", "clearedOn", "")).statusCode()).isEqualTo(422);
    assertThat(bench.care().care(ilka.id(), TODAY).holds().get(0).clearedOn()).as("the hold stands").isNull();
    assertThat(client.get("/watch").body()).contains("should rest").contains("No bounding.");
    assertThat(client.post(end, once("clearedBy", "Dr Sedge (invented)", "clearedOn", "2026-05-12")).body())
        .contains("is ended, with name and date")
        .contains("ended by Dr Sedge (invented)");
    assertThat(client.get(page).body()).doesNotContain("guard refused");
    assertThat(csrf).isNotEmpty();
  }

  @Test
  void aSignToReferOpensAHoldAndPainIsSettledNextMorning() {
    assertThat(client.post(page + "/pain", once("level", "12", "area", "left shin")).body()).contains("12 is out of range: 0 (none) to 10");
    assertThat(client.post(page + "/pain", once("level", "", "area", "left shin")).statusCode()).isEqualTo(422);
    client.post(page + "/pain", once("level", "4", "area", "left shin", "date", "2026-05-11", "settled", "unknown"));
    String care = client.get(page + "/care").body();
    assertThat(care).contains("Ask this morning").contains("4 of 10, left shin");
    long id = bench.care().care(ilka.id(), TODAY).pains().get(0).id();
    client.post(page + "/pain/" + id + "/settled", once("settled", "no"));
    assertThat(bench.care().care(ilka.id(), TODAY).pains().get(0).settled()).isFalse();
    assertThat(client.get(page).body()).contains("not settled next morning").contains("refer to licensed medical staff");
    String stop = client.post(page + "/pain", once("level", "3", "area", "right foot", "sign", "1")).body();
    assertThat(stop).contains("Stop and refer to licensed medical staff").contains("On medical hold since");
    assertThat(bench.care().care(ilka.id(), TODAY).holds()).hasSize(1);
    assertThat(care).contains("a number and a body area, never a diagnosis");
  }

  @Test
  void growingAndRatingsAreKept() {
    client.post(page + "/growing", once("growing", "yes", "first", "2026-05-01"));
    assertThat(bench.care().care(ilka.id(), TODAY).growing()).isTrue();
    assertThat(client.get(page).body()).contains("for a growing athlete in week 2 of bounding");
    assertThat(client.post(page + "/rating", once("rating", "7", "minutes", "900")).statusCode()).isEqualTo(422);
    client.post(page + "/rating", once("rating", "7", "minutes", "60"));
    assertThat(bench.care().ratings(ilka.id(), TODAY).get(0).load()).isEqualTo(420);
    assertThat(client.get(page + "/load").body()).contains("<b>420</b>").contains("A description, never a limit");
  }

  @Test
  void theLadderShowsAllEvidenceAndADecisionAgainstItNeedsAReason() {
    String body = client.get(page + "/ready").body();
    for (String name : List.of("looked at", "clean reps", "good days", "time at this approach", "speed used", "no fading", "load", "no pain")) {
      assertThat(body).contains("<b>" + name + "</b>");
    }
    HttpResponse<String> bare = client.post(page + "/ready", once("family", "COMBINATION", "to", "6", "reason", ""));
    assertThat(bare.statusCode()).isEqualTo(422);
    assertThat(bare.body()).contains("takes a reason of 8 to 300 characters");
    client.post(page + "/ready", once("family", "COMBINATION", "to", "6", "reason", "Did six steps all winter elsewhere"));
    assertThat(bench.ladderDesk().rung(ilka, DrillFamily.COMBINATION)).isEqualTo(6);
    assertThat(bench.ladderDesk().rung(ilka, DrillFamily.ALTERNATE)).isEqualTo(4);
    assertThat(client.get(page + "/ready").body()).contains("Did six steps all winter elsewhere");
    assertThat(client.get(page).body()).as("the drill of the plan starts from there").containsPattern("name=\"steps\" value=\"6\" checked");
    for (String path : List.of("/", "/tapes", page + "/card")) {
      assertThat(client.get(path).body()).as(path).contains("from 6 steps").doesNotContain("from 4 steps, into");
    }
  }

  @Test
  void ownFaultsAreAddedTickedAndTakenOff() {
    String csrf = csrf();
    assertThat(client.post(page + "/fault", "csrf", csrf, "label", "low knee").body()).contains("is in the list already");
    client.post(page + "/fault", "csrf", csrf, "label", "hands drop", "say", "Hands up.", "next", "", "looksLike", "", "cause", "");
    assertThat(tap("judged", "yes", "fault", "hands-drop").body()).contains("Say: Hands up.");
    client.post(page + "/fault/hands-drop/remove", "csrf", csrf);
    assertThat(bench.looks().ownFaults()).isEmpty();
    assertThat(newest().faults()).containsExactly("hands-drop");
    assertThat(client.get(page + "/technique").body()).contains("<b>hands-drop</b>");
  }

  @Test
  void aSecondObserverJudgesTheSameRepsAndTheDifferencesAreListed() {
    log(TODAY, true, "toe-up");
    log(TODAY, true);
    log(TODAY, true, "toe-up@3");
    log(TODAY, false);
    List<Rep> reps = bench.reps().inOrder(ilka.id());
    String csrf = csrf();
    String blind = client.get(page + "/second").body();
    assertThat(blind).doesNotContain("checked=\"true\"").doesNotContain("seen-" + reps.get(3).id());
    assertThat(client.post(page + "/second", "csrf", csrf, "observer", "KM").body()).contains("No rep was looked at");
    String[] form = {"csrf", csrf, "observer", "KM"};
    for (Rep rep : reps.subList(0, 3)) {
      form = with(form, "seen-" + rep.id(), "yes");
    }
    form = with(form, "fault-" + reps.get(0).id(), "toe-up");
    String body = client.post(page + "/second", form).body();
    assertThat(body).contains("Coach and KM").contains("3 reps looked at by both").contains("kappa");
    assertThat(body).contains("only the first observer saw it");
    assertThat(bench.looks().secondLooks(ilka.id())).hasSize(3);
  }

  @Test
  void aTestIsKeptWithItsProtocolAndTheFirstGuessRestsOnIt() {
    String[] usual = {"surface", "TRACK", "shoes", "flat shoes", "start", "both feet on the line", "bestOf", "3", "notes", ""};
    HttpResponse<String> wild = client.post(page + "/tests", with(once("kind", "STANDING_TRIPLE", "value", "68"), usual));
    assertThat(wild.statusCode()).isEqualTo(422);
    assertThat(wild.body()).contains("out of range: 2.5 to 12.0").contains("value=\"68\"");
    client.post(page + "/tests", with(once("kind", "STANDING_TRIPLE", "value", "6.80", "date", "2026-05-01"), usual));
    TestScore score = bench.tests().of(ilka.id()).get(0);
    assertThat(score.kind()).isEqualTo(TestKind.STANDING_TRIPLE);
    assertThat(score.protocol().text()).isEqualTo("On track, flat shoes, start: both feet on the line, best of 3.");
    assertThat(bench.athletes().profile(ilka).knownMarks()).hasSize(1);
    String body = client.get(page + "/tests").body();
    assertThat(body).contains("typical error").contains("From the literature, upper end: Markovic et al. 2004 (read in the source)");
    client.post(page + "/score/" + score.id() + "/remove", "csrf", csrf());
    assertThat(bench.tests().of(ilka.id())).isEmpty();
  }

  @Test
  void limitsAreSettingsAndEveryBadFieldIsNamed() {
    String body = client.get("/settings/guard").body();
    assertThat(body).contains(LoadSources.OWN_WEEKS.line()).contains("name=\"session-OFF_SEASON-BEGINNER-caution\" inputmode=\"decimal\" value=\"60\"");
    String[] form = fields(body);
    set(form, "power", "6");
    set(form, "hardContacts", "80");
    set(form, "session-IN_SEASON-INTERMEDIATE-refuse", "130");
    client.post("/settings/guard", form);
    assertThat(bench.care().guard().scale().power()).isEqualTo(6);
    assertThat(bench.care().guard().limits().hardContacts()).isEqualTo(80);
    assertThat(bench.care().guard().limits().session(Season.IN_SEASON, Level.INTERMEDIATE).refuse()).isEqualTo(130);
    set(form, "pain-caution", "9");
    HttpResponse<String> bad = client.post("/settings/guard", form);
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("are the wrong way round");
    assertThat(bench.care().guard().limits().pain().caution()).isEqualTo(2);
    set(form, "reps", "20");
    client.post("/settings/gate", form);
    assertThat(bench.ladder().rules().clean().reps()).isEqualTo(20);
    client.post("/settings/guard", "csrf", csrf(), "action", "defaults");
    assertThat(bench.care().guard().limits().hardContacts()).isEqualTo(60);
    assertThat(bench.care().guard().scale().power()).isEqualTo(7);
    String sources = client.get("/sources").body();
    LoadSources.ALL.forEach(s -> assertThat(sources).containsOnlyOnce("id=\"" + s.id() + "\""));
    JumpSources.ALL.forEach(s -> assertThat(sources).containsOnlyOnce("id=\"" + s.id() + "\""));
  }

  @Test
  void thePartOfTheYearHoldsFromADayForTheSquadOrForOneAthlete() {
    client.post("/settings/season", "csrf", csrf(), "from", "2026-05-01", "season", "IN_SEASON");
    client.post(page + "/season", once("from", "2026-05-10", "season", "PRE_SEASON"));
    assertThat(SeasonStart.on(bench.load().seasons(), ilka.id(), TODAY)).contains(Season.PRE_SEASON);
    assertThat(SeasonStart.on(bench.load().seasons(), ilka.id(), TODAY.minusDays(5))).contains(Season.IN_SEASON);
    assertThat(SeasonStart.on(bench.load().seasons(), ilka.id(), TODAY.minusDays(20))).isEmpty();
    assertThat(client.get("/settings/guard").body()).contains("Today: <b>in season</b>");
    assertThat(client.get(page + "/load").body()).contains("Today: <b>pre-season</b>");
    HttpResponse<String> bad = client.post("/settings/season", "csrf", csrf(), "from", "yesterday", "season", "IN_SEASON");
    assertThat(bad.statusCode()).isEqualTo(422);
    client.post("/settings/season", "csrf", csrf(), "from", "2026-05-01", "season", "IN_SEASON", "action", "remove");
    assertThat(bench.load().seasons()).hasSize(1);
  }

  @Test
  void otherWorkIsEnteredInTwoTapsAndTakenOutAgain() {
    String before = client.get(page + "/load").body();
    assertThat(before).contains("Not known yet").contains("How many contacts had last week?").contains("value=\"20/0.4\"");
    String counted = client.post(page + "/work", once("kind", "BOXES", "tap", "20/0.4")).body();
    assertThat(counted).contains("Counted.").contains("boxes: 20 contacts of 0.4 m");
    client.post(page + "/work", once("kind", "SPRINT", "tap", "240"));
    client.post(page + "/work", once("kind", "SPORT", "amount", "50", "grade", "6", "date", "2026-05-11"));
    assertThat(bench.load().otherWork(ilka.id(), TODAY.minusDays(3))).hasSize(3);
    assertThat(bench.loadDesk().day(ilka).soFar().contacts()).as("boxes are jump contacts, sprints and sport are not").isEqualTo(20);
    HttpResponse<String> bad = client.post(page + "/work", once("kind", "SPRINT", "amount", "9000"));
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("10 to 5000").contains("value=\"9000\"");
    long id = bench.load().otherWork(ilka.id(), TODAY).get(0).id();
    client.post(page + "/work/" + id + "/remove", once());
    assertThat(bench.load().otherWork(ilka.id(), TODAY)).hasSize(1);
    assertThat(client.post(page + "/last-week", once("contacts", "120")).body()).contains("Kept").doesNotContain("Not known yet");
    assertThat(bench.load().lastWeeks()).containsEntry(ilka.id(), new LastWeek(TODAY, 120));
  }

  /** One verdict: the same line wherever the athlete stands, and the reason alone where bounding is stopped. */
  @Test
  void everyPlaceShowsTheOneVerdict() {
    bench.settings().keep(new DayPlan("Much", List.of(new Drill(Sequence.parse("RRL x2"), null, 10, 3, true))));
    log(TODAY, true);
    String said = bench.loadDesk().day(ilka).said();
    assertThat(said).isEqualTo("So far allowed (6 contacts), with the plan refused (180).");
    List<String> places = List.of("/", "/tapes", "/watch", "/card", page, page + "/card", page + "/load");
    for (String place : places) {
      // on the squad's page the two halves stand in a table
      assertThat(client.get(place).body()).as(place).contains(place.equals("/") ? "<b>refused</b> <span class=\"count\">6 of 180</span>" : said);
    }
    bench.care().openHold(ilka.id(), new MedicalHold(0, TODAY, "set by the physician", null, null));
    for (String place : places) {
      String body = client.get(place).body();
      assertThat(body).as(place).contains(place.equals("/watch") ? "No bounding." : "On medical hold since 2026-05-12").doesNotContain(said);
      assertThat(body).as(place).doesNotContain("class=\"mark \"").doesNotContain("take-off mark to sand</p>").doesNotContain("card-mark");
    }
  }

  private void log(LocalDate date, boolean judged, String... faults) {
    bench
        .logbook()
        .log(new Rep(0, ilka.id(), date, Sequence.parse("RRL x2"), 4, Surface.GRASS, List.of(), null, Outcome.IN, 9.0, judged, List.of(faults)));
  }

  private Rep newest() {
    return bench.reps().recent(ilka.id(), 1).get(0);
  }

  private String csrf() {
    return Client.hidden(client.get(page + "/care").body(), "csrf");
  }

  private String[] once(String... more) {
    String body = client.get(page + "/care").body();
    return with(new String[] {"csrf", Client.hidden(body, "csrf"), "token", Client.hidden(body, "token")}, more);
  }

  private HttpResponse<String> tap(String... more) {
    String body = client.get(page).body();
    String[] form = {
      "csrf", Client.hidden(body, "csrf"), "token", Client.hidden(body, "token"), "sequence", "RRL x2", "steps", "4", "surface", "TRACK", "sand",
      "yes", "outcome", "IN", "mark", "16.00"
    };
    return client.post(page + "/log", with(form, more));
  }

  private String[] override(String body, Rule rule, String reason) {
    return new String[] {
      "csrf", Client.hidden(body, "csrf"), "token", Client.hidden(body, "token"), "sequence", "RRL x2", "steps", "4", "surface", "TRACK", "sand",
      "yes", "rule", rule.name(), "reason", reason
    };
  }

  /** All fields of the page as a browser would send them, with the season that is chosen. */
  private static String[] fields(String body) {
    String[] out = {"csrf", Client.hidden(body, "csrf"), "season", "OFF_SEASON"};
    java.util.regex.Matcher m = java.util.regex.Pattern.compile("name=\"([A-Za-z_-]+)\" inputmode=\"decimal\" value=\"([^\"]*)\"").matcher(body);
    while (m.find()) {
      out = with(out, m.group(1), m.group(2));
    }
    return out;
  }

  private static void set(String[] form, String name, String value) {
    int at = Arrays.asList(form).indexOf(name);
    assertThat(at).as(name).isNotNegative();
    form[at + 1] = value;
  }

  private static String[] with(String[] form, String... more) {
    String[] out = Arrays.copyOf(form, form.length + more.length);
    System.arraycopy(more, 0, out, form.length, more.length);
    return out;
  }
}
