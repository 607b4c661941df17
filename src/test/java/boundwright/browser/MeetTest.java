package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.jump.Event;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetSheet;
import boundwright.quantity.LengthUnit;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A coach with a phone at a meet, where the connection comes and goes. */
class MeetTest extends PhoneCase {
  /** A lost connection is said by the browser too. */
  @Override
  boolean pardoned(String complaint) {
    return complaint.contains("ERR_INTERNET_DISCONNECTED") || complaint.contains("ERR_FAILED") || complaint.contains("ERR_CONNECTION_REFUSED");
  }

  @Test
  void anAttemptEnteredWithoutConnectionSurvivesReloadingAndIsStoredExactlyOnce() {
    MeetSheet before = meet();
    openKept();
    context.setOffline(true);
    String first = chosen();
    enter("12.34", "+0.7", "valid");
    Locator unsent = page.locator("#kept");
    assertThat(unsent).containsText("1 not sent yet");
    assertThat(unsent).containsText(first + ", round 3: 12.34, wind +0.7");
    assertThat(meet().attempts()).hasSameSizeAs(before.attempts());

    page.reload();
    assertThat(page.locator("h1")).hasText(before.name());
    assertThat(unsent).containsText("No connection.");
    assertThat(unsent).containsText(first + ", round 3: 12.34, wind +0.7");

    context.setOffline(false);
    assertThat(unsent).isHidden();
    assertThat(page.locator(".said")).containsText("Kept: " + first + ", round 3: 12.34 m");
    page.reload();
    page.reload();
    MeetSheet after = meet();
    assertThat(after.attempts()).hasSize(before.attempts().size() + 1);
    KeptAttempt stored = last(after);
    assertThat(stored.attempt().athlete()).isEqualTo(first);
    assertThat(stored.attempt().distance_m()).isEqualTo(12.34);
    // had it been stored twice, the one beneath would come back
    bench.meets().undo(after.id());
    assertThat(meet().attempts()).hasSameSizeAs(before.attempts());
  }

  @Test
  void severalAttemptsWithoutConnectionMoveOnToTheNextAndArriveInTheirOrder() {
    int before = meet().attempts().size();
    openKept();
    context.setOffline(true);
    String first = chosen();
    enter("12.34", "", "valid");
    assertThat(page.locator("#kept")).containsText("1 not sent yet");
    // the form moves on once the phone has seen that nothing answers
    assertThat(page.locator("#distance")).hasValue("");
    String second = chosen();
    assertThat(second).isNotEqualTo(first);
    enter("", "", "foul");
    assertThat(page.locator("#kept")).containsText("2 not sent yet");
    enter("", "", "pass");
    assertThat(page.locator("#kept")).containsText("3 not sent yet");
    page.locator("#kept li").last().getByText("take back").click();
    assertThat(page.locator("#kept")).containsText("2 not sent yet");
    context.setOffline(false);
    assertThat(page.locator("#kept")).isHidden();
    List<KeptAttempt> all = meet().attempts();
    assertThat(all).hasSize(before + 2);
    assertThat(all.subList(before, before + 2)).extracting(a -> a.attempt().athlete()).containsExactly(first, second);
  }

  @Test
  void anAnswerThatIsLostOnTheWayDoesNotStoreTheAttemptTwice() {
    int before = meet().attempts().size();
    openKept();
    // the program hears the attempt, but its answer never arrives
    page.route(
        "**/attempt",
        route -> {
          route.fetch();
          route.abort();
        });
    enter("12.34", "", "valid");
    assertThat(page.locator("#kept")).containsText("1 not sent yet");
    // the entry is kept before it is sent: that it was not sent yet is said before the program has heard it
    page.waitForCondition(() -> meet().attempts().size() == before + 1);
    page.unroute("**/attempt");
    // meanwhile the program was started anew
    int port = server.port();
    server.close();
    server = WebServer.start(bench, "127.0.0.1", port);
    page.reload();
    assertThat(page.locator("#kept")).isHidden();
    assertThat(meet().attempts()).hasSize(before + 1);
    bench.meets().undo(meet().id());
    assertThat(meet().attempts()).hasSize(before);
  }

  @Test
  void aKeptAttemptThatIsRefusedLaterSaysWhyAndGoesBackIntoTheForm() {
    int before = meet().attempts().size();
    openKept();
    context.setOffline(true);
    enter("123.4", "", "valid");
    assertThat(page.locator("#kept")).containsText("1 not sent yet");
    page.reload();
    context.setOffline(false);
    assertThat(page.locator("#kept")).containsText("out of range");
    page.locator("#kept").getByText("put it back into the form").click();
    assertThat(page.locator("#distance")).hasValue("123.4");
    assertThat(page.locator("#kept")).isHidden();
    page.fill("#distance", "12.34");
    page.locator(".taps button").first().click();
    assertThat(page.locator(".said")).containsText("12.34 m");
    assertThat(meet().attempts()).hasSize(before + 1);
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void withTheConnectionTheRanksMoveAtOnceAndUndoTakesBack() {
    int before = meet().attempts().size();
    visit("/meet/" + meet().id());
    String first = chosen();
    enter("12.99", "+1.1", "valid");
    assertThat(page.locator(".said")).containsText("Kept: " + first);
    assertThat(page.locator(".ranks > li").first()).containsText(first);
    assertThat(page.locator("#attempt-form h2")).not().containsText("next: " + first);
    page.locator(".said button").click();
    assertThat(page.locator(".said")).containsText("Taken back");
    assertThat(meet().attempts()).hasSize(before);
    enter("", "", "valid");
    assertThat(page.locator("#attempt-error")).containsText("has no distance");
    complaints.removeIf(c -> c.contains("422"));
  }

  @Test
  void anotherPageWithoutConnectionSaysWhatToDo() {
    openKept();
    context.setOffline(true);
    visit("/plan");
    assertThat(page.locator("h1")).hasText("The program cannot be reached");
    context.setOffline(false);
    complaints.removeIf(c -> c.contains("503"));
  }

  @Test
  void withoutScriptsTheMeetIsAPlainForm() {
    context.close();
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setJavaScriptEnabled(false));
    page = context.newPage();
    visit("/meet/" + meet().id());
    String first = chosen();
    enter("12.34", "+0.7", "valid");
    assertThat(page).hasURL(Pattern.compile("kept=\\d+"));
    assertThat(page.locator(".said")).containsText("Kept: " + first + ", round 3: 12.34 m, wind +0.7");
    visit("/athlete/" + bench.athletes().all().get(0).id() + "/aim");
    page.locator(".keys button").nth(4).click();
    assertThat(page.locator(".said")).containsText("Kept.");
    page.locator(".said button").click();
    assertThat(page.locator(".said")).containsText("taken back");
  }

  @Test
  void noPageScrollsSidewaysAndEveryTargetIsLargeEnough() {
    List<String> paths = new ArrayList<>(List.of("/meet", "/meet/" + meet().id(), "/meet/" + meet().id() + "/edit", "/settings/meet"));
    for (String name : new String[] {"Bram Curlew", "Mabel Cordgrass"}) {
      Athlete athlete = bench.athletes().byName(name).orElseThrow();
      for (String part : new String[] {"jump", "run-up", "aim", "aim?goal=rival&rivals=13.9&left=2"}) {
        paths.add("/athlete/" + athlete.id() + "/" + part);
      }
    }
    for (LengthUnit unit : LengthUnit.values()) {
      assertFits(paths, unit, "");
    }
    complaints.removeIf(c -> c.contains("422"));
  }

  /** Opens the meet and waits until the phone keeps the page and what it is made of. */
  private void openKept() {
    visit("/meet/" + meet().id());
    String isKept =
        "async () => { const name = (await caches.keys()).find(n => n.startsWith('boundwright-pages-'));"
            + " if (!name) return false; const store = await caches.open(name);"
            + " const parts = [location.pathname, ...[...document.querySelectorAll('link[rel=stylesheet], script[src]')].map(e => e.href || e.src)];"
            + " return (await Promise.all(parts.map(p => store.match(p)))).every(a => a !== undefined); }";
    for (int i = 0; i < 100 && !Boolean.TRUE.equals(page.evaluate(isKept)); i++) {
      page.waitForTimeout(50);
    }
    assertThat(page.evaluate(isKept)).as("the phone keeps the page and all that it is made of").isEqualTo(true);
  }

  private void enter(String distance, String wind, String tap) {
    page.fill("#distance", distance);
    page.fill("#wind", wind);
    page.locator(".taps button", new Page.LocatorOptions().setHasText(Pattern.compile("^" + tap))).click();
  }

  private String chosen() {
    return page.locator("#entrant option:checked").textContent().strip();
  }

  /** The one that is under way: the invented squad has another to come, and a long jump behind it. */
  private MeetSheet meet() {
    return bench.meets().all().stream().filter(m -> m.event() == Event.TRIPLE_JUMP && !m.attempts().isEmpty()).findFirst().orElseThrow();
  }

  private static KeptAttempt last(MeetSheet sheet) {
    return sheet.attempts().get(sheet.attempts().size() - 1);
  }
}
