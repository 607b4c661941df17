package boundwright.browser;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * The system's Chromium, never one that is downloaded: looked for at the path in the environment variable BOUNDWRIGHT_CHROMIUM, then at
 * {@code /usr/bin/chromium}.
 */
public final class Chromium implements AutoCloseable {
  private static final List<String> SWITCHES =
      List.of(
          "--headless",
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  static {
    // a machine that does other work answers late; what never comes is told soon enough
    PlaywrightAssertions.setDefaultAssertionTimeout(40_000);
  }

  private final Playwright playwright =
      Playwright.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
  private final Browser browser =
      type().launch(new BrowserType.LaunchOptions().setExecutablePath(path()).setHeadless(true).setArgs(SWITCHES));

  private static Path path() {
    return Path.of(System.getenv().getOrDefault("BOUNDWRIGHT_CHROMIUM", "/usr/bin/chromium"));
  }

  private BrowserType type() {
    return playwright.chromium();
  }

  /** It, running. */
  public Browser browser() {
    return browser;
  }

  /** Another one that keeps what it stores in {@code profile}, so that it can be killed and started again over the same. */
  BrowserContext over(Path profile) {
    return type()
        .launchPersistentContext(
            profile, new BrowserType.LaunchPersistentContextOptions().setExecutablePath(path()).setHeadless(true).setArgs(SWITCHES));
  }

  @Override
  public void close() {
    browser.close();
    playwright.close();
  }
}
