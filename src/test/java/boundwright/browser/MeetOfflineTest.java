package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.jump.Event;
import boundwright.meet.Attempt;
import boundwright.meet.Beside;
import boundwright.meet.KeptAttempt;
import boundwright.meet.MeetSheet;
import boundwright.web.WebServer;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A meet entered on phones without a connection. */
class MeetOfflineTest extends PhoneCase {
  private static final String CACHED =
      "async () => { const name = (await caches.keys()).find(n => n.startsWith('boundwright'));"
          + " return name !== undefined && (await (await caches.open(name)).match(location.pathname)) !== undefined"
          + " && (await (await caches.open(name)).match(document.querySelector('script[src*=meet]').src)) !== undefined; }";
  private static final String ALL_SENT =
      "() => new Promise((done, lost) => { const asked = indexedDB.open('boundwright-meet'); asked.onerror = lost; asked.onsuccess = () => {"
          + " const all = asked.result.transaction('entries').objectStore('entries').getAll();"
          + " all.onsuccess = () => { asked.result.close(); done(all.result.every(e => e.sent)); }; all.onerror = lost; }; })";

  @BeforeEach
  void openMeet() {
    context.close();
    context = phone();
    page = opened(context);
  }

  /** A lost connection and a program that is away are said by the browser too. */
  @Override
  boolean pardoned(String complaint) {
    return super.pardoned(complaint) || complaint.contains("net::ERR_") || complaint.contains("status of 403") || complaint.contains("status of 503");
  }

  private BrowserContext phone() {
    return browser.newContext(new Browser.NewContextOptions().setViewportSize(360, 640).setHasTouch(true));
  }

  private Page opened(BrowserContext of) {
    Page opened = of.newPage();
    opened.navigate("http://127.0.0.1:" + server.port() + "/meet/" + meet().id());
    for (int i = 0; i < 100 && !Boolean.TRUE.equals(opened.evaluate(CACHED)); i++) {
      opened.waitForTimeout(50);
    }
    return opened;
  }

  /** The one that is under way: the invented squad has another to come, and a long jump behind it. */
  private MeetSheet meet() {
    return bench.meets().all().stream().filter(m -> m.event() == Event.TRIPLE_JUMP && !m.attempts().isEmpty()).findFirst().orElseThrow();
  }

  private static void enter(Page on, String distance, String tap) {
    on.fill("#distance", distance);
    on.locator(".taps button", new Page.LocatorOptions().setHasText(Pattern.compile("^" + tap))).click();
  }

  private static String next(Page on) {
    return on.locator("#entrant option:checked").textContent().strip();
  }

  private static void unsent(Page on, int n) {
    assertThat(on.locator("#kept .unsent-head")).containsText(n + " not sent yet");
  }

  private static void sent(Page on) {
    // the page tries again every ten seconds; what is not sent yet is hidden, too, until a page that opens has read its database
    on.waitForFunction(ALL_SENT, null, new Page.WaitForFunctionOptions().setTimeout(40_000).setPollingInterval(100));
    assertThat(on.locator("#kept")).isHidden(new LocatorAssertions.IsHiddenOptions().setTimeout(40_000));
  }

  private Attempt standing(String who, int round) {
    MeetSheet sheet = meet();
    return sheet.standing(sheet.entrant(who).orElseThrow().id(), round).map(KeptAttempt::attempt).orElseThrow();
  }

  @Test
  void aPageOpenedAgainWithoutConnectionOffersTheNextAthleteNotTheSameOne() {
    int before = meet().attempts().size();
    context.setOffline(true);
    String first = next(page);
    enter(page, "11.11", "valid");
    unsent(page, 1);
    page.close();
    page = context.newPage();
    page.navigate("http://127.0.0.1:" + server.port() + "/meet/" + meet().id());
    unsent(page, 1);
    String second = next(page);
    assertThat(second).as("next after closing and opening").isNotEqualTo(first);
    assertThat(page.locator(".ranks .kept-here")).containsText("11.11, not sent yet");
    enter(page, "", "foul");
    unsent(page, 2);
    context.setOffline(false);
    sent(page);
    assertThat(meet().attempts()).hasSize(before + 2);
    assertThat(standing(first, 3).distance_m()).isEqualTo(11.11);
    assertThat(standing(second, 3).result()).isEqualTo(Attempt.Result.FOUL);
  }

  @Test
  void anAttemptSentByThePageIsThereWhenItIsOpenedAgainWithoutConnection() {
    String first = next(page);
    enter(page, "12.34", "valid");
    assertThat(page.locator(".said")).containsText("Kept: " + first);
    context.setOffline(true);
    page.reload();
    assertThat(page.locator("#kept")).containsText("No connection");
    assertThat(next(page)).isNotEqualTo(first);
  }

  @Test
  void twoPhonesThatEnterDifferentThingsAreBothShownAndTheCoachChooses() {
    int before = meet().attempts().size();
    String who = next(page);
    context.setOffline(true);
    enter(page, "", "foul");
    unsent(page, 1);
    try (BrowserContext other = phone()) {
      Page otherPage = opened(other);
      assertThat(next(otherPage)).isEqualTo(who);
      enter(otherPage, "11.11", "valid");
      assertThat(otherPage.locator(".said")).containsText("11.11");
    }
    context.setOffline(false);
    sent(page);
    assertThat(standing(who, 3).distance_m()).as("what stood is not overwritten").isEqualTo(11.11);
    assertThat(page.locator(".beside")).containsText("11.11 m");
    assertThat(page.locator(".beside")).containsText("foul");
    List<Beside> waits = bench.meets().besides(meet().id());
    assertThat(waits).hasSize(1);
    page.locator(".beside button", new Page.LocatorOptions().setHasText("foul")).click();
    assertThat(page.locator(".beside")).hasCount(0);
    assertThat(standing(who, 3).result()).isEqualTo(Attempt.Result.FOUL);
    assertThat(meet().attempts()).hasSize(before + 1);
    bench.meets().undo(meet().id());
    assertThat(standing(who, 3).distance_m()).as("both entries are there").isEqualTo(11.11);
  }

  @Test
  void thePhonesOwnSecondEntryMendsItsFirstWithoutAsking() {
    String who = next(page);
    context.setOffline(true);
    enter(page, "11.11", "valid");
    unsent(page, 1);
    page.selectOption("#entrant", new com.microsoft.playwright.options.SelectOption().setLabel(who));
    enter(page, "11.17", "valid");
    unsent(page, 2);
    context.setOffline(false);
    sent(page);
    assertThat(standing(who, 3).distance_m()).isEqualTo(11.17);
    assertThat(bench.meets().besides(meet().id())).isEmpty();
  }

  /** The answer takes seconds on a bad network, and the coach goes on. */
  @Test
  void whatTheCoachChoosesAndTypesWhileAnAnswerIsUnderWayStays() {
    String who = next(page);
    List<Route> held = new ArrayList<>();
    page.route(Pattern.compile("/attempt$"), held::add);
    enter(page, "11.11", "valid");
    page.waitForCondition(() -> !held.isEmpty());
    page.selectOption("#entrant", new com.microsoft.playwright.options.SelectOption().setLabel(who));
    page.fill("#distance", "11.17");
    held.get(0).abort();
    assertThat(page.locator("#kept")).containsText("No connection");
    assertThat(next(page)).isEqualTo(who);
    assertThat(page.locator("#distance")).hasValue("11.17");
    page.unroute(Pattern.compile("/attempt$"));
    page.locator(".taps button", new Page.LocatorOptions().setHasText(Pattern.compile("^valid"))).click();
    sent(page);
    assertThat(standing(who, 3).distance_m()).isEqualTo(11.17);
  }

  @Test
  void whatWasSentIsTakenBackWithoutConnection() {
    int before = meet().attempts().size();
    String who = next(page);
    enter(page, "12.34", "valid");
    assertThat(page.locator(".said")).containsText("Kept: " + who);
    context.setOffline(true);
    page.locator(".said button").click();
    unsent(page, 1);
    assertThat(page.locator("#kept")).containsText("Take back " + who);
    assertThat(meet().attempts()).hasSize(before + 1);
    assertThat(next(page)).as("it is their turn again").isEqualTo(who);
    page.reload();
    unsent(page, 1);
    context.setOffline(false);
    sent(page);
    assertThat(meet().attempts()).hasSize(before);
  }

  @Test
  void theProgramIsKilledAndStartedAnewBetweenTwoEntries() {
    int before = meet().attempts().size();
    int port = server.port();
    String who = next(page);
    server.close();
    enter(page, "12.34", "valid");
    unsent(page, 1);
    // entered while the page still shows them, it would be another word on the same attempt
    page.waitForCondition(() -> !next(page).equals(who));
    enter(page, "", "pass");
    unsent(page, 2);
    server = WebServer.start(bench, "127.0.0.1", port);
    page.reload();
    sent(page);
    assertThat(meet().attempts()).hasSize(before + 2);
    assertThat(standing(who, 3).distance_m()).isEqualTo(12.34);
  }

  @Test
  void aPhoneWithoutRoomSaysSoAndTheEntryStaysInTheForm() {
    int before = meet().attempts().size();
    JsonObject none = new JsonObject();
    none.addProperty("origin", "http://127.0.0.1:" + server.port());
    none.addProperty("quotaSize", 1);
    context.newCDPSession(page).send("Storage.overrideQuotaForOrigin", none);
    context.setOffline(true);
    enter(page, "12.34", "valid");
    assertThat(page.locator("#notice")).containsText("has no room left");
    assertThat(page.locator("#distance")).hasValue("12.34");
    assertThat(page.locator("#kept")).not().containsText("not sent yet");
    context.setOffline(false);
    enter(page, "12.34", "valid");
    assertThat(page.locator("#notice")).containsText("no room to keep entries");
    assertThat(meet().attempts()).hasSize(before + 1);
  }

  @Test
  void aPhoneWhoseClockIsAnHourAheadEntersAtTheRightTime() {
    String who = next(page);
    page.evaluate("() => { const now = Date.now; Date.now = () => now() + 3600e3; }");
    context.setOffline(true);
    Instant entered = Instant.now();
    enter(page, "", "foul");
    unsent(page, 1);
    try (BrowserContext other = phone()) {
      Page otherPage = opened(other);
      enter(otherPage, "11.11", "valid");
      assertThat(otherPage.locator(".said")).containsText("Kept: " + who);
    }
    context.setOffline(false);
    sent(page);
    Instant at = Objects.requireNonNull(bench.meets().besides(meet().id()).get(0).at());
    assertThat(Duration.between(entered, at).abs()).isLessThan(Duration.ofMinutes(10));
  }
}
