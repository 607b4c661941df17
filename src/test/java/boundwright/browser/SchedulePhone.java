package boundwright.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** A phone of a schedule: a browser of its own, a connection that comes and goes, a clock that is set wrong, a thumb. */
final class SchedulePhone {
  private static final List<String> OUTCOMES = List.of("SHORT", "IN", "LATE", "ABANDONED");
  /** The phone's clock runs as far beside the right time as is written down here. */
  private static final String CLOCK =
      "(() => { const right = Date.now.bind(Date); Date.now = () => right() + Number(localStorage.getItem('schedule.clock') || 0); })()";

  private final BrowserContext context;
  private final String address;
  private final Random random;
  private @Nullable Page page;
  private boolean there = true;
  /** What the thumb saw light, in order: {@code REP 3 IN}, {@code UNDO}, ... */
  final List<String> lit = new ArrayList<>();

  SchedulePhone(Browser browser, String address, Random random) {
    this.context = browser.newContext(new Browser.NewContextOptions().setViewportSize(360, 640).setHasTouch(true));
    this.context.addInitScript(CLOCK);
    this.context.setDefaultTimeout(40_000);
    this.address = address;
    this.random = random;
  }

  private Page page() {
    if (page == null) {
      throw new IllegalStateException("the page is closed");
    }
    return page;
  }

  /** Opens the page where there is a connection, and waits until the browser has kept it. */
  void begin() {
    page = context.newPage();
    load();
    page().waitForFunction(
        "caches.open('boundwright-pages-2').then(s => s.keys()).then(k => k.some(r => r.url.includes('phone.js')) && k.some(r => r.url.endsWith('/runway')))");
    page().reload();
    ready();
    page().waitForFunction("navigator.serviceWorker.controller !== null");
  }

  private void load() {
    page().navigate(address + "/runway");
    ready();
  }

  private void ready() {
    page().waitForFunction("() => document.getElementById('rw-name') && document.getElementById('rw-name').textContent !== ''");
  }

  /** One thing that happens to this phone; answers what. */
  String act(List<Long> athletes) {
    int what = random.nextInt(20);
    if (page == null) {
      page = context.newPage();
      load();
      return "opened";
    }
    if (what < 11) {
      return tap(athletes);
    }
    return switch (what) {
      case 11, 12 -> undo();
      case 13 -> handOver();
      case 14, 15 -> cut();
      case 16 -> {
        page().reload();
        ready();
        yield "reloaded";
      }
      case 17 -> {
        page().close();
        page = null;
        yield "closed";
      }
      case 18 -> clock();
      default -> {
        page().waitForTimeout(random.nextInt(700));
        yield "waited";
      }
    };
  }

  private String cut() {
    there = !there;
    context.setOffline(!there);
    return there ? "connected" : "cut";
  }

  private String clock() {
    long shift = (random.nextInt(3) - 1) * 3_600_000L;
    page().evaluate("s => localStorage.setItem('schedule.clock', String(s))", (double) shift);
    return "clock " + shift / 3_600_000 + " h";
  }

  private String tap(List<Long> athletes) {
    int who = random.nextInt(athletes.size());
    page().evaluate("i => document.querySelectorAll('#rw-everybody button')[i].click()", who);
    page().evaluate("d => { const s = document.getElementById('rw-drill'); s.value = d; s.dispatchEvent(new Event('change')); }", "1");
    String outcome = OUTCOMES.get(random.nextInt(OUTCOMES.size()));
    if (random.nextInt(4) == 0) {
      page().locator("#rw-chips button").nth(random.nextInt(4)).click();
    }
    page().waitForFunction("() => document.getElementById('rw-taps').getAttribute('aria-busy') !== 'true'");
    page().locator("#rw-taps button[data-outcome=" + outcome + "]").click();
    page().waitForFunction("() => document.querySelector('#rw-taps .lit') !== null");
    lit.add("REP " + athletes.get(who) + " " + outcome);
    return "tapped " + outcome;
  }

  private String undo() {
    Locator undo = page().locator("#rw-undo");
    if (!undo.isVisible()) {
      return "nothing to undo";
    }
    undo.click();
    page().waitForFunction("() => document.getElementById('rw-undo').hidden");
    lit.add("UNDO");
    return "undone";
  }

  private String handOver() {
    if (!page().locator("#rw-undo").isVisible()) {
      return "nothing to hand over";
    }
    page().locator("#rw-what").click();
    page().locator("#rw-chips.giving button").first().click();
    page().waitForFunction("() => document.getElementById('rw-said').textContent.startsWith('Now ')");
    lit.add("HAND");
    return "handed over";
  }

  /** All is well again: the page is open and connected and everything was sent. */
  void end() {
    there = true;
    context.setOffline(false);
    if (page == null) {
      page = context.newPage();
      load();
    }
    for (int i = 0; i < 60; i++) {
      page().evaluate("window.boundwrightSend.run()");
      if ("all sent".equals(page().locator("#rw-net").textContent())) {
        return;
      }
      page().waitForTimeout(500);
    }
    throw new IllegalStateException("not all was sent: " + page().locator("#rw-net").textContent());
  }

  /** Hears what the other phone brought. */
  void hear() {
    page().evaluate("window.boundwrightSend.run()");
  }

  /** What this phone keeps, in its order: {@code nr, token, kind, athleteId, of, outcome, state}. */
  @SuppressWarnings("unchecked")
  List<Map<String, Object>> shelf() {
    return (List<Map<String, Object>>) page().evaluate("window.boundwrightShelf.taps()");
  }

  /** The mark of an athlete as this phone says it [m]. */
  double mark_m(long athleteId) {
    return ((Number)
            page().evaluate("async id => (await import(document.getElementById('rw').dataset.model)).card(id, 1).mark_m", (double) athleteId))
        .doubleValue();
  }

  void close() {
    try {
      context.close();
    } catch (PlaywrightException gone) {
      // the browser is closed with it
      return;
    }
  }
}
