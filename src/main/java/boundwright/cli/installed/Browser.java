package boundwright.cli.installed;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLConnection;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Opens a page in the user's browser by the system's own command, and tells whether the pages are open already. */
public final class Browser {
  /** How long another program on the port may take to answer [ms]. */
  private static final int PATIENCE_MS = 2000;
  private static final String OWN_FILE = "/assets/boundwright.webmanifest";

  private Browser() {}

  /**
   * Opens a page.
   *
   * @param system the name of the operating system as Java tells it
   * @return false if the system has no such command
   */
  public static boolean open(String url, String system) {
    try {
      new ProcessBuilder(command(url, system))
          .redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  static List<String> command(String url, String system) {
    String asked = system.toLowerCase(Locale.ROOT);
    return asked.startsWith("windows")
        ? List.of("rundll32", "url.dll,FileProtocolHandler", url)
        : List.of(asked.startsWith("mac") ? "open" : "xdg-open", url);
  }

  /** Whether this program answers at the address already: a second click is to show the pages, not a refusal. */
  public static boolean answers(String url) {
    try {
      URLConnection asked = URI.create(url + OWN_FILE).toURL().openConnection();
      asked.setConnectTimeout(PATIENCE_MS);
      asked.setReadTimeout(PATIENCE_MS);
      try (InputStream in = asked.getInputStream()) {
        return new String(in.readNBytes(1 << 16), StandardCharsets.UTF_8).contains("\"boundwright\"");
      }
    } catch (IOException e) {
      return false;
    }
  }
}
