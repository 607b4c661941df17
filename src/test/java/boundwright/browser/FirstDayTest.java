package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.runway.DayPlan;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A coach's first day from an empty folder, the sweep of who is here, the plan on its sheet, and the squad on a laptop. */
class FirstDayTest extends PhoneCase {
  private static final List<String> SIX = List.of("Wren, beginner", "Otis, beginner", "Mabel, intermediate", "Rafi, intermediate", "Linnea, advanced", "Tovi, beginner");

  @Override
  @BeforeEach
  void open() throws IOException {
    bench = Workbench.open(Files.createTempDirectory(folder, "data"), Clock.system(ZoneId.systemDefault()));
    complaints.clear();
    server = WebServer.start(bench, "127.0.0.1", 0);
    newPage(360, 640, true);
  }

  private void sixty() {
    for (int i = 1; i <= 60; i++) {
      bench.athletes().add(new Athlete(0, "Invented Name " + i, Level.KNOWN.get(i % 3), Foot.RIGHT, 0));
    }
    bench.settings().keep(DayPlan.FIRST);
  }

  /** Every tap is one, every name and every level written is a field of its own, though all go into one. */
  @Test
  void sixNewcomersHaveTheirFirstTapeWithinTwentyFiveTapsAndFields() {
    int taps = 0;
    int fields = 0;
    visit("/");
    page.getByText("Add the squad").tap();
    taps++;
    page.locator("#list").tap();
    taps++;
    for (String line : SIX) {
      page.locator("#list").pressSequentially(line + "\n");
      fields += line.split(",", -1).length;
    }
    page.getByText("Add them").tap();
    taps++;
    assertThat(page.locator("table.squad tbody tr")).hasCount(6);
    for (String line : SIX) {
      Locator row = page.locator("table.squad tr", new com.microsoft.playwright.Page.LocatorOptions().setHasText(line.split(",", -1)[0]));
      assertThat(row.locator("td.chosen .mark .fig").first()).isVisible();
    }
    words("six newcomers");
    System.out.println("first tapes of six: " + taps + " taps, " + fields + " fields");
    assertThat(taps + fields).isLessThanOrEqualTo(25);
    page.locator("nav a[href='/tapes']").tap();
    assertThat(page.locator("main")).containsText("Tovi");
  }

  @Test
  void sixtyFitThreeScreensAndOneTapSendsOneAway() {
    sixty();
    newPageAt(390, 844);
    visit("/here");
    int height = (int) page.evaluate("document.querySelector('.roll-call').getBoundingClientRect().height");
    System.out.println("who is here, 60 athletes: " + height + " px, " + height / 844.0 + " screens");
    assertThat(height).isLessThanOrEqualTo(3 * 844);
    assertThat(page.locator("[data-count]")).hasText("all 60 here");
    page.getByText("Invented Name 7", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true)).tap();
    assertThat(page.locator("[data-count]")).hasText("59 of 60 here");
    page.locator("[data-find]").fill("name 8");
    assertThat(page.locator(".names li:visible")).hasCount(1);
    page.locator(".names input:visible").focus();
    page.keyboard().press("Space");
    page.locator("[data-find]").fill("");
    page.locator("[data-roll]").tap();
    assertThat(page.locator(".roll")).hasText("58 of 60 here");
    assertThat(page.locator("table.squad tbody tr")).hasCount(58);
    page.locator("[data-find]").fill("name 60");
    assertThat(page.locator("table.squad tbody tr:visible")).hasCount(1);
    assertThat((String) page.evaluate(SMALL_TARGETS)).isEmpty();
    page.locator("[data-find]").fill("");
    assertThat(words("60 newcomers")).as("name and mark of everybody, and little else").isLessThanOrEqualTo(60 * 5 + 60);
  }

  private int words(String of) {
    int words = (int) page.evaluate("document.querySelector('main').innerText.trim().split(/\\s+/).length");
    System.out.println("words on the squad page, " + of + ": " + words);
    return words;
  }

  @Test
  void aNumberIsChangedInItsPlaceAndADrillIsDragged() {
    sixty();
    newPageAt(1366, 900);
    visit("/plan");
    assertThat(page.locator("#sums")).containsText("44 contacts");
    Locator reps = page.getByLabel("Drill 1: reps in a set");
    reps.fill("5");
    reps.press("Tab");
    assertThat(page.locator("#sums")).containsText("52 contacts");
    assertThat(bench.settings().plan().contacts(Foot.RIGHT)).isEqualTo(26);
    reps.fill("0");
    reps.press("Tab");
    assertThat(page.locator("#sums")).containsText("1 to 20");
    assertThat(bench.settings().plan().contacts(Foot.RIGHT)).as("what was kept stays").isEqualTo(26);
    reps.fill("3");
    reps.press("Tab");
    assertThat(page.locator("#sums")).containsText("44 contacts");
    BoundingBox first = page.locator("[data-grip]").nth(0).boundingBox();
    BoundingBox third = page.locator("[data-grip]").nth(2).boundingBox();
    page.mouse().move(first.x + 5, first.y + 10);
    page.mouse().down();
    page.mouse().move(third.x + 5, third.y + third.height - 2);
    page.mouse().move(third.x + 5, third.y + third.height + 4);
    page.mouse().up();
    assertThat(page.getByLabel("Drill 1: sequence")).hasValue("RRR");
    assertThat(page.getByLabel("Drill 3: sequence")).hasValue("RLRL");
    assertThat(bench.settings().plan().drills().get(2).sequence().letters().replace(" ", "")).isEqualTo("RLRL");
    page.getByLabel("Move drill 3 up").click();
    assertThat(page.getByLabel("Drill 2: sequence")).hasValue("RLRL");
    page.getByText("Do the same as today").click();
    assertThat(page.locator(".kicker").first()).containsText("Tomorrow");
    assertThat(page.getByLabel("Drill 2: sequence")).hasValue("RLRL");
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void theLaptopFillsItsWidthAndIsSortedByKeyboard() {
    sixty();
    newPageAt(1366, 900);
    visit("/");
    BoundingBox table = page.locator("table.squad").boundingBox();
    assertThat(table.width).as("of 1366 px").isGreaterThan(1366 * 0.9);
    assertThat(page.locator("table.squad thead th")).hasCount(8);
    Locator byMark = page.locator("table.squad thead a", new com.microsoft.playwright.Page.LocatorOptions().setHasText("mark")).first();
    byMark.focus();
    page.keyboard().press("Enter");
    page.waitForURL("**sort=mark1");
    assertThat(page.locator("th[aria-sort=ascending]")).hasCount(1);
    assertThat(page.locator("table.squad tbody tr").first().locator(".mark").first()).containsText("6.");
    for (int width : new int[] {320, 390, 1100, 1366}) {
      newPageAt(width, 800);
      for (String path : List.of("/", "/here", "/plan", "/athletes", "/group/new")) {
        visit(path);
        assertThat((int) page.evaluate("document.documentElement.scrollWidth")).as(path + " at " + width).isLessThanOrEqualTo(width);
        if (width < 1000) {
          assertThat((String) page.evaluate(SMALL_TARGETS)).as("small targets on " + path + " at " + width).isEmpty();
        }
      }
    }
  }

  @Test
  void thePlanWorksWithoutScripts() {
    sixty();
    context.close();
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setJavaScriptEnabled(false));
    page = context.newPage();
    visit("/plan");
    page.getByLabel("Drill 1: reps in a set").fill("5");
    page.getByText("Keep", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true)).click();
    assertThat(page.locator("#sums")).containsText("52 contacts");
    page.getByLabel("Remove drill 2").click();
    assertThat(page.getByLabel("Drill 2: sequence")).hasValue("LLL");
    visit("/here?q=name 7");
    assertThat(page.locator(".names li")).hasCount(1);
    page.locator(".names input[type=checkbox]").uncheck();
    page.locator("[data-roll]").click();
    assertThat(page.locator(".roll")).hasText("59 of 60 here");
  }

  private void newPageAt(int width, int height) {
    context.close();
    newPage(width, height, width < 1000);
  }
}
