package boundwright.web.department;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Account;
import boundwright.account.Bond;
import boundwright.account.Bonds;
import boundwright.account.Club;
import boundwright.account.Identity;
import boundwright.account.Noted;
import boundwright.account.Role;
import boundwright.store.Workbench;
import boundwright.web.Opening;
import boundwright.web.WebServer;
import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a real department's server would never send: one thing about an answer is wrong at a time, and the same answer with nothing wrong lets
 * in. What has to be checked: OpenID Connect Core 1.0, 3.1.3.7; RFC 9207; RFC 7636.
 */
class ForgedTest {
  private static final String CLIENT = "boundwright";
  private static final String SECRET = "a-secret-for-trials-of-48-characters-xxxxxxxxxxx";

  /** The machine's clock, set on by hand; the library that checks tokens reads the machine's own. */
  private static final class Watch extends Clock {
    private Duration ahead = Duration.ZERO;

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
      return Clock.systemUTC().instant().plus(ahead);
    }
  }

  @TempDir Path folder;
  private final Watch watch = new Watch();
  private FakeIssuer issuer;
  private Workbench bench;
  private WebServer server;
  private Account mara;

  @BeforeEach
  void open() throws IOException {
    issuer = new FakeIssuer();
    bench = Workbench.open(folder, watch);
    DepartmentSetting setting = new DepartmentSetting("Invented Department", URI.create(issuer.at()), CLIENT, SECRET, false, "");
    server = WebServer.start(bench, new Opening("127.0.0.1", 0, false, "", folder.resolve("keys"), "https://localhost", setting));
    server.reach().behind("https://localhost:" + server.port());
    mara = server.accounts().make("mara", "Mara Teststrand", Role.ASSISTANT, Club.FIRST, null);
    bench.bonds().add(new Bond(new Identity(issuer.at(), "person-7"), mara.id(), watch.instant()));
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
    issuer.close();
  }

  private String out() {
    return server.reach().outside();
  }

  /** What a browser was sent away with. */
  private Map<String, String> away(Visitor who) {
    HttpResponse<String> sent = who.post(out() + "/login/department", "csrf", Visitor.field(who.get(out() + "/login").body(), "csrf"));
    return Visitor.query(Visitor.refresh(sent));
  }

  private HttpResponse<String> back(Visitor who, Map<String, String> brought) {
    StringBuilder query = new StringBuilder();
    brought.forEach((k, v) -> query.append(query.length() == 0 ? "?" : "&").append(k).append('=').append(v));
    return who.get(out() + "/login/department/back" + query);
  }

  private Map<String, String> code(Map<String, String> away) {
    Map<String, String> out = new LinkedHashMap<>();
    out.put("code", "given");
    out.put("state", away.getOrDefault("state", ""));
    out.put("iss", issuer.at());
    return out;
  }

  private JWTClaimsSet.Builder right(Map<String, String> away) {
    Instant now = Clock.systemUTC().instant();
    return new JWTClaimsSet.Builder()
        .issuer(issuer.at())
        .subject("person-7")
        .audience(CLIENT)
        .issueTime(Date.from(now))
        .expirationTime(Date.from(now.plusSeconds(300)))
        .claim("nonce", away.get("nonce"));
  }

  private static void isIn(HttpResponse<String> answer) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(Visitor.refresh(answer)).isEqualTo("/");
  }

  private void isRefused(Visitor who, HttpResponse<String> answer, String words) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(422);
    assertThat(answer.body()).contains(words).doesNotContain("Exception").doesNotContain("boundwright.web.").doesNotContain("<pre>\tat");
    assertThat(answer.headers().firstValue("Refresh")).isEmpty();
    assertThat(who.get(out() + "/").statusCode()).as("nobody came in").isEqualTo(401);
    assertThat(server.accounts().kept().sessions(mara.id())).isEmpty();
  }

  @Test
  void aRightAnswerLetsInOnceAndNoForgedOneDoes() throws JOSEException {
    Visitor who = new Visitor();
    String doesNotHold = "does not hold: not signed by it, meant for somebody else, or out of date";
    String[] whats = {"another key", "wrong audience", "other party", "others too", "expired", "not yet", "wrong nonce", "no nonce", "wrong issuer", "unsigned", "signed with the secret"};
    for (String what : whats) {
      Map<String, String> away = away(who);
      JWTClaimsSet.Builder claims = right(away);
      Date hourAgo = Date.from(Clock.systemUTC().instant().minusSeconds(3600));
      String token =
          switch (what) {
            case "another key" -> FakeIssuer.signed(FakeIssuer.FORGED, claims.build());
            case "wrong audience" -> FakeIssuer.signed(FakeIssuer.OWN, claims.audience("somebody-else").build());
            case "other party" -> FakeIssuer.signed(FakeIssuer.OWN, claims.claim("azp", "somebody-else").build());
            case "others too" -> FakeIssuer.signed(FakeIssuer.OWN, claims.audience(List.of(CLIENT, "somebody-else")).build());
            case "expired" -> FakeIssuer.signed(FakeIssuer.OWN, claims.expirationTime(hourAgo).build());
            case "not yet" -> FakeIssuer.signed(FakeIssuer.OWN, claims.issueTime(Date.from(hourAgo.toInstant().plusSeconds(7200))).expirationTime(Date.from(hourAgo.toInstant().plusSeconds(9000))).build());
            case "wrong nonce" -> FakeIssuer.signed(FakeIssuer.OWN, claims.claim("nonce", "0".repeat(32)).build());
            case "no nonce" -> FakeIssuer.signed(FakeIssuer.OWN, claims.claim("nonce", null).build());
            case "wrong issuer" -> FakeIssuer.signed(FakeIssuer.OWN, claims.issuer("https://elsewhere.invalid").build());
            case "unsigned" -> new PlainJWT(claims.build()).serialize();
            default -> bySecret(claims.build());
          };
      issuer.gives(token);
      isRefused(who, back(who, code(away)), doesNotHold);
    }
    for (String noToken : new String[] {"", "x", "a.b.c"}) {
      Map<String, String> away = away(who);
      issuer.gives(noToken);
      isRefused(who, back(who, code(away)), "no answer of Invented Department");
    }
    Map<String, String> away = away(who);
    issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(away).build()));
    HttpResponse<String> in = back(who, code(away));
    isIn(in);
    assertThat(who.get(out() + "/me").body()).contains("Mara Teststrand");
    assertThat(server.accounts().kept().notes(Club.FIRST, 50).stream().map(Noted::what))
        .contains("logged in at the department").filteredOn("was refused at the department's login"::equals).hasSize(whats.length + 3);

    // the same address once more, in the same browser
    HttpResponse<String> again = back(who, code(away));
    assertThat(again.statusCode()).isEqualTo(422);
    assertThat(again.body()).contains("it works once, within 10 minutes");
  }

  private static String bySecret(JWTClaimsSet claims) throws JOSEException {
    SignedJWT jwt = new SignedJWT(new JWSHeader(JWSAlgorithm.HS256), claims);
    jwt.sign(new MACSigner(SECRET));
    return jwt.serialize();
  }

  @Test
  void aWayBackHoldsForItsStateItsBrowserAndTenMinutes() throws JOSEException {
    String words = "it works once, within 10 minutes, and in the browser that set out";
    Visitor who = new Visitor();
    Map<String, String> away = away(who);
    assertThat(away)
        .containsEntry("response_type", "code").containsEntry("scope", "openid").containsEntry("client_id", CLIENT).containsEntry("code_challenge_method", "S256")
        .containsEntry("redirect_uri", out() + "/login/department/back");
    assertThat(away.getOrDefault("state", "")).hasSize(32);
    assertThat(away.getOrDefault("nonce", "")).hasSize(32).isNotEqualTo(away.get("state"));
    assertThat(away.getOrDefault("code_challenge", "")).hasSize(43);
    issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(away).build()));
    int before = issuer.asked();
    Map<String, String> changed = code(away);
    for (String state : new String[] {"", "x", "0".repeat(32), away.get("state") + "0"}) {
      changed.put("state", state);
      isRefused(who, back(who, changed), words);
    }
    isRefused(who, who.get(out() + "/login/department/back"), words);

    // an address that another browser was sent away with lets this one in to nobody's account
    Visitor lured = new Visitor();
    Map<String, String> others = away(who);
    isRefused(lured, back(lured, code(others)), words);
    away(lured);
    isRefused(lured, back(lured, code(away(who))), words);

    Map<String, String> late = away(who);
    watch.ahead = Bonds.VISIT_LASTS;
    isRefused(who, back(who, code(late)), words);
    watch.ahead = Duration.ZERO;
    assertThat(issuer.asked()).as("for none of these was the department asked").isEqualTo(before);

    // two pages may be away from one browser
    Map<String, String> one = away(who);
    Map<String, String> two = away(who);
    issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(one).build()));
    isIn(back(who, code(one)));
    issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(two).build()));
    isIn(back(who, code(two)));
  }

  @Test
  void anAnswerOfAnotherServerNoAnswerAndWhoIsShutOutHereAreRefused() throws JOSEException {
    Visitor who = new Visitor();
    String none = "no answer of Invented Department";
    for (String iss : new String[] {"https://elsewhere.invalid", ""}) {
      Map<String, String> away = away(who);
      issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(away).build()));
      Map<String, String> brought = code(away);
      if (iss.isEmpty()) {
        brought.remove("iss");
      } else {
        brought.put("iss", iss);
      }
      isRefused(who, back(who, brought), none);
    }
    Map<String, String> empty = code(away(who));
    empty.remove("code");
    isRefused(who, back(who, empty), none);
    Map<String, String> refused = code(away(who));
    refused.remove("code");
    refused.put("error", "access_denied");
    isRefused(who, back(who, refused), "did not say who you are");
    Map<String, String> failed = code(away(who));
    failed.put("error", "server_error");
    isRefused(who, back(who, failed), "could not log you in");

    // and who is shut out here, although the answer is right
    server.accounts().setActive(mara.id(), false);
    Map<String, String> away = away(who);
    issuer.gives(FakeIssuer.signed(FakeIssuer.OWN, right(away).build()));
    isRefused(who, back(who, code(away)), "No account here is connected");
  }

  @Test
  void aServerThatIsDownOrAnotherIsSaidAndThePasswordStillWorks() {
    String link = "/enter/" + server.accounts().link(mara.id());
    Visitor who = new Visitor();
    assertThat(who.post(out() + link, "csrf", Visitor.field(who.get(out() + link).body(), "csrf"), "password", "four bounds then sand").statusCode()).isEqualTo(303);

    Visitor other = new Visitor();
    issuer.saysItIs("https://elsewhere.invalid");
    assertThat(said(other)).contains("Invented Department is not set up right").contains("Password and passkeys work as always").contains("name=\"password\"");
    int asked = issuer.asked();
    assertThat(said(other)).contains("is not set up right");
    assertThat(issuer.asked()).as("left alone for some seconds").isEqualTo(asked);
    issuer.saysItIs(issuer.at());
    issuer.takesCodesAt("http://192.0.2.7/token");
    watch.ahead = Department.LEFT_ALONE;
    assertThat(said(other)).as("a secret goes nowhere over plain http").contains("is not set up right");
    issuer.takesCodesAt(issuer.at() + "/token");
    watch.ahead = Department.LEFT_ALONE.multipliedBy(2);
    assertThat(away(other)).as("it is well again").containsEntry("scope", "openid");
    assertThat(other.get(out() + "/login").body()).doesNotContain("is not set up right");

    issuer.close();
    watch.ahead = Department.DESCRIBED.plus(Department.LEFT_ALONE.multipliedBy(2));
    assertThat(said(other)).contains("Invented Department cannot be reached just now");
    String csrf = Visitor.field(other.get(out() + "/login").body(), "csrf");
    assertThat(other.post(out() + "/login", "csrf", csrf, "login", "mara", "password", "four bounds then sand").statusCode()).isEqualTo(303);
  }

  private String said(Visitor who) {
    HttpResponse<String> sent = who.post(out() + "/login/department", "csrf", Visitor.field(who.get(out() + "/login").body(), "csrf"));
    assertThat(who.location(sent)).isEqualTo(out() + "/login");
    return who.get(out() + "/login").body();
  }
}
