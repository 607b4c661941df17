package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Club;
import boundwright.account.Passkeys;
import boundwright.account.Role;
import boundwright.quantity.RefusedException;
import boundwright.web.WebServer;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Accounts in a real browser: the link of the terminal, somebody new, a passkey made by the browser's own virtual authenticator. */
class AccountsTest extends PhoneCase {
  private static final String PASSWORD = "four bounds then sand";

  @Override
  @BeforeEach
  void open() throws IOException {
    super.open();
    server.close();
    server = WebServer.start(bench, "all", 0);
  }

  /** Browsers make passkeys for names, and of all names without a certificate for this one alone. */
  private String base() {
    return "http://localhost:" + server.port();
  }

  private void enter() {
    page.navigate(base() + server.entrance().replaceFirst("https?://[^/]*", ""));
    page.getByText("Open", new Page.GetByTextOptions().setExact(true)).tap();
    assertThat(page.locator("footer")).containsText("coach, head coach");
  }

  @Test
  void theCoachComesInMakesAnAccountAndSomebodyLogsIn() {
    enter();
    page.navigate(base() + "/accounts");
    page.locator("#name").fill("Otis");
    page.locator("#login").fill("otis");
    page.getByText("Make the account").tap();
    String link = page.locator(".address").first().textContent().strip().replaceFirst("https?://[^/]*", "");
    context.close();
    newPage(390, 844, true);
    page.navigate(base() + link);
    page.locator("#password").fill(PASSWORD);
    page.getByText("Set it and log in").tap();
    assertThat(page.locator("footer")).containsText("otis, assistant");
    page.navigate(base() + "/me");
    page.getByText("Log out", new Page.GetByTextOptions().setExact(true)).tap();
    page.locator("#login").fill("otis");
    page.locator("#password").fill("not that at all");
    complaints.clear();
    page.locator("form button.strong").tap();
    assertThat(page.locator("#login-error")).containsText("do not fit together");
    complaints.removeIf(c -> c.contains("422"));
    page.locator("#password").fill(PASSWORD);
    page.locator("form button.strong").tap();
    assertThat(page.locator("footer")).containsText("otis, assistant");
  }

  @Test
  void aPasskeyIsMadeAndLetsIn() {
    CDPSession devices = context.newCDPSession(page);
    devices.send("WebAuthn.enable");
    JsonObject options = new JsonObject();
    options.addProperty("protocol", "ctap2");
    options.addProperty("transport", "internal");
    options.addProperty("hasResidentKey", true);
    options.addProperty("hasUserVerification", true);
    options.addProperty("isUserVerified", true);
    options.addProperty("automaticPresenceSimulation", true);
    JsonObject asked = new JsonObject();
    asked.add("options", options);
    String device = devices.send("WebAuthn.addVirtualAuthenticator", asked).get("authenticatorId").getAsString();
    enter();
    page.navigate(base() + "/me");
    page.locator("#passkey-name").fill("A made-up phone");
    page.getByText("Add a passkey").tap();
    assertThat(page.locator(".phone-list").first()).containsText("A made-up phone");
    page.getByText("Log out", new Page.GetByTextOptions().setExact(true)).tap();
    page.getByText("Log in with a passkey").tap();
    assertThat(page.locator("footer")).containsText("coach, head coach");
    assertThat(bench.accounts().notes(Club.FIRST, 1).get(0).what()).isEqualTo("logged in with a passkey");

    // a device that is not sure who holds it is not enough
    page.navigate(base() + "/me");
    page.getByText("Log out", new Page.GetByTextOptions().setExact(true)).tap();
    JsonObject unsure = new JsonObject();
    unsure.addProperty("authenticatorId", device);
    unsure.addProperty("isUserVerified", false);
    devices.send("WebAuthn.setUserVerified", unsure);
    page.getByText("Log in with a passkey").tap();
    assertThat(page.locator("#passkey-error")).not().isEmpty();
    unsure.addProperty("isUserVerified", true);
    devices.send("WebAuthn.setUserVerified", unsure);

    long account = bench.accounts().byLogin("coach").orElseThrow().id();
    new Passkeys(bench.passkeys(), bench.clock(), new SecureRandom()).remove(account, bench.passkeys().of(account).get(0).credential());
    page.getByText("Log in with a passkey").tap();
    assertThat(page.locator("#passkey-error")).containsText("does not hold here");
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void whatNoDeviceSignedIsRefused() {
    Passkeys passkeys = new Passkeys(bench.passkeys(), bench.clock(), new SecureRandom());
    Passkeys.Place place = new Passkeys.Place(base(), "localhost");
    for (String bad : List.of("", "{}", "[]", "null", "{\"id\":\"AA\",\"rawId\":\"AA\",\"type\":\"public-key\",\"response\":{}}", "\u0000")) {
      Assertions.assertThatThrownBy(() -> passkeys.account(bad, place)).as(bad).isInstanceOf(RefusedException.class);
    }
    assertThat(new Passkeys.Place("http://127.0.0.1:7100", "127.0.0.1").takesPasskeys()).isFalse();
    assertThat(new Passkeys.Place("https://[::1]:7100", "[::1]").takesPasskeys()).isFalse();
    assertThat(place.takesPasskeys()).isTrue();
  }

  @Test
  void thePagesFitPhonesAndDesks() {
    server.accounts().make("ilka", "Ilka Ofaverylongnamethatneverends", Role.READER, Club.FIRST, null);
    enter();
    for (String path : List.of("/accounts", "/me", "/clubs", "/accounts/done")) {
      page.navigate(base() + path);
      page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true; })");
      for (int width : new int[] {390, 320, 1200}) {
        page.setViewportSize(width, 844);
        assertThat((int) page.evaluate("document.documentElement.scrollWidth")).as(path + " at " + width).isLessThanOrEqualTo(width);
        if (width < 1000) {
          assertThat((String) page.evaluate(SMALL_TARGETS)).as("small targets on " + path + " at " + width).isEmpty();
        }
      }
    }
  }
}
