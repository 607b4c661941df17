package boundwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.account.Club;
import boundwright.account.Role;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.demo.InventedFolder;
import boundwright.footfall.Foot;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A phone as {@link PhoneCase}, over one program for all tests of a class, whose day can be moved on. Each test has athletes of its own. */
abstract class OneProgramCase extends PhoneCase {
  @TempDir static Path lasting;

  final Days clock = new Days();
  private boolean started;

  /** The day of the machine, some days on. */
  static final class Days extends Clock {
    private int on;

    void on(int days) {
      on += days;
    }

    @Override
    public ZoneId getZone() {
      return ZoneId.systemDefault();
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return Clock.systemUTC().instant().plus(Duration.ofDays(on));
    }
  }

  @Override
  @BeforeEach
  void open() throws IOException {
    if (!started) {
      bench = Workbench.open(InventedFolder.fill(Files.createTempDirectory(lasting, "data"), clock), clock);
      server = WebServer.start(bench, "127.0.0.1", 0);
      started = true;
    }
    complaints.clear();
    newPage(390, 844, true);
  }

  @Override
  @AfterEach
  void close() {
    context.close();
    complaints.removeIf(this::pardoned);
    assertThat(complaints).as("what the browser complained of").isEmpty();
  }

  @AfterAll
  void stop() {
    server.close();
    bench.close();
  }

  final LocalDate today() {
    return LocalDate.now(clock);
  }

  final Athlete named(String name) {
    return bench.athletes().byName(name).orElseThrow();
  }

  final Athlete added(String name) {
    return bench.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4));
  }

  /** In place of the page, one on which no script runs. */
  final void withoutScripts() {
    context.close();
    context = browser.newContext(new Browser.NewContextOptions().setViewportSize(390, 844).setHasTouch(true).setJavaScriptEnabled(false));
    page = context.newPage();
  }

  /** A form was refused: the browser says that too. */
  final void refused() {
    complaints.removeIf(c -> c.contains("422"));
  }

  static final String base(WebServer open) {
    return "http://127.0.0.1:" + open.port();
  }

  /** Somebody comes in by their link. */
  final void in(WebServer open, Role role, @Nullable Long athlete) {
    context.close();
    newPage(390, 844, true);
    long account = open.accounts().make(role.name().toLowerCase(Locale.ROOT), "The " + role.label(), role, Club.FIRST, athlete).id();
    page.navigate(base(open) + "/enter/" + open.accounts().link(account));
    page.locator("#password").fill("four bounds then sand");
    page.getByText("Set it and log in").tap();
    PlaywrightAssertions.assertThat(page.locator("footer")).containsText(role.label());
  }

  /** What is written in the PDF that is fetched. */
  final String printed(Locator link) throws IOException {
    byte[] pdf = Files.readAllBytes(page.waitForDownload(link::click).path());
    assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    try (PDDocument paper = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(paper);
    }
  }

  /**
   * Looks at pages as a coach does: in the hand at 360 and 390 px and on a desk at 1366, in metres and in feet, with all that is folded open;
   * by thumb, by eye, by keys alone, by the rules of access, and on paper.
   */
  final void looksRight(List<String> paths) {
    List<String> wrong = new ArrayList<>();
    CoachSettings before = bench.settings().settings();
    for (LengthUnit unit : LengthUnit.values()) {
      bench.settings().keep(new CoachSettings(unit, before.marks(), before.facility(), before.setContacts()));
      for (String path : paths) {
        visit(path);
        page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true; })");
        for (int width : new int[] {360, 390, 1366}) {
          page.setViewportSize(width, width < 1000 ? 844 : 900);
          String at = path + " at " + width + " in " + unit + ": ";
          complain(wrong, at, Look.sideways(page));
          complain(wrong, at, Look.letters(page));
          complain(wrong, at, Look.overlaps(page));
          complain(wrong, at, width < 1000 ? Look.targets(page) : List.of());
        }
        if (unit == LengthUnit.METRES) {
          complain(wrong, path + ": ", Look.words(page));
          complain(wrong, path + " on paper: ", Look.onPaper(page));
          complain(wrong, path + " on a desk: ", Look.axe(page, List.of()));
          page.setViewportSize(360, 844);
          complain(wrong, path + ": ", Look.axe(page, Look.RULES));
          complain(wrong, path + " by keys: ", Look.keyboard(page));
        }
      }
    }
    bench.settings().keep(before);
    assertThat(wrong).as(String.join("\n", wrong)).isEmpty();
  }

  private static void complain(List<String> wrong, String at, List<String> said) {
    said.forEach(line -> wrong.add(at + line));
  }

  /** A key of a group of radios, by what stands on it. */
  final Locator key(String label) {
    return page.locator(".segments label", new Page.LocatorOptions().setHasText(Pattern.compile("^" + label + "$")));
  }
}
