package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The runway page where the connection comes and goes: nothing that was tapped is lost, and nothing is there twice. */
class NoSignalTest extends RunwayCase {
  @BeforeEach
  void ready() throws IOException {
    six();
    opened(page);
  }

  /** Open, and kept by the browser for when there is no connection. */
  private void opened(Page on) {
    runway(on);
    assertThat(on.locator("#rw-tier")).hasText("Opens without a connection too");
    on.reload();
    assertThat(on.locator("#rw-name")).not().isEmpty();
    on.waitForFunction("navigator.serviceWorker.controller !== null");
    on.waitForFunction("caches.open('boundwright-pages-2').then(s => s.keys()).then(k => k.some(r => r.url.includes('phone.js')) && k.some(r => r.url.endsWith('/runway')))");
  }

  private String mark() {
    return page.locator("#rw-mark").textContent().replaceAll("\\s+", " ").strip();
  }

  private String serversMark(String name) {
    double m =
        bench.advisor().advise(athlete(name), Sequence.parse("RRL x2"), 4, Surface.TRACK, bench.settings().settings()).markToSand_m();
    return bench.settings().settings().unit().write(m);
  }

  private void allSent(Page on) {
    assertThat(on.locator("#rw-net")).hasText("all sent", new com.microsoft.playwright.assertions.LocatorAssertions.HasTextOptions().setTimeout(20_000));
  }

  @Test
  void sevenTapsWithoutConnectionMoveTheMarkSurviveReloadingAndAreSentOnceInOrder() {
    context.setOffline(true);
    String before = mark();
    List<String> taps = List.of("IN", "SHORT", "IN", "LATE", "SHORT", "IN", "SHORT");
    for (String t : taps.subList(0, 4)) {
      tap(t);
      turnTo(page, "Bo Lark");
      turnTo(page, "Ada Fenn");
      page.locator("#rw-drill").selectOption("1");
    }
    assertThat(mark()).isNotEqualTo(before);
    assertThat(page.locator("#rw-net")).containsText("4 not sent yet");
    String moved = mark();
    page.reload();
    assertThat(page.locator("#rw-name")).hasText("Ada Fenn");
    assertThat(page.locator("#rw-net")).containsText("4 not sent yet");
    page.locator("#rw-drill").selectOption("1");
    assertThat(mark()).isEqualTo(moved);
    for (String t : taps.subList(4, 7)) {
      tap(t);
      turnTo(page, "Bo Lark");
      turnTo(page, "Ada Fenn");
      page.locator("#rw-drill").selectOption("1");
    }
    assertThat(page.locator("#rw-net")).containsText("7 not sent yet");
    String last = mark();
    assertThat(reps("Ada Fenn")).isEmpty();

    context.setOffline(false);
    allSent(page);
    assertThat(reps("Ada Fenn")).extracting(r -> String.valueOf(r.outcome())).containsExactlyElementsOf(taps);
    assertThat(mark()).isEqualTo(last).isEqualTo(serversMark("Ada Fenn"));
    page.reload();
    assertThat(page.locator("#rw-name")).hasText("Ada Fenn");
    allSent(page);
    assertThat(reps("Ada Fenn")).hasSize(7);
  }

  @Test
  void theProgramDiesAndComesBackAndThePageSendsWithItsRenewedToken() {
    int port = server.port();
    stop();
    tap("IN");
    assertThat(page.locator("#rw-net")).containsText("1 not sent yet");
    context.clearCookies();
    start(port);
    allSent(page);
    assertThat(reps("Ada Fenn")).hasSize(1);
  }

  @Test
  void aPageThatWasClosedStillBringsItsTaps() {
    context.setOffline(true);
    tap("LATE");
    assertThat(page.locator("#rw-net")).containsText("1 not sent yet");
    page.close();
    context.setOffline(false);
    page = context.newPage();
    runway();
    allSent(page);
    assertThat(reps("Ada Fenn")).extracting(Rep::outcome).containsExactly(Outcome.LATE);
  }

  @Test
  void anotherPageSaysInWordsWhatWorks() {
    context.setOffline(true);
    page.navigate("http://127.0.0.1:" + server.port() + "/plan");
    assertThat(page.locator("h1")).hasText("The program cannot be reached");
    page.locator("a.button.strong").click();
    assertThat(page.locator("#rw-name")).hasText("Ada Fenn");
    context.setOffline(false);
  }

  @Test
  void aClockThatIsWrongByAnHourOrADayStillSaysTheRightDay() {
    for (long wrong : new long[] {3_600_000L, -3_600_000L, 86_400_000L, -86_400_000L}) {
      BrowserContext phone = browser.newContext();
      phone.addInitScript("const real = Date.now.bind(Date); Date.now = () => real() + " + wrong + ";");
      Page on = phone.newPage();
      runway(on);
      allSent(on);
      phone.setOffline(true);
      on.locator("#rw-drill").selectOption("1");
      tap(on, "IN");
      phone.setOffline(false);
      allSent(on);
      phone.close();
    }
    LocalDate today = LocalDate.now(bench.clock());
    assertThat(SIX.stream().flatMap(n -> reps(n).stream())).hasSize(4).allSatisfy(r -> assertThat(r.date()).isEqualTo(today));
  }

  @Test
  void aFullPhoneSaysSoAtOnceSendsDirectlyAndLightsNothingWithoutConnection() {
    allSent(page);
    // as the browser refuses when nothing more fits; how full a disk is cannot be set from outside in time
    page.evaluate(
        "window.realAdd = IDBObjectStore.prototype.add;"
            + " IDBObjectStore.prototype.add = function () { throw new DOMException('nothing more fits', 'QuotaExceededError'); }; 0");
    page.locator("#rw-taps button[data-outcome=IN]").click();
    assertThat(page.locator("#rw-trouble")).containsText("storage is full. This one was sent at once");
    assertThat(reps("Ada Fenn")).hasSize(1);
    turnTo(page, "Bo Lark");
    context.setOffline(true);
    // a thumb that bounces is not a second rep: for a moment no tap is taken
    page.waitForTimeout(900);
    page.locator("#rw-taps button[data-outcome=IN]").click();
    assertThat(page.locator("#rw-trouble")).containsText("there is no connection. This was not logged");
    assertThat(page.locator("#rw-taps .lit")).hasCount(0);
    context.setOffline(false);
    page.evaluate("IDBObjectStore.prototype.add = window.realAdd; 0");
    tap("SHORT");
    allSent(page);
    assertThat(reps("Bo Lark")).extracting(Rep::outcome).containsExactly(Outcome.SHORT);
  }

  @Test
  void twoPhonesOnOneAthleteKeepBothAndSeeEachOther() {
    BrowserContext other = browser.newContext();
    Page second = other.newPage();
    runway(second);
    context.setOffline(true);
    other.setOffline(true);
    tap("IN");
    tap(second, "SHORT");
    // the page goes on by itself after a moment: a tap before that is Ada's, one after it is not
    assertThat(second.locator("#rw-name")).not().hasText("Ada Fenn");
    turnTo(second, "Ada Fenn");
    tap(second, "LATE");
    context.setOffline(false);
    other.setOffline(false);
    allSent(page);
    allSent(second);
    assertThat(reps("Ada Fenn")).extracting(Rep::outcome).containsExactlyInAnyOrder(Outcome.IN, Outcome.SHORT, Outcome.LATE);
    for (Page p : List.of(page, second)) {
      turnTo(p, "Ada Fenn");
      p.waitForFunction("() => [...document.getElementById('rw-drill').options][0].textContent.endsWith('3 of 3')");
      p.locator("#rw-drill").selectOption("1");
      assertThat(p.locator("#rw-mark")).containsText(serversMark("Ada Fenn").replace(" m", ""));
    }
    other.close();
  }

  /** The battery dies: the browser is killed at once, and a tap that was lit is there when it starts again. */
  @Test
  void aTapThatWasLitSurvivesADeadBattery() throws Exception {
    Path profile = Files.createTempDirectory(folder, "profile");
    BrowserContext phone = chromium.over(profile);
    Page on = phone.newPage();
    opened(on);
    phone.setOffline(true);
    on.locator("#rw-taps button[data-outcome=SHORT]").click();
    assertThat(on.locator("#rw-taps .lit")).hasCount(1);
    ProcessHandle.allProcesses()
        .filter(p -> p.info().arguments().map(a -> List.of(a).contains("--user-data-dir=" + profile)).orElse(false))
        .forEach(ProcessHandle::destroyForcibly);
    page.waitForTimeout(1_000);
    assertThat(reps("Ada Fenn")).isEmpty();
    BrowserContext again = chromium.over(profile);
    Page back = again.newPage();
    runway(back);
    allSent(back);
    assertThat(reps("Ada Fenn")).extracting(Rep::outcome).containsExactly(Outcome.SHORT);
    again.close();
  }
}
