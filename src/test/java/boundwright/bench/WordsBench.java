package boundwright.bench;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.browser.Chromium;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
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
    try (Chromium chromium = new Chromium()) {
      for (int athletes : new int[] {6, 60}) {
        Path folder = Files.createTempDirectory("words");
        try (Workbench bench = Workbench.open(folder, Clock.system(ZoneId.systemDefault()))) {
          fill(bench, athletes);
          WebServer server = WebServer.start(bench, "127.0.0.1", 0);
          try {
            Page page = chromium.browser().newPage(new Browser.NewPageOptions().setViewportSize(WIDE, HIGH));
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
      Athlete athlete = bench.athletes().add(fresh ? InventedSquad.athlete(a, Level.BEGINNER, 4) : InventedSquad.athlete(a));
      if (!fresh) {
        bench.logbook().logAll(new InventedReps(a).of(athlete.id(), 60, 10, LocalDate.now(bench.clock()).minusDays(2)));
      }
    }
    bench.settings().keep(InventedSquad.DAY);
  }
}
