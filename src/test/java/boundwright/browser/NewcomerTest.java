package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A newcomer with a phone. */
class NewcomerTest extends PhoneCase {
  @Test
  void aNewcomerChangesTheRungLogsThreeRepsAndPrintsTheCard() throws IOException {
    visit("/");
    assertThat(page.getByText("invented").first()).isVisible();
    page.locator(".squad tbody a").first().click();
    Locator mark = page.locator(".figure .fig").first();
    String before = mark.textContent();

    page.locator("#choose > summary").click();
    page.locator(".rungs label", new Page.LocatorOptions().setHasText(Pattern.compile("^8$"))).click();
    assertThat(mark).not().hasText(before);
    assertThat(page).hasURL(Pattern.compile("steps=8"));
    String atEight = mark.textContent();

    Athlete athlete = athleteOnPage();
    int logged = bench.reps().inOrder(athlete.id()).size();
    for (int rep = 1; rep <= 3; rep++) {
      String was = mark.textContent();
      page.locator("#tap-SHORT").tap();
      assertThat(page.locator(".console .said")).containsText("Logged. The mark moved");
      assertThat(page.locator(".console .said")).containsText("from " + was + " m");
      assertThat(mark).not().hasText(was);
      assertThat(bench.reps().inOrder(athlete.id())).hasSize(logged + rep);
    }
    assertThat(Double.parseDouble(mark.textContent())).as("short three times: the mark comes forward").isLessThan(Double.parseDouble(atEight));

    page.locator(".more-pages summary").click();
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Card").setExact(true)).first().click();
    Download download = page.waitForDownload(() -> page.getByText("PDF on A5").click());
    byte[] pdf = Files.readAllBytes(download.path());
    assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
  }

  @Test
  void aTapIsTakenBackAndTheMarkReturns() {
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    int logged = bench.reps().inOrder(athlete.id()).size();
    String before = page.locator(".figure .fig").first().textContent();
    page.locator("#tap-LATE").tap();
    assertThat(page.locator(".console .said")).containsText("Logged.");
    assertThat(page.getByLabel("Tape lies at")).hasValue(before);
    page.locator(".console .said button").tap();
    assertThat(page.locator(".console .said")).containsText("Taken back.");
    assertThat(page.locator(".figure .fig").first()).hasText(before);
    assertThat(bench.reps().inOrder(athlete.id())).hasSize(logged);
  }

  @Test
  void aDoubleTapLogsOneRep() {
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    int logged = bench.reps().inOrder(athlete.id()).size();
    page.evaluate("() => { const b = document.getElementById('tap-IN'); b.click(); b.click(); }");
    assertThat(page.locator(".console .said")).isVisible();
    page.waitForTimeout(300);
    assertThat(bench.reps().inOrder(athlete.id())).hasSize(logged + 1);
  }

  @Test
  void theTapeStaysWhereItLiesUntilItIsMoved() {
    visit("/athlete/" + first().id());
    String lay = page.locator(".figure .fig").first().textContent();
    page.locator("#tap-SHORT").tap();
    assertThat(page.locator(".console .said")).containsText("Logged.");
    assertThat(page.getByLabel("Tape lies at")).hasValue(lay);
    page.getByText("I moved it to").tap();
    assertThat(page.getByText("I moved it to")).hasCount(0);
    assertThat(page.getByLabel("Tape lies at")).hasValue(page.locator(".figure .fig").first().textContent());
  }

  @Test
  void aBadSequenceIsPointedAtAndTheGoodOneReturnsWithBack() {
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    page.locator("#choose > summary").click();
    page.getByLabel("Sequence").fill("RRL x3");
    assertThat(page).hasURL(Pattern.compile("RRL\\+x3"));
    String good = page.locator(".figure .fig").first().textContent();
    page.getByLabel("Sequence").fill("RRQ L");
    Locator refusal = page.locator("#sequence-error pre");
    assertThat(refusal).containsText("Character 3 ('Q')");
    assertThat(refusal.textContent()).endsWith("  RRQ L\n    ^");
    assertThat(page.locator(".no-marks")).isVisible();
    page.getByLabel("Sequence").fill("RRL x3");
    assertThat(page.locator(".figure .fig").first()).hasText(good);
    assertThat(refusal).hasCount(0);
    page.locator(".rungs label", new Page.LocatorOptions().setHasText(Pattern.compile("^10$"))).click();
    assertThat(page.locator(".figure .fig").first()).not().hasText(good);
    page.goBack();
    assertThat(page.locator(".figure .fig").first()).hasText(good);
    page.reload();
    assertThat(page.getByLabel("Sequence")).hasValue("RRL x3");
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void aQuickChoiceSetsSequenceStepsAndEnd() {
    visit("/athlete/" + first().id());
    page.locator("#choose > summary").click();
    page.getByText("Drills of today and the teaching routine").click();
    page.locator(".picks button", new Page.LocatorOptions().setHasText("L x6")).last().click();
    assertThat(page.getByLabel("Sequence")).hasValue("L x6");
    assertThat(page.locator(".facts")).containsText("0 right");
    page.locator("#more-said").click();
    page.getByLabel("Other number of approach steps, 0 to 26").fill("5");
    page.getByLabel("Other number of approach steps, 0 to 26").press("Enter");
    assertThat(page.locator("#more-said")).containsText("5 steps");
    assertThat(page).hasURL(Pattern.compile("steps=5"));
  }

  @Test
  void everythingWorksWithoutScripts() {
    context.close();
    context =
        browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setHasTouch(true).setJavaScriptEnabled(false));
    page = context.newPage();
    Athlete athlete = first();
    visit("/athlete/" + athlete.id());
    page.locator("#choose > summary").click();
    page.getByLabel("Sequence").fill("RRL");
    page.getByText("Show", new Page.GetByTextOptions().setExact(true)).click();
    String before = page.locator(".figure .fig").first().textContent();
    int logged = bench.reps().inOrder(athlete.id()).size();
    page.locator("#tap-SHORT").click();
    assertThat(page.locator(".console .said")).containsText("Logged. The mark");
    assertThat(bench.reps().inOrder(athlete.id())).hasSize(logged + 1);
    Rep rep = bench.reps().recent(athlete.id(), 1).get(0);
    assertThat(rep.sequence().contacts()).isEqualTo(Sequence.parse("RRL").contacts());
    assertThat(rep.outcome()).isEqualTo(Outcome.SHORT);
    page.locator(".console .said button").click();
    assertThat(page.locator(".figure .fig").first()).hasText(before);
    assertThat(bench.reps().inOrder(athlete.id())).hasSize(logged);
  }

  @Test
  void noPageScrollsSidewaysAndEveryTargetIsLargeEnough() {
    long id = first().id();
    List<String> paths =
        List.of(
            "/", "/athlete/" + id, "/athlete/" + id + "?sequence=RRLL+RRLL+RRLL+RRLL+RRLL&steps=5&sand=no", "/athlete/" + id + "?sequence=RXL&steps=4",
            "/athlete/" + id + "/edit", "/athlete/" + id + "/card", "/athlete/new", "/plan", "/tapes", "/card", "/settings", "/import", "/sources",
            "/nosuch");
    for (LengthUnit unit : LengthUnit.values()) {
      assertFits(paths, unit, "");
    }
    complaints.removeIf(c -> c.contains("404") || c.contains("422"));
  }
}
