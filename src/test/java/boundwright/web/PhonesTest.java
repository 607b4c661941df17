package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Club;
import boundwright.account.Role;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.pairing.Pairing;
import boundwright.pairing.PhoneRights;
import boundwright.store.Workbench;
import boundwright.web.door.Right;
import boundwright.web.door.Rights;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Phones on the club's Wi-Fi: they come by an address of this machine that is not the loopback. */
class PhonesTest {
  @TempDir Path folder;
  private final Watch watch = new Watch(Instant.parse("2026-05-12T09:00:00Z"));
  private Workbench bench;
  private WebServer server;
  private Client laptop;
  private Client phone;
  private Athlete ilka;

  /** A clock that the test moves. */
  private static final class Watch extends Clock {
    private Instant now;

    Watch(Instant now) {
      this.now = now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Instant instant() {
      return now;
    }

    void pass(Duration time) {
      now = now.plus(time);
    }
  }

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, watch);
    server = WebServer.start(bench, "all", 0);
    laptop = Client.atTheMachine(server);
    phone = Network.phone(server.port());
    ilka = bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  private static HttpResponse<String> pair(Client who, String code, String name) {
    HttpResponse<String> page = who.get("/pair/" + code);
    String csrf = page.body().contains("name=\"csrf\"") ? Client.hidden(page.body(), "csrf") : "";
    return who.post("/pair/" + code, "csrf", csrf, "name", name);
  }

  private String code(PhoneRights rights) {
    return server.pairing().offer(rights).text();
  }

  private String laptopToken() {
    return Client.hidden(laptop.get("/settings").body(), "csrf");
  }

  private static String token(Client who) {
    return Client.hidden(who.get("/athlete/1").body(), "csrf");
  }

  @Test
  void aStrangerSeesOneSentenceAndNothingElse() {
    for (String path : List.of("/", "/tapes", "/athlete/" + ilka.id(), "/meet", "/export.csv", "/phones", "/worker.js", "/no-such-page")) {
      HttpResponse<String> answer = phone.get(path);
      assertThat(answer.statusCode()).as(path).isEqualTo(401);
      assertThat(answer.body()).as(path).contains("ask the coach for a code").doesNotContain("Ilka").doesNotContain("/settings");
    }
    assertThat(phone.get("/assets/boundwright.css").statusCode()).isEqualTo(200);
  }

  @Test
  void twoPhonesArePairedAndOneIsShutOutAtOnce() {
    Client other = Network.phone(server.port());
    assertThat(pair(phone, code(PhoneRights.LOG), "Mara's phone").statusCode()).isEqualTo(200);
    assertThat(pair(other, code(PhoneRights.ALL), "Second coach").statusCode()).isEqualTo(200);
    assertThat(phone.get("/").body()).contains("Ilka");
    assertThat(other.get("/athlete/" + ilka.id() + "/edit").statusCode()).isEqualTo(200);
    assertThat(laptop.get("/phones").body()).contains("Mara&#39;s phone").contains("Second coach").contains("may log").contains("12 May, 09:00");

    long first = bench.phones().all().get(0).id();
    laptop.post("/phones/" + first + "/revoke", "csrf", laptopToken());
    assertThat(phone.get("/").statusCode()).isEqualTo(401);
    assertThat(other.get("/").statusCode()).isEqualTo(200);
    laptop.post("/phones/revoke-all", "csrf", laptopToken());
    assertThat(other.get("/").statusCode()).isEqualTo(401);
  }

  @Test
  void aPhoneThatMayLogChangesNothingElse() {
    pair(phone, code(PhoneRights.LOG), "Mara");
    String csrf = token(phone);
    HttpResponse<String> erase = phone.post("/athlete/" + ilka.id() + "/erase", "csrf", csrf, "name", "Ilka Sandfoot");
    assertThat(erase.statusCode()).isEqualTo(403);
    assertThat(erase.body()).contains("This phone may not do that");
    assertThat(phone.post("/phones/code", "csrf", csrf, "rights", "ALL").statusCode()).isEqualTo(403);
    assertThat(bench.athletes().all()).hasSize(1);
    assertThat(phone.get("/").body()).doesNotContain("href=\"/settings\"").doesNotContain("href=\"/phones\"");
    laptop.post("/phones/1/allow", "csrf", laptopToken(), "rights", "ALL");
    assertThat(phone.post("/athlete/" + ilka.id() + "/erase", "csrf", csrf, "name", "Ilka Sandfoot").statusCode()).isEqualTo(200);
    assertThat(bench.athletes().all()).isEmpty();
    assertThat(phone.get("/phones").statusCode()).as("only the laptop lets phones in").isEqualTo(403);
  }

  @Test
  void aPhoneThatMayLogTakesBackOnlyWhatIsOfToday() {
    pair(phone, code(PhoneRights.LOG), "Mara");
    Rep old = bench.logbook().log(rep(LocalDate.parse("2026-05-11")));
    Rep fresh = bench.logbook().log(rep(LocalDate.parse("2026-05-12")));
    String csrf = token(phone);
    for (Rep r : List.of(old, fresh)) {
      phone.post(
          "/athlete/" + ilka.id() + "/undo/" + r.id(), "csrf", csrf, "sequence", "RRL x2", "steps", "4", "surface", "TRACK", "sand", "yes");
    }
    assertThat(bench.reps().inOrder(ilka.id())).extracting(Rep::id).containsExactly(old.id());
  }

  private Rep rep(LocalDate day) {
    return new Rep(0, ilka.id(), day, Sequence.parse("RRL x2"), 4, Surface.TRACK, List.of(), null, Outcome.IN, 12.5, List.of());
  }

  @Test
  void aCodeIsGoodForOnePhoneAndTenMinutes() {
    String once = code(PhoneRights.LOG);
    assertThat(phone.get("/pair/" + once).statusCode()).as("a camera may open it first").isEqualTo(200);
    assertThat(pair(phone, once, "First").statusCode()).isEqualTo(200);
    Client late = Network.phone(server.port());
    assertThat(pair(late, once, "Replayed").statusCode()).isEqualTo(403);
    String old = code(PhoneRights.LOG);
    watch.pass(Pairing.CODE_LASTS);
    assertThat(pair(late, old, "Too late").statusCode()).isEqualTo(403);
    assertThat(late.get("/pair/" + old).body()).contains("A code lasts 10 minutes");
    String future = code(PhoneRights.LOG);
    watch.pass(Duration.ofHours(-1));
    assertThat(pair(late, future, "Clock set back").statusCode()).isEqualTo(403);
    String withdrawn = code(PhoneRights.LOG);
    laptop.post("/phones/code/withdraw", "csrf", laptopToken());
    assertThat(late.get("/pair/" + withdrawn).statusCode()).isEqualTo(403);
    assertThat(bench.phones().all()).hasSize(1);
  }

  @Test
  void tryingCodesOutIsStopped() {
    String right = code(PhoneRights.LOG);
    List<Integer> statuses = new ArrayList<>();
    for (int i = 0; i < 7; i++) {
      statuses.add(phone.get("/pair/" + "0123456789abcdef0123456789abcde" + i).statusCode());
    }
    assertThat(statuses).containsExactly(403, 403, 403, 403, 403, 429, 429);
    assertThat(phone.get("/pair/" + right).statusCode()).as("the right one is not told from a wrong one either").isEqualTo(429);
    try (WebServer second = WebServer.start(bench, "all", 0)) {
      assertThat(Network.phone(second.port()).get("/pair/" + right).statusCode()).as("another server on the same store").isEqualTo(429);
    }
    watch.pass(Duration.ofMinutes(10));
    assertThat(pair(phone, code(PhoneRights.LOG), "Patient").statusCode()).isEqualTo(200);
  }

  @Test
  void phonesOfAnAccountAreListedUnderAccountAndShutOutThere() {
    Client mara = in("mara", Role.ASSISTANT);
    Client otis = in("otis", Role.ASSISTANT);
    assertThat(pair(phone, codeOf(mara), "Mara's phone").statusCode()).isEqualTo(200);
    assertThat(mara.get("/me").body()).contains("Mara&#39;s phone").contains("may log");
    assertThat(otis.get("/me").body()).doesNotContain("Mara&#39;s phone");
    String shut = "/me/phone/" + bench.phones().all().get(0).id() + "/revoke";
    assertThat(otis.post(shut, "csrf", Client.hidden(otis.get("/me").body(), "csrf")).statusCode()).isEqualTo(404);
    assertThat(phone.get("/").statusCode()).isEqualTo(200);
    assertThat(mara.post(shut, "csrf", Client.hidden(mara.get("/me").body(), "csrf")).body()).contains("That phone is shut out.");
    assertThat(phone.get("/").statusCode()).isEqualTo(401);
    assertThat(bench.accounts().notes(Club.FIRST, 1).get(0).what()).isEqualTo("shut a phone out");
  }

  private Client in(String login, Role role) {
    String link = "/enter/" + server.accounts().link(server.accounts().make(login, login, role, Club.FIRST, null).id());
    Client client = new Client(server.port());
    assertThat(client.post(link, "csrf", Client.hidden(client.get(link).body(), "csrf"), "password", "four bounds then sand").statusCode()).isEqualTo(200);
    return client;
  }

  private static String codeOf(Client who) {
    String page = who.post("/phones/code", "csrf", Client.hidden(who.get("/me").body(), "csrf"), "rights", "LOG").body();
    Matcher m = Pattern.compile("/pair/([0-9a-f]{32})").matcher(page);
    assertThat(m.find()).as(page).isTrue();
    return m.group(1);
  }

  @Test
  void aNameIsAskedForAndTheCodeStillWaits() {
    String code = code(PhoneRights.LOG);
    assertThat(pair(phone, code, " ").statusCode()).isEqualTo(422);
    assertThat(pair(phone, code, "x".repeat(61)).body()).contains("61 characters");
    assertThat(pair(phone, code, "Mara <b>").statusCode()).isEqualTo(200);
    assertThat(laptop.get("/phones").body()).contains("Mara &lt;b&gt;");
  }

  @Test
  void onlyTheAddressesThatWereToldAreOurs() throws IOException {
    String address = Network.address();
    int port = server.port();
    for (String host : List.of("evil.example:" + port, address + ".evil.example:" + port, address + ":" + (port + 1), address, "10.9.8.7:" + port, "")) {
      assertThat(status(address, "Host: " + host + "\r\n", "/")).as(host).isIn(400, 421);
    }
    assertThat(status(address, "Host: " + address + ":" + port + "\r\n", "/")).isEqualTo(401);
    assertThat(status(address, "Host: 127.0.0.1:" + port + "\r\n", "/")).as("the socket says who comes, not the Host").isEqualTo(401);
    assertThat(status(address, "Host: localhost\r\nX-Forwarded-For: 127.0.0.1\r\n", "/")).isEqualTo(401);
    assertThat(status("127.0.0.1", "Host: 127.0.0.1:" + port + "\r\n", "/")).as("others can reach the pages, so everybody logs in").isEqualTo(401);
    assertThat(status("127.0.0.1", "Host: " + address + ":" + port + "\r\n", "/")).isEqualTo(401);
  }

  @Test
  void whereNobodyElseComesTheMachineItselfNeedsNoLoginAndAProxyDoes() throws IOException {
    server.close();
    server = WebServer.start(bench, "127.0.0.1", 0);
    int port = server.port();
    assertThat(status("127.0.0.1", "Host: 127.0.0.1:" + port + "\r\n", "/")).isEqualTo(200);
    for (String header : List.of("X-Forwarded-For: 203.0.113.9", "Forwarded: for=203.0.113.9", "Via: 1.1 x", "X-Real-IP: 203.0.113.9", "X-Forwarded-Proto: https")) {
      assertThat(status("127.0.0.1", "Host: 127.0.0.1:" + port + "\r\n" + header + "\r\n", "/")).as("passed on by a proxy").isEqualTo(401);
    }
  }

  private int status(String to, String headers, String path) throws IOException {
    try (Socket socket = new Socket(InetAddress.getByName(to), server.port())) {
      PrintWriter out = new PrintWriter(socket.getOutputStream(), false, StandardCharsets.US_ASCII);
      out.print("GET " + path + " HTTP/1.1\r\n" + headers + "Connection: close\r\n\r\n");
      out.flush();
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return Integer.parseInt(answer.substring(9, 12));
    }
  }

  @Test
  void oddWaysToWriteAPathOpenNothing() throws IOException {
    String address = Network.address();
    for (String path : List.of("//", "/assets/..%2f", "/assets/../settings", "/pair/../settings", "/%2e%2e/settings", "/ASSETS/../", "/settings;x=/assets/", "/pair/x/../../settings", "/trust/../settings")) {
      assertThat(status(address, "Host: " + address + ":" + server.port() + "\r\n", path)).as(path).isIn(400, 401, 403, 404);
    }
  }

  /** All routes x everybody who may ask: what is let in is what the table says, measured at the socket. */
  @Test
  void everyRouteIsInTheTableAndAnswersSo() {
    pair(phone, code(PhoneRights.LOG), "Logs");
    Client all = Network.phone(server.port());
    pair(all, code(PhoneRights.ALL), "Changes");
    Client stranger = Network.phone(server.port());
    List<String> routes = server.routes();
    assertThat(routes).hasSizeGreaterThan(90);
    for (String route : routes) {
      String method = route.substring(0, route.indexOf(' '));
      String path = route.substring(route.indexOf(' ') + 1);
      assertThat(Rights.of(method, path)).as("not in the table of rights: " + route).isPresent();
      Right right = Rights.of(method, path).orElseThrow().right();
      String at = path.replace("<name>", "boundwright.css").replaceAll("\\{[a-z]+}", "999999");
      assertThat(isShut(stranger, method, at)).as("stranger " + route).isEqualTo(right != Right.OPEN);
      assertThat(isShut(phone, method, at)).as("log " + route).isEqualTo(!right.isIn(PhoneRights.LOG));
      assertThat(isShut(all, method, at)).as("all " + route).isEqualTo(!right.isIn(PhoneRights.ALL));
    }
    assertThat(bench.athletes().all()).hasSize(1);
    assertThat(Rights.of("GET", "/no-such-page")).isEmpty();
    assertThat(Rights.of("DELETE", "/")).isEmpty();
  }

  /** Whether the door shut on it. A write without the form's token is turned away too, but only after the rights were asked. */
  private static boolean isShut(Client who, String method, String path) {
    HttpResponse<String> answer = method.equals("GET") ? who.get(path) : who.post(path, "name", "x");
    return answer.statusCode() == 401
        || answer.body().contains("This phone may not do that")
        || answer.body().contains("No phone does this");
  }

  @Test
  void theSecretIsKeptOnlyAsItsHash() {
    String code = code(PhoneRights.LOG);
    HttpResponse<String> page = phone.get("/pair/" + code);
    HttpResponse<String> in =
        new Client(phone.base()).post("/pair/" + code, new String[] {"Cookie", cookieOf(page)}, "csrf", Client.hidden(page.body(), "csrf"), "name", "M");
    String set = in.previousResponse().orElseThrow().headers().firstValue("Set-Cookie").orElseThrow();
    assertThat(set).startsWith("boundwright_phone=").contains("HttpOnly").contains("SameSite=Strict").doesNotContain("Secure");
    String secret = set.substring(set.indexOf('=') + 1, set.indexOf(';'));
    assertThat(secret).matches("[0-9a-f]{32}");
    server.close();
    bench.close();
    byte[] stored = read(folder.resolve("boundwright.db"));
    assertThat(new String(stored, StandardCharsets.ISO_8859_1)).doesNotContain(secret).doesNotContain(code);
    bench = Workbench.open(folder, watch);
    server = WebServer.start(bench, "all", 0);
    assertThat(bench.phones().all()).hasSize(1);
  }

  private static String cookieOf(HttpResponse<String> page) {
    String set = page.headers().firstValue("Set-Cookie").orElseThrow();
    return set.substring(0, set.indexOf(';'));
  }

  private static byte[] read(Path file) {
    try {
      return java.nio.file.Files.readAllBytes(file);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void whenAPhoneWasLastSeenIsKeptRoughly() {
    pair(phone, code(PhoneRights.LOG), "Mara");
    watch.pass(Duration.ofMinutes(4));
    phone.get("/");
    assertThat(bench.phones().all().get(0).lastSeen()).isEqualTo(Instant.parse("2026-05-12T09:00:00Z"));
    watch.pass(Duration.ofMinutes(2));
    phone.get("/");
    assertThat(bench.phones().all().get(0).lastSeen()).isEqualTo(Instant.parse("2026-05-12T09:06:00Z"));
  }
}
