package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.demo.InventedFolder;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/**
 * A phone on a table: Chromium at the size of a phone over an invented squad in a fresh folder. Whatever the browser complains of fails the test.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class PhoneCase {
  @TempDir Path folder;
  Chromium chromium;
  Browser browser;
  Workbench bench;
  WebServer server;
  BrowserContext context;
  Page page;
  final List<String> complaints = new ArrayList<>();

  @BeforeAll
  void launch() {
    chromium = new Chromium();
    browser = chromium.browser();
  }

  @AfterAll
  void quit() {
    chromium.close();
  }

  @BeforeEach
  void open() throws IOException {
    Clock clock = Clock.system(ZoneId.systemDefault());
    bench = Workbench.open(InventedFolder.fill(Files.createTempDirectory(folder, "data"), clock), clock);
    complaints.clear();
    server = WebServer.start(bench, "127.0.0.1", 0);
    newPage(390, 844, true);
  }

  @AfterEach
  void close() {
    context.close();
    server.close();
    bench.close();
    complaints.removeIf(this::pardoned);
    assertThat(complaints).as("what the browser complained of").isEmpty();
  }

  /** Buttons, fields and links that stand alone must be 48 px high; links inside a line of text are let off. */
  static final String SMALL_TARGETS =
      """
      [...document.querySelectorAll('button, input:not([type=hidden],[type=radio],[type=checkbox]), select, textarea, summary, .segments label, .ticks label, nav a, .squad a, .watch a, a.button')]
        .filter(e => e.getClientRects().length > 0 && !e.closest('.for-ears') && !e.classList.contains('skip'))
        .filter(e => e.getBoundingClientRect().height < 47.5)
        .map(e => e.tagName + ' ' + (e.textContent || e.id).trim().slice(0, 24) + ' ' + e.getBoundingClientRect().height.toFixed(1)).join('; ')
      """;

  /** A name that is higher than wide runs down the page, a letter or two in a line. */
  private static final String NAMES_LETTER_BY_LETTER =
      """
      [...document.querySelectorAll('h1, .watch b, .squad b')]
        .filter(e => e.getBoundingClientRect().width > 0 && e.getBoundingClientRect().height > e.getBoundingClientRect().width)
        .map(e => e.textContent).join('; ')
      """;

  /**
   * No page scrolls sideways on two phones and a desk, with all that is folded open; on a phone every target is large enough for a thumb.
   *
   * @param also script run before a page is looked at
   */
  final void assertFits(List<String> paths, LengthUnit unit, String also) {
    CoachSettings now = bench.settings().settings();
    bench.settings().keep(new CoachSettings(unit, now.marks(), now.facility(), now.setContacts()));
    for (String path : paths) {
      visit(path);
      page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true; })");
      page.evaluate(also);
      for (int width : new int[] {390, 320, 1200}) {
        page.setViewportSize(width, width == 320 ? 568 : 844);
        String at = path + " at " + width + ", " + unit;
        assertThat((int) page.evaluate("document.documentElement.scrollWidth")).as(at).isLessThanOrEqualTo(width);
        assertThat((String) page.evaluate(NAMES_LETTER_BY_LETTER)).as("names squeezed on " + at).isEmpty();
        if (width < 1000) {
          assertThat((String) page.evaluate(SMALL_TARGETS)).as("small targets on " + at).isEmpty();
        }
      }
      page.setViewportSize(390, 844);
    }
  }

  final void newPage(int width, int height, boolean touch) {
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(width, height).setHasTouch(touch));
    page = context.newPage();
    page.onConsoleMessage(
        m -> {
          if (m.type().equals("error") || m.type().equals("warning")) {
            complaints.add(m.text());
          }
        });
    page.onPageError(complaints::add);
  }

  /** What the browser may complain of: a change while an answer is under way replaces the request, and htmx reports that as an error. */
  boolean pardoned(String complaint) {
    return complaint.startsWith("htmx:sendAbort") || complaint.startsWith("htmx:afterRequest");
  }

  void visit(String path) {
    page.navigate("http://127.0.0.1:" + server.port() + path);
  }

  Athlete first() {
    return bench.athletes().all().get(0);
  }

  Athlete athleteOnPage() {
    return bench.athletes().byName(page.locator("h1").textContent()).orElseThrow();
  }
}
