package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.web.Opening;
import boundwright.web.WebServer;
import boundwright.web.department.DepartmentSetting;
import boundwright.web.department.RealDepartment;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The way to a department's login and back in a real browser, between two sites: over the content policy, which lets no form lead away, and
 * with strict cookies, which do not come along from there.
 */
class DepartmentLoginTest extends PhoneCase {
  private static final String SECRET = "a-secret-for-trials-of-48-characters-xxxxxxxxxxx";
  private RealDepartment department;

  @Override
  @BeforeEach
  void open() throws IOException {
    department = RealDepartment.start();
    super.open();
    server.close();
    DepartmentSetting setting = new DepartmentSetting("Invented Department", URI.create(department.issuer()), "boundwright", SECRET, false, "");
    server = WebServer.start(bench, new Opening("all", 0, true, "", folder.resolve("keys"), "", setting));
    Assumptions.assumeFalse(server.reach().outside().isEmpty(), "this machine is on no network");
    department.knows("boundwright", SECRET, server.reach().outside() + "/login/department/back");
    context.close();
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setHasTouch(true).setIgnoreHTTPSErrors(true));
    page = context.newPage();
    // the provider's pages ask for a typeface from elsewhere; what is said of those pages is not ours
    context.route(url -> !url.startsWith(server.reach().outside()) && !url.startsWith(department.issuer()), Route::abort);
    page.onConsoleMessage(
        m -> {
          if (m.location().startsWith(server.reach().outside())) {
            complaints.add(m.type() + " " + m.text());
          }
        });
    page.onPageError(complaints::add);
  }

  @Override
  @AfterEach
  void close() {
    try {
      department.close();
    } catch (IOException e) {
      throw new AssertionError(e);
    } finally {
      super.close();
    }
  }

  private void press(String label) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(label).setExact(true)).tap();
  }

  /** The provider's own pages: any login is let in, then it asks whether it may say so. */
  private void logInThere() {
    page.locator("input[name=login]").fill("m.teststrand");
    page.locator("input[name=password]").fill("any");
    page.locator("button[type=submit]").tap();
    page.getByText("Continue").tap();
  }

  @Test
  void theButtonsLeadThereAndBackToAPageThatKnowsWhoCame() {
    String out = server.reach().outside();
    page.navigate(out + URI.create(server.entrance()).getPath());
    press("Open");
    assertThat(page.locator("footer")).containsText("coach, head coach");
    page.navigate(out + "/me");
    press("Connect its login");
    logInThere();
    assertThat(page.locator(".said")).containsText("From now on you can log in with Invented Department");
    assertFitsHere(List.of("/me"));
    context.clearCookies();
    complaints.clear();
    page.navigate(out + "/login");
    assertFitsHere(List.of("/login"));
    press("Log in with Invented Department");
    logInThere();
    assertThat(page.locator("footer")).containsText("coach, head coach");
    assertThat(page.url()).isEqualTo(out + "/");
  }

  private void assertFitsHere(List<String> paths) {
    for (String path : paths) {
      page.navigate(server.reach().outside() + path);
      for (int width : new int[] {390, 320, 360, 1366}) {
        page.setViewportSize(width, 844);
        assertThat((int) page.evaluate("document.documentElement.scrollWidth")).as(path + " at " + width).isLessThanOrEqualTo(width);
        if (width < 1000) {
          assertThat((String) page.evaluate(SMALL_TARGETS)).as("small targets on " + path + " at " + width).isEmpty();
        }
      }
      page.setViewportSize(390, 844);
    }
  }
}
