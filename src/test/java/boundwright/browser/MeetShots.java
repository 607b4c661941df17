package boundwright.browser;

import boundwright.demo.DemoSquad;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;

/** Takes a picture of every page given, on a phone and on a desk, to be looked at: {@code java ... MeetShots FOLDER /path ...}. */
final class MeetShots {
  private MeetShots() {}

  public static void main(String[] args) throws Exception {
    Path data = Files.createTempDirectory("shots");
    try (Workbench bench = Workbench.open(data, Clock.system(ZoneId.systemDefault()));
        WebServer server = start(bench);
        Chromium chromium = new Chromium()) {
      for (int width : new int[] {390, 320, 1280}) {
        try (BrowserContext context = chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(width, width > 800 ? 900 : 844).setDeviceScaleFactor(width > 800 ? 1 : 2))) {
          Page page = context.newPage();
          page.onConsoleMessage(m -> print(m.type() + ": " + m.text()));
          for (int i = 1; i < args.length; i++) {
            page.navigate("http://127.0.0.1:" + server.port() + args[i]);
            page.waitForTimeout(400);
            Object over = page.evaluate("document.documentElement.scrollWidth - innerWidth");
            if (!"0".equals(String.valueOf(over))) {
              print(args[i] + " at " + width + " scrolls sideways by " + over);
            }
            page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(args[0], width + args[i].replaceAll("[^a-z0-9]+", "-") + ".png")).setFullPage(true));
          }
        }
      }
    }
  }

  private static WebServer start(Workbench bench) {
    DemoSquad.fill(bench);
    return WebServer.start(bench, "127.0.0.1", 0);
  }

  @SuppressWarnings("SystemOut")
  private static void print(String line) {
    System.out.println(line);
  }
}
