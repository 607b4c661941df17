package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import boundwright.flight.Outcome;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/** A session in one hand, in real Chromium. The limits are those of the issue that asked for the page. */
class RunwayTest extends RunwayCase {
  /** Goes through everybody and every drill in the page and says what lies outside the first screen. */
  private static final String OUTSIDE =
      """
      () => {
        const out = { bad: [], shown: 0, warned: 0, held: 0, flat: 0, tray: 0 };
        const names = [...document.querySelectorAll('#rw-everybody button')];
        const box = (e) => e.getBoundingClientRect();
        for (let i = 0; i < names.length; i++) {
          document.querySelectorAll('#rw-everybody button')[i].click();
          const drill = document.getElementById('rw-drill');
          for (const o of [...drill.options].map((o) => o.value)) {
            drill.value = o;
            drill.dispatchEvent(new Event('change'));
            window.scrollTo(0, 0);
            const tray = box(document.getElementById('rw-tray'));
            const who = document.getElementById('rw-name').textContent + ' ' + o;
            out.shown++;
            out.tray = Math.max(out.tray, tray.height);
            if (!document.getElementById('rw-warn').hidden) out.warned++;
            if (document.getElementById('rw-mark').classList.contains('words')) out.held++;
            if (document.getElementById('rw-taps').classList.contains('flat')) out.flat++;
            const above = tray.left < 1 ? tray.top : innerHeight;
            for (const id of ['rw-name', 'rw-mark']) {
              const b = box(document.getElementById(id));
              if (b.top < 0 || b.bottom > above + 0.5 || b.left < 0 || b.right > innerWidth + 0.5 || b.height < 10) out.bad.push(who + ' ' + id + ' ' + b.bottom);
            }
            for (const e of document.querySelectorAll('#rw-mark .fig, #rw-mark .unit')) {
              if (box(e).right > innerWidth) out.bad.push(who + ' mark too wide ' + box(e).right);
            }
            for (const e of document.querySelectorAll('#rw-taps button:not([hidden])')) {
              const b = box(e);
              if (b.top < 0 || b.bottom > innerHeight + 0.5 || b.height < 48) out.bad.push(who + ' ' + e.dataset.outcome + ' ' + b.bottom);
            }
            if (document.documentElement.scrollWidth > innerWidth) out.bad.push(who + ' scrolls sideways ' + document.documentElement.scrollWidth);
          }
        }
        return out;
      }
      """;

  private static CoachSettings inFeet(CoachSettings s) {
    return new CoachSettings(LengthUnit.FEET_INCHES, s.marks(), s.facility(), s.setContacts());
  }

  @SuppressWarnings("unchecked")
  private void everythingInTheFirstScreen(int width, int height) {
    context.close();
    newPage(width, height, true);
    runway();
    Map<String, Object> seen = (Map<String, Object>) page.evaluate(OUTSIDE);
    assertThat((List<String>) seen.get("bad")).as(width + " x " + height + " " + seen).isEmpty();
    assertThat(number(seen, "shown")).isGreaterThan(20);
    assertThat(number(seen, "warned")).as("with a warning").isPositive();
    assertThat(number(seen, "flat")).as("on the flat").isPositive();
    assertThat(number(seen, "tray")).as("tray").isLessThanOrEqualTo(200);
  }

  @Test
  void markNameAndResultsAreInTheFirstScreenOnEveryDrill() {
    everythingInTheFirstScreen(360, 640);
    everythingInTheFirstScreen(390, 844);
    everythingInTheFirstScreen(1366, 900);
  }

  @Test
  void feetAndInchesFitTooAndNothingScrollsSidewaysAt320() {
    bench.settings().keep(inFeet(bench.settings().settings()));
    everythingInTheFirstScreen(360, 640);
    context.close();
    newPage(320, 640, true);
    runway();
    assertThat((Boolean) page.evaluate("document.documentElement.scrollWidth <= 320")).isTrue();
    assertThat((String) page.evaluate(SMALL_TARGETS)).isEmpty();
  }

  private static double number(Map<String, Object> seen, String key) {
    return Objects.requireNonNull((Number) seen.get(key), key).doubleValue();
  }

  /** Everything a thumb does, counted: results, looks, and whoever must be chosen by hand. */
  private int session(List<String> order, boolean look) {
    int taps = 0;
    for (int round = 0; round < 3; round++) {
      for (String who : order) {
        if (!name().equals(who)) {
          Locator five = page.locator("#rw-five button[aria-label='" + who + "']");
          taps += five.count() > 0 ? 1 : 2;
          if (five.count() > 0) {
            five.click();
          } else {
            turnTo(page, who);
          }
        }
        if (look) {
          page.locator("#rw-chips button").first().click();
          taps++;
        }
        page.locator("#rw-taps button[data-outcome=IN]").click();
        taps++;
        assertThat(page.locator("#rw-taps .lit")).hasCount(1);
        page.clock().runFor(GOES_ON_MS);
        assertThat(page.locator("#rw-taps .lit")).hasCount(0);
      }
    }
    return taps;
  }

  @Test
  void eighteenRepsOfSixTakeAtMostOnePointThreeTapsEach() throws IOException {
    six();
    page.clock().install();
    runway();
    int taps = session(SIX, false);
    assertThat(taps / 18.0).as(taps + " taps").isLessThanOrEqualTo(1.3);
    waitFor(() -> SIX.stream().allMatch(n -> reps(n).size() == 3));
    SIX.forEach(n -> assertThat(reps(n)).as(n).hasSize(3).allSatisfy(r -> assertThat(r.judged()).isFalse()));
  }

  @Test
  void withALookAtMostTwoPointThreeAlsoInAnOrderOfTheirOwn() throws IOException {
    six();
    page.clock().install();
    runway();
    int taps = session(List.of(SIX.get(0), SIX.get(2), SIX.get(1), SIX.get(3), SIX.get(5), SIX.get(4)), true);
    assertThat(taps / 18.0).as(taps + " taps").isLessThanOrEqualTo(2.3);
    waitFor(() -> SIX.stream().allMatch(n -> reps(n).size() == 3));
    SIX.forEach(n -> assertThat(reps(n)).as(n).hasSize(3).allSatisfy(r -> assertThat(r.judged()).isTrue()));
  }

  /** A result and, as soon as a thumb may come down again, two chips; in the page itself, since a busy machine outlasts the moment in which the look belongs to this rep. */
  private static final String IN_AND_TWO_CHIPS =
      """
      async () => {
        document.querySelector('#rw-taps button[data-outcome=IN]').click();
        const till = async (so) => {
          for (let i = 0; !so(); i++) {
            if (i > 1000) throw new Error('never: ' + so);
            await new Promise((r) => setTimeout(r, 20));
          }
        };
        await till(() => document.getElementById('rw-said').textContent.startsWith('Ada'));
        const chips = () => document.querySelectorAll('#rw-chips button');
        chips()[1].click();
        chips()[2].click();
        await till(() => document.querySelectorAll('#rw-chips button[aria-pressed=true]').length === 2);
      }
      """;

  @Test
  void nothingIsLookedAtUntilTheCoachSaysSo() throws IOException {
    six();
    runway();
    assertThat(page.locator("#rw-chips button[aria-pressed=true]")).hasCount(0);
    turnTo(page, "Cy Marrow");
    tap("IN");
    waitFor(() -> !reps("Cy Marrow").isEmpty());
    assertThat(reps("Cy Marrow").get(0).judged()).isFalse();
    turnTo(page, "Ada Fenn");
    // the look at the rep just logged can still be said, also a second chip before the phone has written the first
    page.evaluate(IN_AND_TWO_CHIPS);
    waitFor(() -> !reps("Ada Fenn").isEmpty() && reps("Ada Fenn").get(0).faults().size() == 2);
    assertThat(reps("Ada Fenn").get(0).judged()).isTrue();
    assertThat(reps("Ada Fenn").get(0).faults()).as("a second chip is of the same rep").hasSize(2);
    assertThat(page.locator("#rw-name")).hasText("Bo Lark");
    assertThat(page.locator("#rw-said")).containsText("Say:");
    assertThat(page.locator("#rw-chips button[aria-pressed=true]")).hasCount(0);
    page.locator("#rw-chips button").first().click();
    tap("LATE");
    waitFor(() -> !reps("Bo Lark").isEmpty());
    assertThat(reps("Bo Lark").get(0).judged()).isTrue();
    assertThat(reps("Bo Lark").get(0).faults()).isEmpty();
  }

  @Test
  void aRepOfTheWrongAthleteIsHandedOverInTwoTapsAndUndoneInOne() throws IOException {
    six();
    runway();
    tap("IN");
    page.waitForTimeout(GOES_ON_MS);
    page.locator("#rw-what").click();
    page.locator("#rw-chips button[aria-label='It was Cy Marrow']").click();
    waitFor(() -> !reps("Cy Marrow").isEmpty());
    assertThat(reps("Ada Fenn")).isEmpty();
    assertThat(reps("Cy Marrow")).hasSize(1);
    assertThat(bench.loadDesk().day(athlete("Cy Marrow")).said()).isNotEqualTo(bench.loadDesk().day(athlete("Ada Fenn")).said());
    page.locator("#rw-undo").click();
    waitFor(() -> reps("Cy Marrow").isEmpty());
    assertThat(reps("Cy Marrow")).isEmpty();
    assertThat(page.locator("#rw-said")).containsText("taken back");
  }

  @Test
  void theDrillMovesOnWhenItsRepsAreDoneAndOnTheFlatARepIsDone() throws IOException {
    six();
    runway();
    for (int i = 0; i < 3; i++) {
      assertThat(page.locator("#rw-drill")).hasValue("1");
      tap("IN");
      turnTo(page, "Bo Lark");
      turnTo(page, "Ada Fenn");
    }
    assertThat(page.locator("#rw-drill")).hasValue("2");
    assertThat(page.locator("#rw-label")).containsText("ground");
    tap("DONE");
    waitFor(() -> reps("Ada Fenn").size() == 4);
    assertThat(reps("Ada Fenn").get(3).outcome()).isEqualTo(Outcome.DONE);
    turnTo(page, "Bo Lark");
    assertThat(page.locator("#rw-drill")).hasValue("1");
    page.locator("#rw-drill").selectOption("2");
    assertThat(page.locator("#rw-label")).containsText("ground");
  }

  @Test
  void theTapeStaysWhereItLayUntilItIsMoved() throws IOException {
    six();
    runway();
    String first = page.locator("#rw-mark").textContent().strip();
    tap("SHORT");
    turnTo(page, "Bo Lark");
    turnTo(page, "Ada Fenn");
    assertThat(page.locator("#rw-tape")).containsText("Tape lies at " + first.replaceAll("\\s+", " "));
    page.locator("#rw-moved").click();
    assertThat(page.locator("#rw-tape")).isEmpty();
    tap("IN");
    waitFor(() -> reps("Ada Fenn").size() == 2);
    assertThat(reps("Ada Fenn").get(1).markToSand_m()).isNotEqualTo(reps("Ada Fenn").get(0).markToSand_m());
  }

  @Test
  void somebodyWhoIsHeldGetsNoMarkAndIsPassedOn() {
    runway();
    Locator held = page.locator("#rw-everybody button", new Page.LocatorOptions().setHasText("no bounding")).first();
    page.locator("#rw-all").evaluate("d => d.open = true");
    held.click();
    assertThat(page.locator("#rw-mark")).containsText("No bounding.");
    assertThat(page.locator("#rw-start")).isEmpty();
    assertThat(page.locator("#rw-strip svg")).hasCount(0);
    String before = name();
    page.locator("#rw-next").click();
    assertThat(page.locator("#rw-name")).not().hasText(before);
    page.locator("#rw-prev").click();
  }

  @Test
  void theKeyboardReachesTheResultsWithinSixTabsAndArrowsTurnThePage() {
    runway();
    int tabs = 0;
    while (tabs < 7 && !(Boolean) page.evaluate("document.activeElement.matches('#rw-taps button')")) {
      page.keyboard().press("Tab");
      tabs++;
    }
    assertThat(tabs).isLessThanOrEqualTo(6);
    String before = name();
    page.keyboard().press("ArrowRight");
    assertThat(page.locator("#rw-name")).not().hasText(before);
    page.keyboard().press("ArrowLeft");
    assertThat(page.locator("#rw-name")).hasText(before);
  }

  @Test
  void aSwipeGoesToTheNextAndBack() {
    runway();
    String before = name();
    String swipe =
        """
        (dx) => {
          const card = document.getElementById('rw-card');
          const at = (x) => new Touch({ identifier: 1, target: card, clientX: x, clientY: 200 });
          card.dispatchEvent(new TouchEvent('touchstart', { touches: [at(180)], changedTouches: [at(180)], bubbles: true }));
          card.dispatchEvent(new TouchEvent('touchend', { touches: [], changedTouches: [at(180 + dx)], bubbles: true }));
        }
        """;
    page.evaluate(swipe, -120);
    assertThat(page.locator("#rw-name")).not().hasText(before);
    page.evaluate(swipe, 120);
    assertThat(page.locator("#rw-name")).hasText(before);
  }
}
