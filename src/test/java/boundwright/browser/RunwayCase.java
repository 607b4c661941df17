package boundwright.browser;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;

/** The runway page on a phone, over the invented squad or six athletes of nobody. */
abstract class RunwayCase extends PhoneCase {
  /** Long enough for the page to go on by itself. */
  static final int GOES_ON_MS = 2_200;
  static final List<String> SIX = List.of("Ada Fenn", "Bo Lark", "Cy Marrow", "Dot Ashby", "Ely Quarr", "Fay Thorne");


  Path data = Path.of("");

  /** In place of the invented squad: six athletes, and a plan of a drill into sand and one on the flat. */
  final void six() throws IOException {
    server.close();
    bench.close();
    data = Files.createTempDirectory(folder, "six");
    bench = Workbench.open(data, Clock.system(ZoneId.systemDefault()));
    for (String name : SIX) {
      bench.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4));
    }
    bench
        .settings()
        .keep(
            new DayPlan(
                "", List.of(new Drill(Sequence.parse("RRL x2"), null, 1, 3, true), new Drill(Sequence.parse("RL x5"), 0, 1, 2, false))));
    server = WebServer.start(bench, "127.0.0.1", 0);
  }

  /** Stops the program and starts it again over the same data, at the same address. */
  final void restart() {
    int port = server.port();
    stop();
    start(port);
  }

  final void stop() {
    server.close();
    bench.close();
  }

  final void start(int port) {
    bench = Workbench.open(data, Clock.system(ZoneId.systemDefault()));
    server = WebServer.start(bench, "127.0.0.1", port);
  }

  final void runway() {
    runway(page);
  }

  final void runway(Page on) {
    on.navigate("http://127.0.0.1:" + server.port() + "/runway");
    PlaywrightAssertions.assertThat(on.locator("#rw-name")).not().isEmpty();
  }

  final void tap(String outcome) {
    tap(page, outcome);
  }

  /** A result, and then until it is kept. */
  final void tap(Page on, String outcome) {
    // a thumb that bounces is let off for a moment
    PlaywrightAssertions.assertThat(on.locator("#rw-taps:not([aria-busy=true])")).isVisible();
    on.locator("#rw-taps button[data-outcome=" + outcome + "]").click();
    PlaywrightAssertions.assertThat(on.locator("#rw-taps[aria-busy=false]")).isVisible();
  }

  final void turnTo(Page on, String name) {
    if (on.locator("#rw-name").textContent().equals(name)) {
      return;
    }
    on.locator("#rw-all").evaluate("d => d.open = true");
    on.locator("#rw-everybody button", new Page.LocatorOptions().setHasText(name)).first().click();
    PlaywrightAssertions.assertThat(on.locator("#rw-name")).hasText(name);
  }

  final String name() {
    return page.locator("#rw-name").textContent();
  }

  final Athlete athlete(String name) {
    return bench.athletes().byName(name).orElseThrow();
  }

  final List<Rep> reps(String name) {
    return bench.reps().inOrder(athlete(name).id());
  }

  final void waitFor(java.util.function.BooleanSupplier there) {
    for (int i = 0; i < 200 && !there.getAsBoolean(); i++) {
      page.waitForTimeout(100);
    }
  }

  /** A lost connection is said by the browser too. */
  @Override
  boolean pardoned(String complaint) {
    return super.pardoned(complaint) || complaint.contains("net::ERR_") || complaint.contains("status of 403") || complaint.contains("status of 503");
  }
}
