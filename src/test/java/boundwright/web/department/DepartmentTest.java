package boundwright.web.department;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Account;
import boundwright.account.Club;
import boundwright.account.Noted;
import boundwright.account.Role;
import boundwright.store.Workbench;
import boundwright.web.Opening;
import boundwright.web.WebServer;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole way to a department's login and back, over HTTP, with a certified OpenID Provider in a process of its own. */
class DepartmentTest {
  private static final String CLIENT = "boundwright";
  private static final String SECRET = "a-secret-for-trials-of-48-characters-xxxxxxxxxxx";
  private static final String PASSWORD = "four bounds then sand";

  @TempDir static Path folder;
  /** Passwords are taken, too; most tests share it, each with people of its own. */
  private static @Nullable Running both;

  private static Running both() throws IOException {
    Running held = both;
    if (held == null) {
      held = new Running(folder.resolve("both"), false);
      both = held;
    }
    return held;
  }

  /** A department's server and one of ours that knows it. In real time: the former and the library that checks what it signs know no other. */
  private static final class Running implements AutoCloseable {
    private final RealDepartment department = RealDepartment.start();
    private final Workbench bench;
    private final WebServer server;

    Running(Path folder, boolean only) throws IOException {
      bench = Workbench.open(folder, Clock.systemUTC());
      DepartmentSetting setting = new DepartmentSetting("Invented Department", URI.create(department.issuer()), CLIENT, SECRET, only, "");
      server = WebServer.start(bench, new Opening("127.0.0.1", 0, false, "", folder.resolve("keys"), "https://localhost", setting));
      server.reach().behind("https://localhost:" + server.port());
      department.knows(CLIENT, SECRET, out(server) + "/login/department/back");
    }

    @Override
    public void close() throws IOException {
      server.close();
      bench.close();
      department.close();
    }
  }

  @AfterAll
  static void close() throws IOException {
    if (both != null) {
      both.close();
    }
  }

  private static String out(WebServer server) {
    return server.reach().outside();
  }

  private static HttpResponse<String> form(Visitor who, WebServer server, String page, String action, String... fields) {
    String[] all = new String[fields.length + 2];
    all[0] = "csrf";
    all[1] = Visitor.field(who.get(out(server) + page).body(), "csrf");
    System.arraycopy(fields, 0, all, 2, fields.length);
    return who.post(out(server) + action, all);
  }

  /** Logs in at the department and agrees there; the address with which it sends the browser back. */
  private static String atTheDepartment(Visitor who, WebServer server, HttpResponse<String> sent, String person) {
    String back = out(server) + "/login/department/back";
    HttpResponse<String> page = who.follow(who.get(Visitor.refresh(sent)), back);
    for (int i = 0; i < 4 && page.headers().firstValue("Location").isEmpty(); i++) {
      assertThat(page.statusCode()).as(page.body()).isEqualTo(200);
      Matcher action = Pattern.compile("action=\"([^\"]+)\"").matcher(page.body());
      assertThat(action.find()).as(page.body()).isTrue();
      String prompt = Visitor.field(page.body(), "prompt");
      String to = URI.create(who.at()).resolve(action.group(1)).toString();
      page = who.follow(prompt.equals("login") ? who.post(to, "prompt", prompt, "login", person, "password", "any") : who.post(to, "prompt", prompt), back);
    }
    return who.location(page);
  }

  private static Account account(WebServer server, String login, String name) {
    return server.accounts().make(login, name, Role.ASSISTANT, Club.FIRST, null);
  }

  private static Visitor byPassword(WebServer server, Account of) {
    Visitor who = new Visitor();
    String link = "/enter/" + server.accounts().link(of.id());
    assertThat(form(who, server, link, link, "password", PASSWORD).statusCode()).isEqualTo(303);
    return who;
  }

  private static List<String> done(WebServer server) {
    return server.accounts().kept().notes(Club.FIRST, 20).stream().map(Noted::what).toList();
  }

  @Test
  void connectedUnderAccountSomebodyLogsInThereAndDisconnectsAgain() throws IOException {
    WebServer server = both().server;
    assertThat(server.department().trouble()).isEmpty();
    Visitor mara = byPassword(server, account(server, "mara", "Mara Teststrand"));
    HttpResponse<String> back = mara.get(atTheDepartment(mara, server, form(mara, server, "/me", "/me/department"), "m.teststrand"));
    assertThat(back.statusCode()).as(back.body()).isEqualTo(200);
    assertThat(Visitor.refresh(back)).isEqualTo("/me?done=connected");
    assertThat(mara.get(out(server) + "/me").body()).contains("Connected");

    // another browser, in which nobody is logged in
    Visitor other = new Visitor();
    assertThat(other.get(out(server) + "/").statusCode()).isEqualTo(401);
    HttpResponse<String> in = other.get(atTheDepartment(other, server, form(other, server, "/login", "/login/department"), "m.teststrand"));
    assertThat(in.statusCode()).as(in.body()).isEqualTo(200);
    assertThat(other.get(out(server) + "/me").body()).contains("Mara Teststrand").contains("assistant");
    assertThat(done(server)).contains("connected the department's login", "logged in at the department");

    // somebody whom nobody connected is told whom to ask, and nothing is made for them
    Visitor unknown = new Visitor();
    int accounts = server.accounts().kept().all().size();
    HttpResponse<String> refused = unknown.get(atTheDepartment(unknown, server, form(unknown, server, "/login", "/login/department"), "s.omebody"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("No account here is connected with this login").contains("asks the head coach");
    assertThat(unknown.get(out(server) + "/").statusCode()).isEqualTo(401);
    assertThat(server.accounts().kept().all()).hasSize(accounts);

    // out here, and in again without a password there: this server ends its own session only
    form(other, server, "/me", "/logout");
    assertThat(other.get(out(server) + "/me").statusCode()).isEqualTo(401);
    assertThat(form(mara, server, "/me", "/me/department/remove").statusCode()).isEqualTo(303);
    HttpResponse<String> gone = other.get(atTheDepartment(other, server, form(other, server, "/login", "/login/department"), "m.teststrand"));
    assertThat(gone.body()).contains("No account here is connected with this login");
    assertThat(done(server)).contains("disconnected the department's login");
  }

  @Test
  void aLinkIsUsedWithTheDepartmentsLoginInsteadOfAPassword() throws IOException {
    try (Running only = new Running(folder.resolve("only"), true)) {
      WebServer server = only.server;
      Account mara = account(server, "mara", "Mara Teststrand");
      Visitor who = new Visitor();
      String link = "/enter/" + server.accounts().link(mara.id());
      assertThat(form(who, server, link, link, "password", PASSWORD).statusCode()).as("only at the department").isEqualTo(403);
      assertThat(form(who, server, "/login", "/login", "login", "mara", "password", PASSWORD).statusCode()).isEqualTo(403);
      HttpResponse<String> back = who.get(atTheDepartment(who, server, form(who, server, link, link + "/department"), "m.teststrand"));
      assertThat(back.statusCode()).as(back.body()).isEqualTo(200);
      assertThat(who.get(out(server) + "/me").body()).contains("Mara Teststrand").doesNotContain("name=\"password\"");
      assertThat(server.accounts().kept().password(mara.id())).isEmpty();
      assertThat(who.get(out(server) + link).statusCode()).as("used up").isEqualTo(403);

      // the way out while the department's server is down
      Visitor machine = new Visitor();
      String entrance = URI.create(server.entrance()).getPath();
      assertThat(form(machine, server, entrance, entrance).statusCode()).isEqualTo(303);
      assertThat(machine.get(out(server) + "/accounts").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void aLoginThatIsSomebodyElsesUsesNoLinkUp() throws IOException {
    WebServer server = both().server;
    Visitor ilka = byPassword(server, account(server, "ilka", "Ilka Sandfoot"));
    ilka.get(atTheDepartment(ilka, server, form(ilka, server, "/me", "/me/department"), "i.sandfoot"));
    Account otis = account(server, "otis", "Otis");
    String link = "/enter/" + server.accounts().link(otis.id());
    HttpResponse<String> back = ilka.get(atTheDepartment(ilka, server, form(ilka, server, link, link + "/department"), "i.sandfoot"));
    assertThat(back.statusCode()).isEqualTo(422);
    assertThat(back.body()).contains("connected with an account already");
    assertThat(ilka.get(out(server) + link).statusCode()).as("the link still holds").isEqualTo(200);
    assertThat(ilka.get(out(server) + "/me").body()).contains("Ilka Sandfoot");
  }

  @Test
  void whoRefusesThereIsToldSo() throws IOException {
    WebServer server = both().server;
    Visitor who = new Visitor();
    HttpResponse<String> page = who.follow(who.get(Visitor.refresh(form(who, server, "/login", "/login/department"))), out(server));
    Matcher abort = Pattern.compile("href=\"([^\"]+/abort)\"").matcher(page.body());
    assertThat(abort.find()).as(page.body()).isTrue();
    HttpResponse<String> left = who.follow(who.get(URI.create(who.at()).resolve(abort.group(1)).toString()), out(server));
    HttpResponse<String> back = who.get(who.location(left));
    assertThat(back.statusCode()).isEqualTo(422);
    assertThat(back.body()).contains("did not say who you are").doesNotContain("access_denied");
  }
}
