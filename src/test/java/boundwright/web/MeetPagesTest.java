package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.board.GapEntry;
import boundwright.approach.run.RunThroughEntry;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.jump.JumpEntry;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of the jump, the run-up, the aim and the meet, asked by a plain browser without scripts. */
class MeetPagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final String[] PARTIAL = {"HX-Request", "true"};

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
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 8));
    page = "/athlete/" + ilka.id();
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  /** Sends a form of a page: its CSRF token and its once-only token, then the fields. */
  private HttpResponse<String> send(String from, String to, String... fields) {
    String shown = client.get(from).body();
    return client.post(to, with(shown, fields));
  }

  private static String[] with(String shown, String... fields) {
    List<String> all = new ArrayList<>(List.of("csrf", Client.hidden(shown, "csrf"), "token", Client.hidden(shown, "token")));
    all.addAll(List.of(fields));
    return all.toArray(new String[0]);
  }

  @Test
  void everyPageAnswersWithoutDataAndKeepsScriptsAndStylesOutsideItself() {
    for (String path : List.of(page + "/jump", page + "/run-up", page + "/aim", "/meet", "/settings/meet")) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).as(path).isEqualTo(200);
      assertThat(r.headers().firstValue("Content-Security-Policy").orElse("")).as(path).contains("default-src 'self'");
      assertThat(r.body()).as(path).doesNotContain(" style=\"").doesNotContain("<style").doesNotContain("onclick").doesNotContain("NaN");
    }
  }

  @Test
  void theLengthsOfAFinalAreClassifiedAndDrawnBesidePublishedJumps() {
    // Women's Olympic final 2021, 15.67 m: 37.40 / 24.38 / 38.23 %, balanced (press report)
    HttpResponse<String> r =
        send(page + "/jump", page + "/jump", "hop", "5.86", "step", "3.82", "jump", "5.99", "toe", "2.6", "from", "BOARD");
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.body()).contains("37.4").contains("24.4").contains("38.2").contains("<b>balanced</b>");
    assertThat(r.body()).contains("15.67 m from the board").contains("15.70 m from the toe").contains("toe 3 cm behind the line");
    assertThat(r.body()).contains("Men's world final 1995, 18.29 m (from memory)");
    assertThat(bench.jumpLog().jumps(ilka.id()).get(0).phases().toeToBoard_m()).isCloseTo(0.026, within(1e-9));
  }

  @Test
  void aJumpIsTakenBackAndARefusedOneKeepsWhatWasWritten() {
    HttpResponse<String> refused = send(page + "/jump", page + "/jump", "hop", "58.6", "step", "3.82", "jump", "5.99", "from", "BOARD");
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("58.6").contains("out of range").contains("value=\"3.82\"");
    send(page + "/jump", page + "/jump", "hop", "5.86", "step", "3.82", "jump", "5.99", "from", "BOARD");
    JumpEntry kept = bench.jumpLog().jumps(ilka.id()).get(0);
    HttpResponse<String> undone = send(page + "/jump", page + "/jump/" + kept.id() + "/remove");
    assertThat(undone.body()).contains("taken back");
    assertThat(bench.jumpLog().jumps(ilka.id())).isEmpty();
  }

  @Test
  void halfOfTheSpeedsAreRefusedAndAllOfThemAreKept() {
    String[] lengths = {"hop", "5.10", "step", "3.90", "jump", "4.90", "toe", "5", "from", "BOARD"};
    HttpResponse<String> half = send(page + "/jump", page + "/jump", concat(lengths, "vxIn", "9.3", "vxIn", "", "vxIn", ""));
    assertThat(half.statusCode()).isEqualTo(422);
    assertThat(half.body()).contains("is missing").contains("all the speeds");
    String[] speeds = {
      "vxIn", "9.3", "vxIn", "8.8", "vxIn", "8.0", "vxOut", "8.8", "vxOut", "8.0", "vxOut", "7.2", "vyDown", "-0.3", "vyDown", "-2.9",
      "vyDown", "-2.4", "vyUp", "2.3", "vyUp", "1.8", "vyUp", "2.2", "high", "1.25", "high", "1.20", "high", "1.20", "low", "1.05", "low", "1.05",
      "low", "0.65"
    };
    HttpResponse<String> all = send(page + "/jump", page + "/jump", concat(lengths, speeds));
    assertThat(all.statusCode()).as(all.body()).isEqualTo(200);
    assertThat(all.body()).contains("Speed carried through").contains("9.30 to 8.80 m/s");
    assertThat(bench.jumpLog().jumps(ilka.id()).get(0).speeds()).isNotNull();
  }

  @Test
  void aRunThroughIsLoggedByItsGapAloneAndBySteps() {
    HttpResponse<String> r = send(page + "/run-up", page + "/run-up", "steps", "8", "start", "15.00", "gap", "7", "side", "over");
    assertThat(r.statusCode()).as(r.body()).isEqualTo(200);
    send(page + "/run-up", page + "/run-up", "steps", "3", "start", "5.00", "at", "3.85", "at", "1.95", "gap", "9", "side", "behind", "wind", "-1.2", "tired", "3");
    List<RunThroughEntry> kept = bench.runThroughs().runThroughs(ilka.id());
    assertThat(kept).hasSize(2);
    assertThat(kept.get(0).run().gap_m()).isEqualTo(-0.07);
    assertThat(kept.get(1).run().toBoard_m()).containsExactly(3.85, 1.95, 0.09);
    assertThat(kept.get(1).run().wind()).isEqualTo(-1.2);
    HttpResponse<String> nothing = send(page + "/run-up", page + "/run-up", "steps", "8", "start", "15.00", "gap", "", "side", "behind");
    assertThat(nothing.statusCode()).isEqualTo(422);
    assertThat(nothing.body()).contains("tells nothing");
    assertThat(bench.runThroughs().runThroughs(ilka.id())).hasSize(2);
  }

  @Test
  void anAthleteFromStandingHasARunUpPageThatSaysWhatIsMissing() {
    Athlete nils = bench.athletes().add(new Athlete(0, "Nils Torfmoor", Level.BEGINNER, Foot.LEFT, 0));
    HttpResponse<String> r = client.get("/athlete/" + nils.id() + "/run-up");
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.body()).contains("Say how many steps");
    HttpResponse<String> asked = client.get("/athlete/" + nils.id() + "/run-up?steps=6");
    assertThat(asked.body()).contains("start mark to board, 6 steps").contains("<desc>The runway from above");
    assertThat(client.get("/athlete/" + nils.id() + "/run-up?steps=6&speed=8").statusCode()).isEqualTo(422);
  }

  @Test
  void gapsAndFoulsAreLoggedWithOneTapAndGiveAnAim() {
    for (String cm : new String[] {"2", "15", "4", "10", "8"}) {
      send(page + "/aim", page + "/aim", "distance", "12.3" + cm.charAt(0), "gap", "", "over", "", "tap", cm);
    }
    send(page + "/aim", page + "/aim", "distance", "", "gap", "", "over", "", "tap", "foul");
    HttpResponse<String> r = send(page + "/aim", page + "/aim", "distance", "", "gap", "", "over", "3", "tap", "foul");
    List<GapEntry> kept = bench.boardLog().gaps(ilka.id());
    assertThat(kept).hasSize(7);
    assertThat(kept.get(1).gap_m()).isEqualTo(0.15);
    assertThat(kept.get(5).gap_m()).isNull();
    assertThat(kept.get(6).gap_m()).isEqualTo(-0.03);
    assertThat(r.body()).containsPattern("(Move the start (back|forward)|Leave the start mark)").contains("foul chance now").contains("Attempt by attempt");
    HttpResponse<String> target = client.get(page + "/aim?goal=target&target=12.40&attempts=3");
    assertThat(target.body()).contains("chance of the target, best of 3");
    HttpResponse<String> rival = client.get(page + "/aim?goal=rival&rivals=12.38&left=2");
    assertThat(rival.body()).contains("chance of the place");
  }

  @Test
  void aFoulWithADistanceAndAGapInDoubtAreRefusedInWords() {
    HttpResponse<String> both = send(page + "/aim", page + "/aim", "distance", "12.30", "tap", "foul");
    assertThat(both.statusCode()).isEqualTo(422);
    assertThat(both.body()).contains("no distance that counts");
    HttpResponse<String> doubt = send(page + "/aim", page + "/aim", "gap", "0.07", "tap", "written");
    assertThat(doubt.statusCode()).isEqualTo(422);
    assertThat(doubt.body()).contains("either centimetres or metres");
    HttpResponse<String> few = client.get(page + "/aim?goal=eight&rivals=12.10");
    assertThat(few.statusCode()).isEqualTo(422);
    assertThat(few.body()).contains("is safe with any mark");
    assertThat(bench.boardLog().gaps(ilka.id())).isEmpty();
  }

  @Test
  void aDoubleTapIsOneEntry() {
    String[] form = with(client.get(page + "/aim").body(), "distance", "12.30", "tap", "8");
    client.post(page + "/aim", form);
    HttpResponse<String> again = client.post(page + "/aim", form);
    assertThat(again.body()).contains("not kept twice");
    assertThat(bench.boardLog().gaps(ilka.id())).hasSize(1);
  }

  @Test
  void nothingIsWrittenWithoutTheFormsToken() {
    assertThat(client.post(page + "/aim", "token", "0".repeat(32), "tap", "8").statusCode()).isEqualTo(403);
    assertThat(client.post("/meet", "name", "Spring").statusCode()).isEqualTo(403);
    assertThat(bench.boardLog().gaps(ilka.id())).isEmpty();
  }

  private MeetSheet meet(String list) {
    send(
        "/meet", "/meet", "name", "Spring meet", "date", "2026-05-16", "board", "1", "scoring", "TRIPLE_JUMP_WOMEN", "first", "3", "rounds", "6",
        "finalists", "8", "order", "WORST_FIRST_TWICE", "measure", "CENTIMETRE", "seconds", "60", "rivals", list);
    return bench.meets().all().get(0);
  }

  private HttpResponse<String> attempt(MeetSheet meet, int place, int round, String result, String... more) {
    String[] fields = {
      "entrant", String.valueOf(meet.entrants().get(place).id()), "round", String.valueOf(round), "result", result
    };
    return send("/meet/" + meet.id(), "/meet/" + meet.id() + "/attempt", concat(fields, more));
  }

  @Test
  void aMeetIsMadeInTheOrderDrawnWithOneOfOursAmongTheRivals() {
    MeetSheet meet = meet("Bib 12\nilka sandfoot\nBib 7");
    assertThat(meet.entrants()).extracting(e -> e.name()).containsExactly("Bib 12", "Ilka Sandfoot", "Bib 7");
    assertThat(meet.entrantOf(ilka.id())).isPresent();
    assertThat(meet.date()).isEqualTo(LocalDate.of(2026, 5, 16));
    assertThat(client.get("/meet/" + meet.id()).body()).contains("Round 1, next: Bib 12");
  }

  @Test
  void attemptsGiveRanksTiesWindAndPoints() {
    MeetSheet meet = meet("Bib 12;Ilka Sandfoot;Bib 7");
    attempt(meet, 0, 1, "VALID", "distance", "12.80", "wind", "+2.03");
    attempt(meet, 1, 1, "VALID", "distance", "13.00", "wind", "1,2", "gap", "6", "shift", "-4");
    attempt(meet, 2, 1, "FOUL", "wind", "0.4", "gap", "3");
    attempt(meet, 0, 2, "VALID", "distance", "13.00", "wind", "0.1");
    HttpResponse<String> r = attempt(meet, 1, 2, "PASS");
    // Women 13.00 m are 1015 points (World Athletics scoring: form read, coefficients memory)
    assertThat(r.body()).contains("1015 points").contains("Round 2, next: Bib 7").contains("+2.1 too much");
    // both at 13.00: Bib 12 has the better second best (ties by the second best; read)
    assertThat(r.body().indexOf("<b>Bib 12</b>")).isLessThan(r.body().indexOf("<b>Ilka Sandfoot</b>"));
    MeetSheet now = bench.meets().byId(meet.id()).orElseThrow();
    assertThat(now.attempts().get(1).attempt().gap_m()).isEqualTo(0.06);
    assertThat(now.attempts().get(1).attempt().startShift_m()).isEqualTo(-0.04);
    assertThat(now.attempts().get(2).attempt().gap_m()).as("a foul is over the line").isEqualTo(-0.03);
  }

  @Test
  void theNewestAttemptIsTakenBackOnceHoweverOftenUndoIsTapped() {
    MeetSheet meet = meet("Bib 12;Ilka Sandfoot");
    attempt(meet, 0, 1, "VALID", "distance", "12.80");
    attempt(meet, 1, 1, "VALID", "distance", "12.90");
    long last = bench.meets().byId(meet.id()).orElseThrow().attempts().get(1).id();
    send("/meet/" + meet.id(), "/meet/" + meet.id() + "/undo/" + last);
    send("/meet/" + meet.id(), "/meet/" + meet.id() + "/undo/" + last);
    assertThat(bench.meets().byId(meet.id()).orElseThrow().attempts()).singleElement().extracting(a -> a.attempt().athlete()).isEqualTo("Bib 12");
  }

  @Test
  void aRefusedAttemptKeepsTheFormAndSaysWhy() {
    MeetSheet meet = meet("Bib 12;Ilka Sandfoot");
    HttpResponse<String> r = attempt(meet, 1, 1, "VALID", "distance", "", "wind", "1.5", "gap", "7");
    assertThat(r.statusCode()).isEqualTo(422);
    assertThat(r.body()).contains("has no distance").contains("value=\"1.5\"").contains("value=\"7\"");
    assertThat(r.body()).containsPattern("value=\"" + meet.entrants().get(1).id() + "\" selected");
    assertThat(bench.meets().byId(meet.id()).orElseThrow().attempts()).isEmpty();
  }

  @Test
  void theSameAttemptSentAgainAfterANewStartIsNotKeptTwice() {
    MeetSheet meet = meet("Bib 12;Ilka Sandfoot");
    attempt(meet, 0, 1, "VALID", "distance", "12.80", "wind", "0.3");
    server.close();
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    attempt(meet, 0, 1, "VALID", "distance", "12.80", "wind", "0.3");
    bench.meets().undo(meet.id());
    assertThat(bench.meets().byId(meet.id()).orElseThrow().attempts()).as("one row, not one beneath the other").isEmpty();
  }

  @Test
  void thePagesOwnScriptGetsTheLowerPartAlone() {
    MeetSheet meet = meet("Bib 12;Ilka Sandfoot");
    String shown = client.get("/meet/" + meet.id()).body();
    String[] form = with(shown, "entrant", String.valueOf(meet.entrants().get(0).id()), "round", "1", "result", "VALID", "distance", "12.80");
    HttpResponse<String> r = client.post("/meet/" + meet.id() + "/attempt", PARTIAL, form);
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.body()).startsWith("<div id=\"meet-work\"").contains("Kept: Bib 12, round 1: 12.80 m.").contains("Round 1, next: Ilka Sandfoot");
  }

  @Test
  void theListIsMendedUntilSomebodyHasJumped() {
    MeetSheet meet = meet("Bib 12");
    String edit = "/meet/" + meet.id() + "/edit";
    HttpResponse<String> twice = client.post("/meet/" + meet.id() + "/list", "csrf", Client.hidden(client.get(edit).body(), "csrf"), "rivals", "bib 12");
    assertThat(twice.statusCode()).isEqualTo(422);
    assertThat(twice.body()).contains("already");
    client.post("/meet/" + meet.id() + "/list", "csrf", Client.hidden(client.get(edit).body(), "csrf"), "athlete", String.valueOf(ilka.id()), "rivals", "Bib 3");
    MeetSheet now = bench.meets().byId(meet.id()).orElseThrow();
    assertThat(now.entrants()).extracting(e -> e.name()).containsExactly("Bib 12", "Ilka Sandfoot", "Bib 3");
    client.post("/meet/" + meet.id() + "/list/" + now.entrants().get(2).id() + "/withdraw", "csrf", Client.hidden(client.get(edit).body(), "csrf"));
    assertThat(bench.meets().byId(meet.id()).orElseThrow().entrants()).hasSize(2);
    HttpResponse<String> kept =
        client.post("/meet/" + meet.id() + "/remove", "csrf", Client.hidden(client.get(edit).body(), "csrf"), "name", "another");
    assertThat(kept.statusCode()).isEqualTo(422);
    assertThat(bench.meets().all()).hasSize(1);
  }

  @Test
  void theRulesNameTheirSourceAndAnOwnBoardIsTaken() {
    assertThat(client.get("/meet").body()).contains("World Athletics rules").contains("read in the source").contains("from memory, not confirmed");
    send(
        "/meet", "/meet", "name", "Indoor", "date", "2026-05-16", "board", "own", "own", "8.5", "scoring", "", "first", "3", "rounds", "3",
        "finalists", "8", "order", "AS_DRAWN", "measure", "QUARTER_INCH", "seconds", "90", "rivals", "A");
    assertThat(bench.meets().all().get(0).board_m()).isEqualTo(8.5);
  }

  @Test
  void lengthsAreReadInTheCoachsUnit() {
    CoachSettings s = bench.settings().settings();
    bench.settings().keep(new CoachSettings(LengthUnit.FEET_INCHES, s.marks(), s.facility(), s.setContacts()));
    send(page + "/aim", page + "/aim", "distance", "40-06.25", "tap", "3");
    GapEntry kept = bench.boardLog().gaps(ilka.id()).get(0);
    assertThat(kept.gap_m()).isEqualTo(3 * 0.0254);
    assertThat(kept.distance_m()).isEqualTo(40 * 0.3048 + 6.25 * 0.0254);
    assertThat(client.get(page + "/aim").body()).contains("3 in, 40 ft 6 1/4 in");
  }

  @Test
  void theSettingsOfTheMeetAreKept() {
    String shown = client.get("/settings/meet").body();
    client.post(
        "/settings/meet", "csrf", Client.hidden(shown, "csrf"), "classThreshold", "1.5", "rhythm", "14", "checkSteps", "6", "earlyStep", "3", "noMark",
        "0.8", "rivalSpread", "20", "rivalFouls", "0.25");
    assertThat(bench.meets().settings().runUp().checkSteps()).isEqualTo(6);
    assertThat(bench.meets().settings().runUp().rhythm_m()).isEqualTo(0.14);
    HttpResponse<String> bad = client.post("/settings/meet", "csrf", Client.hidden(shown, "csrf"), "classThreshold", "40");
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("is not a length");
  }

  @Test
  void theWorkerMayAnswerForTheWholeSiteAndIsAskedAnewEachTime() {
    HttpResponse<String> r = client.get("/worker.js");
    assertThat(r.statusCode()).isEqualTo(200);
    assertThat(r.headers().firstValue("Content-Type").orElse("")).startsWith("text/javascript");
    assertThat(r.headers().firstValue("Cache-Control")).contains("no-cache");
    assertThat(client.get("/meet/99").statusCode()).isEqualTo(404);
  }

  private static String[] concat(String[] a, String... b) {
    List<String> out = new ArrayList<>(List.of(a));
    out.addAll(List.of(b));
    return out.toArray(new String[0]);
  }
}
