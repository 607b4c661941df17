package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PagesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);

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
  void everyPageAnswersAndCarriesTheHeaders() {
    for (String path :
        List.of(
            "/", page, page + "/edit", page + "/card", "/athlete/new", "/plan", "/tapes", "/card", "/settings", "/import", "/sources")) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).as(path).isEqualTo(200);
      assertThat(r.headers().firstValue("Content-Type").orElse("")).as(path).isEqualToIgnoringCase("text/html;charset=utf-8");
      assertThat(r.headers().firstValue("Content-Security-Policy").orElse("")).as(path).contains("default-src 'self'");
      assertThat(r.headers().firstValue("X-Content-Type-Options")).as(path).contains("nosniff");
      assertThat(r.body()).as(path).doesNotContain(" style=\"").doesNotContain("<style").doesNotContain("onclick");
    }
  }

  @Test
  void everyAssetThatAPageNamesIsServedAndMayBeKept() {
    java.util.regex.Matcher m = java.util.regex.Pattern.compile("(?:href|src)=\"(/assets/[^\"]+)\"").matcher(client.get("/").body());
    int seen = 0;
    while (m.find()) {
      HttpResponse<String> r = client.get(m.group(1));
      assertThat(r.statusCode()).as(m.group(1)).isEqualTo(200);
      assertThat(r.headers().firstValue("Cache-Control").orElse("")).contains("immutable");
      String tag = r.headers().firstValue("ETag").orElseThrow();
      assertThat(client.get(m.group(1), "If-None-Match", tag).statusCode()).isEqualTo(304);
      seen++;
    }
    assertThat(seen).isGreaterThanOrEqualTo(5);
    assertThat(client.get("/assets/..%2fdb%2fmigration").statusCode()).isBetween(400, 404);
    assertThat(client.get("/assets/none.css").statusCode()).isEqualTo(404);
  }

  @Test
  void aWriteNeedsTheBrowsersOwnTokenAndTheOwnOrigin() {
    String csrf = Client.hidden(client.get(page).body(), "csrf");
    String[] form = {"csrf", csrf, "token", "0".repeat(31) + "1", "name", "Bo Longstride", "level", "BEGINNER", "foot", "LEFT", "rung", "2"};
    assertThat(client.post("/athlete/new", "name", "Bo Longstride", "level", "BEGINNER", "foot", "LEFT").statusCode()).isEqualTo(403);
    assertThat(client.post("/athlete/new", new String[] {"Origin", "http://elsewhere.example"}, form).statusCode()).isEqualTo(403);
    assertThat(client.post("/athlete/new", new String[] {"Origin", "null"}, form).statusCode()).isEqualTo(403);
    assertThat(client.post("/athlete/new", new String[] {"Sec-Fetch-Site", "cross-site"}, form).statusCode()).isEqualTo(403);
    assertThat(new Client(server.port()).post("/athlete/new", form).statusCode()).as("no cookie").isEqualTo(403);
    assertThat(bench.athletes().all()).hasSize(1);
    assertThat(client.post("/athlete/new", new String[] {"Origin", client.base(), "Sec-Fetch-Site", "same-origin"}, form).statusCode())
        .isEqualTo(200);
    assertThat(bench.athletes().byName("bo longstride")).isPresent();
  }

  @Test
  void aReadThatClaimsToBeAWriteIsTreatedAsAWrite() {
    assertThat(client.get(page + "/erase", "X-HTTP-Method-Override", "POST").statusCode()).isIn(403, 411);
    assertThat(bench.athletes().all()).hasSize(1);
  }

  @Test
  void aForeignHostIsTurnedAway() throws IOException {
    assertThat(statusForHost("evil.example:" + server.port())).isEqualTo(421);
    assertThat(statusForHost("127.0.0.1.evil.example")).isEqualTo(421);
    assertThat(statusForHost("192.168.1.7")).isEqualTo(421);
    assertThat(statusForHost("localhost:" + server.port())).isEqualTo(200);
    assertThat(statusForHost("127.0.0.1:" + server.port())).isEqualTo(200);
  }

  @Test
  void aBodyThatIsTooLargeIsRefusedInWords() {
    String csrf = Client.hidden(client.get(page).body(), "csrf");
    HttpResponse<String> r = client.post("/plan", "csrf", csrf, "title", "x".repeat(300_000));
    assertThat(r.statusCode()).isEqualTo(413);
    assertThat(r.body()).contains("the limit is 200000");
  }

  @Test
  void aBadSequenceIsPointedAtBesideItsFieldAndKept() {
    HttpResponse<String> r = client.get(page + "?sequence=RXL&steps=4");
    assertThat(r.statusCode()).isEqualTo(422);
    assertThat(r.body()).contains("Character 2 ('X')").contains("  RXL\n   ^").contains("value=\"RXL\"");
  }

  @Test
  void sequencesAndStepsOutOfRangeAreRefusedInWords() {
    assertThat(client.get(page + "?sequence=&steps=4").body()).contains("0 contacts");
    assertThat(client.get(page + "?sequence=R+x61&steps=4").body()).contains("61 contacts; the limit is 60");
    assertThat(client.get(page + "?sequence=RRL&steps=-1").body()).contains("Approach steps of -1 are out of range");
    assertThat(client.get(page + "?sequence=RRL&steps=40").body()).contains("Approach steps of 40 are out of range");
    assertThat(client.get(page + "?sequence=RRL&steps=four").body()).contains("is not a whole number");
    assertThat(client.get("/athlete/999").statusCode()).isEqualTo(404);
    assertThat(client.get("/athlete/999").body()).contains("No athlete has the number 999");
    assertThat(client.get("/nosuch").body()).contains("There is no page at /nosuch");
  }

  @Test
  void aRepIsOnDiskWhenAnsweredAndADoubleSubmitLogsOnce() throws Exception {
    String body = client.get(page).body();
    String[] tap = tap(body, "SHORT", "16.40");
    ExecutorService two = Executors.newFixedThreadPool(2);
    try {
      List<Callable<HttpResponse<String>>> both = List.of(() -> client.post(page + "/log", tap), () -> client.post(page + "/log", tap));
      for (var done : two.invokeAll(both)) {
        assertThat(done.get().statusCode()).isEqualTo(200);
      }
    } finally {
      two.shutdown();
    }
    List<Rep> reps = bench.reps().inOrder(ilka.id());
    assertThat(reps).hasSize(1);
    assertThat(reps.get(0).outcome()).isEqualTo(Outcome.SHORT);
    assertThat(reps.get(0).markToSand_m()).isEqualTo(16.40);
    assertThat(reps.get(0).date()).isEqualTo(LocalDate.of(2026, 5, 12));
    assertThat(client.post(page + "/log", tap).body()).contains("was not logged twice");
    try (Workbench again = Workbench.open(folder, DAY)) {
      assertThat(again.reps().inOrder(ilka.id())).hasSize(1);
    }
  }

  @Test
  void anAbandonedRepIsOneTapAndIsNotCleanOnlyBecauseNothingWasTicked() {
    String body = client.get(page).body();
    assertThat(body).contains("id=\"tap-ABANDONED\"");
    String after = client.post(page + "/log", tap(body, "ABANDONED", "16.40")).body();
    assertThat(after).contains("Abandoned, rep 1 today. Logged: ").contains(" contacts count as load. The mark stays");
    client.post(page + "/log", with(tap(after, "ABANDONED", "16.40"), "after", "2", "fault", "toe-up"));
    List<Rep> reps = bench.reps().inOrder(ilka.id());
    assertThat(reps).extracting(Rep::outcome).containsOnly(Outcome.ABANDONED);
    assertThat(reps).extracting(Rep::brokeOffAfter).containsExactly(null, 2);
    assertThat(reps).extracting(Rep::judged).containsExactly(false, true);
    String now = client.get(page).body();
    assertThat(now).contains("abandoned after contact 2");
    assertThat(now).as("it does not stop the coach's looking").containsPattern("value=\"yes\" checked");
  }

  @Test
  void afterATapThePageSaysHowTheMarkMovedAndUndoTakesItBack() {
    String body = client.get(page).body();
    String before = Client.hidden(body, "mark");
    String after = client.post(page + "/log", tap(body, "SHORT", before)).body();
    assertThat(after).contains("Logged. The mark moved ").contains(" forward: from " + before + " m to ");
    assertThat(Client.hidden(after, "mark")).as("the tape lies where it lay").isEqualTo(before);
    assertThat(after).contains("I moved it to ");
    long id = bench.reps().recent(ilka.id(), 1).get(0).id();
    String undone = client.post(page + "/undo/" + id, state(after)).body();
    assertThat(undone).contains("Taken back. The mark moved ").contains(" to " + before + " m.");
    assertThat(bench.reps().inOrder(ilka.id())).isEmpty();
    HttpResponse<String> twice = client.post(page + "/undo/" + id, state(undone));
    assertThat(twice.statusCode()).isEqualTo(422);
    assertThat(twice.body()).contains("taken back already");
  }

  @Test
  void aTapeFarFromTheMarkIsAskedAboutOnceAndThenTaken() {
    String body = client.get(page).body();
    HttpResponse<String> asked = client.post(page + "/log", tap(body, "IN", "99"));
    assertThat(asked.statusCode()).isEqualTo(422);
    assertThat(asked.body()).contains("Is the tape really at 99.00 m?").contains("value=\"99\"");
    assertThat(bench.reps().inOrder(ilka.id())).isEmpty();
    String taken = client.post(page + "/log", tap(asked.body(), "IN", "99")).body();
    assertThat(taken).contains("In, rep 1 today. Logged.");
    assertThat(bench.reps().inOrder(ilka.id())).hasSize(1);
  }

  @Test
  void aRefusedRepKeepsWhatWasWritten() {
    String body = client.get(page).body();
    String[] form = tap(body, "", "16.40");
    HttpResponse<String> r = client.post(page + "/log", with(form, "landing", "90", "fault", "toe-up"));
    assertThat(r.statusCode()).isEqualTo(422);
    assertThat(r.body()).contains("The landing at 90.00 m cannot be").contains("name=\"landing\" value=\"90\"");
    assertThat(r.body()).containsPattern("value=\"toe-up\" checked");
    assertThat(client.post(page + "/log", with(form, "landing", "far")).body()).contains("'far' is not a length");
    assertThat(client.post(page + "/log", form).body()).contains("The rep says nothing");
    assertThat(client.post(page + "/log", with(form, "footprint", "4", "footprint", "3")).body()).contains("out of order");
    assertThat(bench.reps().inOrder(ilka.id())).isEmpty();
    client.post(page + "/log", with(tap(client.get(page).body(), "", "16.40"), "landing", "12.10", "footprint", "2.2", "fault", "toe-up"));
    Rep rep = bench.reps().inOrder(ilka.id()).get(0);
    assertThat(rep.landing_m()).isEqualTo(12.10);
    assertThat(rep.footprints_m()).containsExactly(2.2);
    assertThat(rep.faults()).containsExactly("toe-up");
  }

  @Test
  void aFragmentCarriesItsAddressAndTheWholePageDoesNotRepeat() {
    HttpResponse<String> r = client.get(page + "/marks?sequence=RRL&steps=6&surface=GRASS&sand=yes", "HX-Request", "true");
    assertThat(r.headers().firstValue("HX-Push-Url")).contains(page + "?sequence=RRL&steps=6&surface=GRASS&sand=yes");
    assertThat(r.body()).doesNotContain("<html").contains("id=\"work\"");
    assertThat(client.get(page + "/marks?sequence=RRL&steps=6").body()).contains("<html");
    assertThat(client.get(page + "/marks?steps=6&pick=RL+x5", "HX-Request", "true").body()).contains("value=\"RL x5\"");
  }

  @Test
  void namesAreWrittenAsTextAndNeverAsMarkup() {
    String name = "<b>Zed</b> \"Q\" O'Tape & <script>alert(1)</script>";
    Athlete zed = bench.athletes().add(new Athlete(0, name, Level.BEGINNER, Foot.LEFT, 0));
    for (String path : List.of("/", "/athlete/" + zed.id(), "/athlete/" + zed.id() + "/edit", "/athlete/" + zed.id() + "/card", "/card", "/tapes")) {
      String body = client.get(path).body();
      assertThat(body).as(path).doesNotContain("<b>Zed").doesNotContain("<script>alert").contains("&lt;b&gt;Zed&lt;/b&gt;");
    }
    assertThat(client.get(page + "?sequence=%3Cscript%3E%22&steps=%22%3E%3Cb%3E").body()).doesNotContain("<script>\"").doesNotContain("\"><b>");
    assertThat(client.get("/%3Cb%3Ehi").body()).doesNotContain("<b>hi");
  }

  @Test
  void anAthleteIsAddedChangedMeasuredAndErasedOnlyByName() {
    String csrf = Client.hidden(client.get("/athlete/new").body(), "csrf");
    assertThat(client.post("/athlete/new", "csrf", csrf, "token", "0".repeat(31) + "1", "name", "ilka  sandfoot", "level", "BEGINNER", "foot", "LEFT", "rung", "2").statusCode())
        .isEqualTo(422);
    HttpResponse<String> wild = client.post("/athlete/new", "csrf", csrf, "token", "0".repeat(31) + "1", "name", "Bo", "level", "BEGINNER", "foot", "LEFT", "rung", "40");
    assertThat(wild.body()).contains("Approach steps of 40").contains("value=\"Bo\"");
    client.post(page + "/edit", "csrf", csrf, "name", "Ilka S.", "level", "ADVANCED", "foot", "LEFT", "rung", "8");
    assertThat(bench.athletes().byId(ilka.id())).contains(new Athlete(ilka.id(), "Ilka S.", Level.ADVANCED, Foot.LEFT, 8));
    assertThat(client.post(page + "/test", "csrf", csrf, "token", "0".repeat(31) + "2", "kind", "STANDING_TRIPLE", "distance", "68").body()).contains("out of range: 2.5 to 12");
    client.post(page + "/test", "csrf", csrf, "token", "0".repeat(31) + "2", "kind", "STANDING_TRIPLE", "distance", "6.80", "date", "2026-05-01");
    client.post(page + "/runup", "csrf", csrf, "token", "0".repeat(31) + "3", "steps", "4", "length", "6.10", "speed", "");
    assertThat(bench.athletes().profile(ilka).knownMarks()).hasSize(1);
    assertThat(bench.athletes().profile(ilka).runUps().get(0).speed_mps()).isNull();
    assertThat(client.post(page + "/erase", "csrf", csrf, "name", "someone").statusCode()).isEqualTo(422);
    assertThat(bench.athletes().byId(ilka.id())).isPresent();
    client.post(page + "/erase", "csrf", csrf, "name", "Ilka S.");
    assertThat(bench.athletes().byId(ilka.id())).isEmpty();
  }

  @Test
  void thePlanIsKeptReorderedAndABadDrillKeepsTheText() {
    String csrf = Client.hidden(client.get("/plan").body(), "csrf");
    String[] two = {
      "csrf", csrf, "title", "Speed", "sequence", "RL x5", "steps", "", "sets", "2", "reps", "3", "sand", "no", "sequence", "RRL", "steps", "6",
      "sets", "1", "reps", "4", "sand", "yes"
    };
    client.post("/plan", with(two, "action", "up:1"));
    DayPlan plan = bench.settings().plan();
    assertThat(plan.title()).isEqualTo("Speed");
    assertThat(plan.drills())
        .containsExactly(new Drill(Sequence.parse("RRL"), 6, 1, 4, true), new Drill(Sequence.parse("RL x5"), null, 2, 3, false));
    HttpResponse<String> bad =
        client.post("/plan", "csrf", csrf, "title", "Worse", "sequence", "RQL", "steps", "", "sets", "2", "reps", "3", "sand", "no");
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("  RQL\n   ^").contains("value=\"RQL\"").contains("value=\"Worse\"");
    assertThat(bench.settings().plan().title()).isEqualTo("Speed");
  }

  @Test
  void settingsAreKeptAndEveryBadFieldIsNamed() {
    String csrf = Client.hidden(client.get("/settings").body(), "csrf");
    String[] good = {
      "csrf", csrf, "unit", "FEET_INCHES", "chance", "0,8", "sandMargin", "0.40 m", "clearMargin", "20 cm", "setContacts", "12", "place",
      "Gull Field (invented)", "runway", "45", "pit", "9", "flat", "70", "surface", "GRASS"
    };
    client.post("/settings", good);
    assertThat(bench.settings().settings().unit()).isEqualTo(LengthUnit.FEET_INCHES);
    assertThat(bench.settings().settings().marks().clearMargin_m()).isEqualTo(0.20);
    assertThat(bench.settings().settings().facility().surface()).isEqualTo(Surface.GRASS);
    assertThat(client.get(page).body()).contains("<span class=\"unit\"> ft </span>");
    HttpResponse<String> bad =
        client.post(
            "/settings", "csrf", csrf, "unit", "METRES", "chance", "2", "sandMargin", "x", "clearMargin", "0", "setContacts", "10", "place", "A",
            "runway", "400 m", "pit", "9 m", "flat", "70 m", "surface", "GRASS");
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(bad.body()).contains("A chance of 2.0 is out of range").contains("is not a length").contains("out of range: 5.0 to 80.0 m");
    assertThat(bench.settings().settings().unit()).isEqualTo(LengthUnit.FEET_INCHES);
  }

  @Test
  void aFileIsShownBeforeItIsTakenAndComesBackOut() {
    String csrf = Client.hidden(client.get("/import").body(), "csrf");
    String head = "date,athlete,sequence,approach_steps,surface,footprints_m,landing_m,outcome\n";
    String good = "2026-05-01,Mara Quickheel,RRL,6,track,,8.20,in\n";
    HttpResponse<String> mixed = client.upload("/import", csrf, "reps.csv", head + good + "2026-05-01,Mara Quickheel,RXL,6,track,,8.20,in\n");
    assertThat(mixed.body()).contains("<th scope=\"row\">3</th>").contains("Leave 1 out, take 1");
    assertThat(bench.athletes().all()).hasSize(1);
    String token = Client.hidden(mixed.body(), "token");
    assertThat(client.post("/import/take", "csrf", csrf, "token", token).statusCode()).as("not without the word").isEqualTo(422);
    assertThat(bench.athletes().all()).hasSize(1);
    assertThat(client.post("/import/take", "csrf", csrf, "token", token, "bad", "skip").body()).contains("1 rep taken, 1 new athlete, 1 bad row left out");
    assertThat(client.post("/import/take", "csrf", csrf, "token", token, "bad", "skip").statusCode()).as("once only").isEqualTo(422);
    HttpResponse<String> again = client.upload("/import", csrf, "reps.csv", head + good + "2026-05-02,Mara Quickheel,RRL,6,track,,8.30,in\n");
    assertThat(again.body()).contains("1 rep is there already and will not be doubled: line 2.").contains("Take 1 rep");
    assertThat(client.post("/import/take", "csrf", csrf, "token", Client.hidden(again.body(), "token")).body())
        .contains("1 rep taken, 0 new athletes, 1 there already.");
    HttpResponse<String> whole = client.upload("/import", csrf, "reps.csv", head + good);
    assertThat(whole.body()).contains("Nothing in it is new").doesNotContain("/import/take");
    assertThat(client.get("/athlete/" + bench.athletes().byName("Mara Quickheel").orElseThrow().id()).body()).contains("level not set");
    HttpResponse<String> out = client.get("/export.csv");
    assertThat(out.headers().firstValue("Content-Type").orElse("")).startsWith("text/csv");
    assertThat(out.body()).contains("Mara Quickheel,RRL,6,track,,8.2");
    assertThat(client.get("/export.csv?athlete=" + ilka.id()).body()).doesNotContain("Mara");
    assertThat(client.upload("/import", csrf, "x.csv", "").statusCode()).isEqualTo(422);
  }

  @Test
  void thePdfIsAPdf() {
    HttpResponse<String> r = client.get("/card.pdf?paper=A5&athlete=" + ilka.id());
    assertThat(r.headers().firstValue("Content-Type")).contains("application/pdf");
    assertThat(r.headers().firstValue("Content-Disposition").orElse("")).contains("card-ilka-sandfoot-a5.pdf");
    assertThat(r.body()).startsWith("%PDF");
    assertThat(client.get("/card.pdf?paper=A3").statusCode()).isEqualTo(422);
  }

  @Test
  void aCardOfAnEmptyPlanLeadsToThePlan() {
    bench.settings().keep(new DayPlan("", List.of()));
    for (String path : List.of("/card", page + "/card", "/card.pdf")) {
      HttpResponse<String> r = client.get(path);
      assertThat(r.statusCode()).isEqualTo(422);
      assertThat(r.body()).contains("The plan of the day has 0 drills").contains("<a class=\"button\" href=\"/plan\">To the plan</a>").doesNotContain("To the squad");
    }
  }

  @Test
  void anEmptyStoreSaysWhatToDoFirst() {
    String csrf = Client.hidden(client.get(page).body(), "csrf");
    client.post(page + "/erase", "csrf", csrf, "name", ilka.name());
    assertThat(client.get("/").body()).contains("Nobody is on the list yet").contains("Add an athlete");
    assertThat(client.get("/card").statusCode()).isEqualTo(422);
    assertThat(client.get("/card").body()).contains("A session card needs an athlete");
    assertThat(client.get("/tapes").statusCode()).isEqualTo(200);
  }

  @Test
  void aPortInUseIsSaidInWords() {
    assertThatThrownBy(() -> WebServer.start(bench, "127.0.0.1", server.port()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Port " + server.port() + " is in use")
        .hasMessageContaining("--port " + (server.port() + 1));
    assertThatThrownBy(() -> WebServer.start(bench, "127.0.0.1", 70000)).isInstanceOf(RefusedException.class).hasMessageContaining("out of range");
    assertThatThrownBy(() -> WebServer.start(bench, "192.0.2.1", 0)).isInstanceOf(RefusedException.class).hasMessageContaining("192.0.2.1");
  }

  private int statusForHost(String host) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket.setSoTimeout(10_000);
      StringWriter request = new StringWriter();
      new PrintWriter(request).printf("GET /settings HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n", host).flush();
      socket.getOutputStream().write(request.toString().getBytes(StandardCharsets.US_ASCII));
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return Integer.parseInt(answer.substring(9, 12));
    }
  }

  private static String[] state(String body) {
    return new String[] {
      "csrf", Client.hidden(body, "csrf"), "sequence", Client.hidden(body, "sequence"), "steps", "4", "surface", "TRACK", "sand", "yes"
    };
  }

  private static String[] tap(String body, String outcome, String mark) {
    return with(state(body), "token", Client.hidden(body, "token"), "outcome", outcome, "mark", mark);
  }

  private static String[] with(String[] form, String... more) {
    String[] out = java.util.Arrays.copyOf(form, form.length + more.length);
    System.arraycopy(more, 0, out, form.length, more.length);
    return out;
  }
}
