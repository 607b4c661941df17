package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * How much there is to read: words and phone screens of the squad page, the tapes and the squad card, for six athletes who are new
 * and for sixty with a log, and the sheets of the printed card. Words are what is seen when the page opens. Run it with {@code bench/words}; the table stands in {@code docs/words.md}.
 */
public final class WordsBench {
  private static final int WIDE = 390;
  private static final int HIGH = 844;

  /** Words in sight in the page's own part, and how high the page is [px]. A word has a letter or a figure in it. */
  private static final String COUNT =
      """
      () => {
        const words = t => (t.match(/\\S*[\\p{L}\\p{N}]\\S*/gu) || []).length;
        const main = document.querySelector('main');
        const drawn = [...main.querySelectorAll('svg text')].filter(t => t.getClientRects().length > 0 && t.getBoundingClientRect().width > 0).map(t => t.textContent);
        const written = main.innerText;
        return [words(written) + (drawn.some(t => written.includes(t)) ? 0 : words(drawn.join(' '))), document.documentElement.scrollHeight];
      }
      """;

  private WordsBench() {}

  /** No arguments. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    PrintStream out = System.out;
    out.println("| squad | page | words in sight | phone screens | sheets A5 | sheets A4 |");
    out.println("| --- | --- | ---: | ---: | ---: | ---: |");
    try (Playwright playwright = Playwright.create(new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        Browser browser = playwright.chromium().launch(new BrowserType.LaunchOptions().setExecutablePath(chromium()).setArgs(List.of("--no-sandbox", "--disable-gpu")))) {
      for (int athletes : new int[] {6, 60}) {
        Path folder = Files.createTempDirectory("words");
        try (Workbench bench = Workbench.open(folder, Clock.system(ZoneId.systemDefault()))) {
          fill(bench, athletes);
          WebServer server = WebServer.start(bench, "127.0.0.1", 0);
          try {
            Page page = browser.newPage(new Browser.NewPageOptions().setViewportSize(WIDE, HIGH));
            for (String address : List.of("/", "/tapes", "/card")) {
              page.navigate("http://127.0.0.1:" + server.port() + address);
              List<?> counted = (List<?>) page.evaluate(COUNT);
              double screens = ((Number) counted.get(1)).doubleValue() / HIGH;
              boolean card = address.equals("/card");
              out.printf(
                  Locale.ROOT, "| %s | `%s` | %s | %.1f | %s | %s |%n", athletes == 6 ? "6 new" : "60 with a log", address, counted.get(0), screens,
                  card ? sheets(server.port(), "A5") : "", card ? sheets(server.port(), "A4") : "");
            }
            page.close();
          } finally {
            server.close();
          }
        }
      }
    }
  }

  private static Path chromium() {
    String chromium = System.getenv("BOUNDWRIGHT_CHROMIUM");
    return Path.of(chromium == null ? "/usr/bin/chromium" : chromium);
  }

  private static String sheets(int port, String paper) throws IOException, InterruptedException {
    HttpResponse<byte[]> pdf =
        HttpClient.newHttpClient()
            .send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/card.pdf?paper=" + paper)).build(), HttpResponse.BodyHandlers.ofByteArray());
    try (PDDocument read = Loader.loadPDF(pdf.body())) {
      return String.valueOf(read.getNumberOfPages());
    }
  }

  /** Six beginners of whom nothing is known, or a whole squad with a month of reps; the same three drills. */
  static void fill(Workbench bench, int athletes) {
    for (int a = 1; a <= athletes; a++) {
      boolean fresh = athletes <= 6;
      Level level = fresh ? Level.BEGINNER : List.of(Level.BEGINNER, Level.INTERMEDIATE, Level.ADVANCED).get(a % 3);
      Athlete athlete =
          bench.athletes().add(new Athlete(0, String.format(Locale.ROOT, "Invented %02d", a), level, a % 4 == 0 ? Foot.LEFT : Foot.RIGHT, fresh ? 4 : 2 * (a % 7)));
      if (!fresh) {
        bench.logbook().logAll(new InventedReps(a).of(athlete.id(), 60, 10, LocalDate.now(bench.clock()).minusDays(2)));
      }
    }
    bench.settings().keep(
        new DayPlan(
            "Invented day",
            List.of(
                new Drill(Sequence.parse("RL x5"), null, 2, 2, false),
                new Drill(Sequence.parse("RRL x2"), null, 2, 3, true),
                new Drill(Sequence.parse("RRL"), 4, 1, 4, true))));
  }
}
