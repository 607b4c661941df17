package boundwright.browser;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

/** Two coaches, each on a phone of their own, with the same athlete's form open. */
class TwoHandsTest extends PhoneCase {
  @Test
  void theSecondSeesBothValuesAndKeepsWhatTheFirstChangedElse() {
    Athlete athlete = bench.athletes().all().get(0);
    String address = "http://127.0.0.1:" + server.port() + "/athlete/" + athlete.id() + "/edit";
    String theirs = athlete.level() == Level.ADVANCED ? "INTERMEDIATE" : "ADVANCED";
    String mine = athlete.level() == Level.BEGINNER ? "INTERMEDIATE" : "BEGINNER";
    int steps = athlete.rung() == 6 ? 8 : 6;
    try (BrowserContext other = browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setHasTouch(true))) {
      Page second = other.newPage();
      page.navigate(address);
      second.navigate(address);
      page.locator("#level").selectOption(theirs);
      page.locator("#rung").fill(String.valueOf(steps));
      page.locator("button.strong").first().click();
      assertThat(page.locator(".said")).containsText("Saved.");
      second.locator("#level").selectOption(mine);
      second.locator("button.strong").first().click();
      assertThat(second.locator("#athlete-error")).containsText("level " + Level.valueOf(theirs).label());
      assertThat(second.locator("#athlete-error")).containsText("You wrote: level " + Level.valueOf(mine).label());
      assertThat(second.locator("#level")).hasValue(mine);
      assertThat(second.locator("#rung")).hasValue(String.valueOf(steps));
      Assertions.assertThat(bench.athletes().byId(athlete.id()).orElseThrow().level()).isEqualTo(Level.valueOf(theirs));
      second.locator("button.strong").first().click();
      assertThat(second.locator(".said")).containsText("Saved.");
    }
    Athlete kept = bench.athletes().byId(athlete.id()).orElseThrow();
    Assertions.assertThat(kept.level()).isEqualTo(Level.valueOf(mine));
    Assertions.assertThat(kept.rung()).as("what only the first coach changed").isEqualTo(steps);
  }
}
