package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Role;
import boundwright.athlete.Athlete;
import boundwright.athlete.growth.Measurement;
import boundwright.athlete.Level;
import boundwright.athlete.person.Scope;
import boundwright.demo.InventedFolder;
import boundwright.footfall.Foot;
import boundwright.load.LegCare.MedicalHold;
import boundwright.load.LegCare.Pain;
import boundwright.load.back.Stages;
import boundwright.load.back.WayBack;
import boundwright.store.Workbench;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every route asked by every role, in its own club and in another, against a table that was written down ({@code rights.txt}), at the socket;
 * and every answer read for what its reader may not know.
 */
class RolesTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);
  /** Words that stand nowhere else: of a pain, of a hold, of who ended one and of who measured. */
  private static final List<String> OF_BODIES = List.of("zzshinzz", "zzphysiciantoldzz", "zzclinicianzz", "zznursezz");
  private static final List<String> BODY_WORDS =
      List.of("Pain 6 of 10", "edical hold", "stop and refer", "growing athlete", "growing fast", "fast growth", "cm a year", "Grown about", "on its way back");
  private static final String OTHERS = "Zora Otherclub";

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private long own;
  private long held;
  private final Map<Role, Client> by = new EnumMap<>(Role.class);

  @BeforeEach
  void open() {
    bench = Workbench.open(InventedFolder.fill(folder, DAY), DAY);
    server = WebServer.start(bench, "all", 0);
    own = bench.athletes().all().get(0).id();
    held = bench.athletes().all().get(1).id();
    bench.care().addPain(own, new Pain(0, TODAY, "zzshinzz", 6, null, false));
    long before = bench.care().openHold(held, new MedicalHold(0, TODAY.minusDays(30), "old", null, null)).id();
    bench.care().endHold(held, before, "zzclinicianzz", TODAY.minusDays(20));
    bench.care().openHold(held, new MedicalHold(0, TODAY.minusDays(2), "zzphysiciantoldzz", null, null));
    bench.waysBack().begin(own, new WayBack(0, Foot.LEFT, TODAY, Stages.USUAL, 100, 28, new WayBack.Clearance("zzclinicianzz", TODAY, true), List.of(), null));
    bench.care().setGrowing(own, true, TODAY.minusWeeks(60));
    Athlete grows = bench.athletes().byId(own).orElseThrow();
    for (int k = 0; k < 5; k++) {
      bench.growth().add(grows, new Measurement(0, TODAY.minusWeeks(40 - 8L * k), 1.60 + 0.015 * k, null, null, "zznursezz"));
    }
    for (Role role : Role.values()) {
      by.put(role, in(role, Club.FIRST, role == Role.ATHLETE ? own : null));
    }
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  /** A browser in which somebody with this role came in by their link and set a password. */
  private Client in(Role role, long club, @Nullable Long athlete) {
    String login = role.name().toLowerCase(java.util.Locale.ROOT) + club;
    long account = server.accounts().make(login, "The " + role.label(), role, club, athlete).id();
    String link = "/enter/" + server.accounts().link(account);
    Client client = new Client(server.port());
    HttpResponse<String> in = client.post(link, "csrf", Client.hidden(client.get(link).body(), "csrf"), "password", "four bounds then sand");
    assertThat(in.statusCode()).as(role + in.body()).isEqualTo(200);
    return client;
  }

  private Client as(Role role) {
    return Objects.requireNonNull(by.get(role));
  }

  private static boolean isShut(HttpResponse<String> answer) {
    return answer.statusCode() == 401 || (answer.statusCode() == 403 && answer.body().contains("this is not open to you"));
  }

  @Test
  void everyRouteLetsInWhomTheTableSays() throws IOException {
    Map<String, String> told = new TreeMap<>();
    for (String route : server.routes()) {
      String method = route.substring(0, route.indexOf(' '));
      String path = route.substring(route.indexOf(' ') + 1);
      StringBuilder letIn = new StringBuilder();
      for (Role role : Role.values()) {
        letIn.append(asked(as(role), method, path, own) ? letter(role) : '-');
      }
      letIn.append(' ').append(asked(as(Role.ATHLETE), method, path, held) ? 'T' : '-');
      letIn.append(' ').append(asked(new Client(server.port()), method, path, own) ? 's' : '-');
      told.put(path + " " + method, letIn.toString());
    }
    StringBuilder now = new StringBuilder();
    told.forEach((route, letIn) -> now.append(letIn).append("  ").append(route).append('\n'));
    String written = new String(Objects.requireNonNull(RolesTest.class.getResourceAsStream("rights.txt")).readAllBytes(), StandardCharsets.UTF_8).replaceAll("(?m)^#.*\n", "");
    assertThat(now.toString()).isEqualTo(written);
    assertThat(bench.athletes().byId(own)).as("no request had a form's token, so nothing was done").isPresent();
  }

  private static char letter(Role role) {
    return role == Role.ATHLETE ? 'T' : role.name().charAt(0);
  }

  private static boolean asked(Client who, String method, String path, long athlete) {
    String at = path.replace("<name>", "boundwright.css");
    at = at.startsWith("/athlete/") ? at.replaceFirst("\\{id}", String.valueOf(athlete)) : at;
    at = at.replaceAll("\\{[a-z]+}", "999999");
    return !isShut(method.equals("GET") ? who.get(at) : who.post(at, "name", "x"));
  }

  /** All addresses that a role can find by following links, and all routes that take no number. */
  private List<String> pages(Client who, long athlete) {
    List<String> out = new ArrayList<>();
    for (String route : server.routes()) {
      if (route.startsWith("GET ") && !route.contains("<") && !route.contains("{code}") && !route.contains("{secret}")) {
        String at = route.substring(4).replaceFirst("\\{id}", String.valueOf(athlete));
        if (!at.contains("{")) {
          out.add(at);
        }
      }
    }
    Matcher links = Pattern.compile("href=\"(/[^\"#]*)\"").matcher(who.get("/").body() + who.get("/season/week").body());
    while (links.find()) {
      String to = links.group(1).replace("&amp;", "&");
      if (!to.startsWith("/assets/") && !out.contains(to)) {
        out.add(to);
      }
    }
    return out;
  }

  private static String text(HttpResponse<byte[]> answer) {
    String kind = answer.headers().firstValue("Content-Type").orElse("");
    if (!kind.contains("pdf")) {
      return new String(answer.body(), StandardCharsets.UTF_8);
    }
    try (PDDocument paper = Loader.loadPDF(answer.body())) {
      return new PDFTextStripper().getText(paper);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aReaderFindsNoBodyInAnyAnswer() {
    Client reader = as(Role.READER);
    int read = 0;
    for (long athlete : List.of(own, held)) {
      for (String at : pages(reader, athlete)) {
        HttpResponse<byte[]> answer = reader.bytes(at);
        read += answer.statusCode() == 200 ? 1 : 0;
        for (String word : OF_BODIES) {
          assertThat(text(answer)).as(at).doesNotContain(word);
        }
        for (String word : at.equals("/sources") ? List.<String>of() : BODY_WORDS) {
          assertThat(text(answer)).as(at).doesNotContainIgnoringCase(word);
        }
      }
    }
    assertThat(read).as("pages that a reader sees").isGreaterThan(15);
    assertThat(as(Role.HEAD_COACH).get("/athlete/" + own + "/care").body()).as("the words are there to be found").contains("zzshinzz");
    assertThat(as(Role.HEAD_COACH).get("/athlete/" + own + "/growth").body()).contains("zznursezz", "cm a year");
    assertThat(as(Role.HEAD_COACH).get("/athlete/" + own + "/back").body()).as("the words are there to be found").contains("zzclinicianzz");
    assertThat(reader.get("/athlete/" + held).body()).as("the answer stays").contains("No bounding now");
  }

  @Test
  void anAthleteFindsNobodyElse() {
    Client athlete = as(Role.ATHLETE);
    List<String> names = bench.athletes().all().stream().filter(a -> a.id() != own).map(Athlete::name).toList();
    int read = 0;
    for (long number : List.of(own, held)) {
      for (String at : pages(athlete, number)) {
        HttpResponse<byte[]> answer = athlete.bytes(at);
        read += answer.statusCode() == 200 ? 1 : 0;
        String text = text(answer);
        names.forEach(n -> assertThat(text).as(at).doesNotContain(n));
        assertThat(text).as(at).doesNotContain("zzphysiciantoldzz");
      }
    }
    assertThat(read).as("pages that an athlete sees").isGreaterThan(8);
    assertThat(athlete.get("/athlete/" + own + "/care").body()).as("their own").contains("zzshinzz");
    HttpResponse<String> told =
        athlete.post(
            "/athlete/" + own + "/pain", "csrf", Client.hidden(athlete.get("/athlete/" + own + "/care").body(), "csrf"), "token",
            Client.hidden(athlete.get("/athlete/" + own + "/care").body(), "token"), "area", "left heel", "level", "2", "date", "");
    assertThat(told.statusCode()).as(told.body()).isEqualTo(200);
    assertThat(bench.care().care(own, TODAY).pains()).anyMatch(p -> p.area().equals("left heel"));
  }

  @Test
  void anotherClubHasAStoreOfItsOwn() {
    Club other = server.accounts().addClub("Other pit");
    Client head = in(Role.HEAD_COACH, other.id(), null);
    assertThat(head.get("/").body()).doesNotContain(bench.athletes().all().get(0).name());
    String form = head.get("/athlete/new").body();
    HttpResponse<String> added =
        head.post("/athlete/new", "csrf", Client.hidden(form, "csrf"), "name", OTHERS, "level", "INTERMEDIATE", "foot", "RIGHT", "rung", "4", "token",
            Client.hidden(form, "token"));
    assertThat(head.get("/").body()).as(added.body()).contains(OTHERS);
    List<String> names = bench.athletes().all().stream().map(Athlete::name).toList();
    for (String at : pages(head, own)) {
      // the file that shows how a season is written is the same everywhere, and invented
      String text = at.equals("/season/example.json") ? "" : text(head.bytes(at));
      names.forEach(n -> assertThat(text).as("other club " + at).doesNotContain(n));
    }
    Client first = as(Role.HEAD_COACH);
    for (String at : pages(first, own)) {
      assertThat(text(first.bytes(at))).as("first club " + at).doesNotContain(OTHERS);
    }
    assertThat(folder.resolve("clubs/" + other.id() + "/boundwright.db")).exists();
    assertThat(bench.athletes().byName(OTHERS)).isEmpty();
  }

  @Test
  void aFileOfAnotherClubArrivesThere() {
    Club other = server.accounts().addClub("Other pit");
    Client head = in(Role.HEAD_COACH, other.id(), null);
    HttpResponse<String> read = head.upload("/import", Client.hidden(head.get("/import").body(), "csrf"), "squad.csv", "name;born\n" + OTHERS + ";2010-11-03\n");
    assertThat(read.statusCode()).as(read.body()).isEqualTo(200);
    assertThat(read.body()).contains("separated by semicolons").contains(OTHERS);
  }

  @Test
  void anAthleteChangesClubsWhenTheyAgreeOneCoachOffersAndTheOtherTakes() {
    Club other = server.accounts().addClub("Other pit");
    Client giving = as(Role.HEAD_COACH);
    Client taking = in(Role.HEAD_COACH, other.id(), null);
    Athlete who = bench.athletes().byId(own).orElseThrow();
    Client theirs = as(Role.ATHLETE);
    String csrf = Client.hidden(giving.get("/athlete/" + own + "/edit").body(), "csrf");
    HttpResponse<String> unasked = giving.post("/athlete/" + own + "/transfer", "csrf", csrf, "club", String.valueOf(other.id()));
    assertThat(unasked.statusCode()).isEqualTo(422);
    assertThat(unasked.body()).contains("may not go to another club").contains("Nothing was changed");
    bench.people().say(own, Scope.MOVE, true);
    assertThat(giving.post("/athlete/" + own + "/transfer", "csrf", csrf, "club", String.valueOf(other.id())).body()).contains("Offered to Other pit");
    String offers = taking.get("/accounts").body();
    assertThat(offers).contains("Offered by other clubs").contains(who.name());
    assertThat(giving.get("/accounts").body()).as("nobody offers this club anything").doesNotContain("Offered by other clubs");
    String offer = offers.replaceAll("(?s).*/transfers/(\\d+)/take.*", "$1");
    assertThat(giving.post("/transfers/" + offer + "/take", "csrf", csrf).body()).as("not theirs to take").contains("not there any more");
    HttpResponse<String> there = taking.post("/transfers/" + offer + "/take", "csrf", Client.hidden(offers, "csrf"));
    assertThat(there.body()).contains(who.name());
    assertThat(bench.athletes().byId(own)).isEmpty();
    assertThat(giving.get("/").body()).doesNotContain(who.name());
    assertThat(taking.get("/accounts").body()).doesNotContain("Offered by other clubs").contains("athlete: " + who.name());
    assertThat(theirs.get("/").body()).as("their own account came along, they log in anew").doesNotContain(who.name());
  }

  @Test
  void somebodyInTwoClubsLooksAtOneAtATime() {
    Club other = server.accounts().addClub("Other pit");
    Client head = as(Role.HEAD_COACH);
    long account = bench.accounts().byLogin("head_coach1").orElseThrow().id();
    bench.accounts().setMembership(new Membership(account, other.id(), Role.READER, null));
    String name = bench.athletes().all().get(0).name();
    assertThat(head.get("/").body()).contains(name);
    head.post("/me/club", "csrf", Client.hidden(head.get("/me").body(), "csrf"), "club", String.valueOf(other.id()));
    assertThat(head.get("/").body()).doesNotContain(name);
    assertThat(head.get("/settings").statusCode()).as("a reader there").isEqualTo(403);
  }

  @Test
  void theAthleteWhoIsAddedTwiceUnderOneNumberIsNotMistaken() {
    Club other = server.accounts().addClub("Other pit");
    Client head = in(Role.HEAD_COACH, other.id(), null);
    head.get("/");
    try (Workbench theirs = Workbench.open(folder.resolve("clubs/" + other.id()), DAY)) {
      Athlete same = theirs.athletes().add(new Athlete(0, OTHERS, Level.INTERMEDIATE, Foot.RIGHT, 4));
      assertThat(bench.athletes().byId(same.id())).as("the same number in both stores").isPresent();
      assertThat(head.get("/athlete/" + same.id()).body()).contains(OTHERS);
      assertThat(as(Role.HEAD_COACH).get("/athlete/" + same.id()).body()).doesNotContain(OTHERS);
    }
  }
}
