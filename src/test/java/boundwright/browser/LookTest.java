package boundwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.demo.DemoSeason;
import boundwright.season.PlainPlanner;
import boundwright.season.SeasonInput;
import boundwright.season.desk.SeasonDesk;
import boundwright.season.solve.SeasonWork;
import boundwright.store.season.SeasonFile;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Every page of the invented squad as it is seen: on a small phone and on a desk, by day and with the dark setting; by what
 * see {@link Look}.
 */
class LookTest extends PhoneCase {
  /**
   * Follows the links from the front page and looks at two pages of each kind. The whole walk asks everything at both sizes and in
   * both themes and is run by {@code bench/look}; the share of every build asks all rules on the phone by day and the contrast on the desk
   * by night.
   */
  @Test
  void everyPageCanBeReadByEverybody() {
    boolean whole = "whole".equals(System.getenv("BOUNDWRIGHT_LOOK"));
    Set<String> wrong = new TreeSet<>();
    season();
    context.close();
    newPage(360, 740, true);
    Set<String> found = new LinkedHashSet<>();
    Map<String, Integer> kinds = new HashMap<>();
    Deque<String> next = new ArrayDeque<>(List.of("/"));
    while (!next.isEmpty()) {
      String address = next.removeFirst();
      String kind = address.replaceAll("\\?.*", "").replaceAll("\\d+", "N");
      int most = kind.equals("/athlete/N") || (whole && kind.equals("/athlete/N/care")) ? 2 : 1;
      if (found.contains(address) || kinds.merge(kind, 1, Integer::sum) > most) {
        continue;
      }
      found.add(address);
      visit(address);
      look(address, whole, wrong);
      for (Object href : (List<?>) page.evaluate("() => [...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href'))")) {
        String link = String.valueOf(href).replaceAll("#.*", "");
        if (link.startsWith("/") && !link.contains(".csv") && !link.contains(".pdf") && !link.contains(".json")) {
          next.addLast(link);
        }
      }
    }
    assertThat(found).hasSizeGreaterThan(25);
    assertThat(wrong).as(String.join("\n", wrong)).isEmpty();
  }

  /** Three of the squad have a season, so that its pages are looked at with something in them. */
  private void season() {
    SeasonInput season = DemoSeason.from(LocalDate.now(bench.clock()).minusWeeks(6), bench.care().guard());
    byte[] file = SeasonFile.write(season, bench.care().guard(), "").getBytes(StandardCharsets.UTF_8);
    SeasonDesk desk = new SeasonDesk(bench.seasons(), SeasonWork::ofFile, bench.clock(), new Random(1));
    long id = desk.keep(SeasonFile.read(file, bench.care().guard(), (name, written) -> bench.athletes().byName(name).orElseThrow().id()));
    bench.seasons().publish(id, new PlainPlanner().plan(desk.input(id), Optional.empty()), bench.clock().instant());
  }

  private void look(String address, boolean whole, Set<String> wrong) {
    complain(wrong, address, "words", Look.words(page));
    complain(wrong, address, "letters", Look.letters(page));
    complain(wrong, address, "targets", Look.targets(page));
    axe(address, 360, ColorScheme.LIGHT, Look.RULES, wrong);
    axe(address, 1366, ColorScheme.DARK, whole ? Look.RULES : List.of(), wrong);
    if (whole) {
      axe(address, 360, ColorScheme.DARK, Look.RULES, wrong);
      axe(address, 1366, ColorScheme.LIGHT, Look.RULES, wrong);
    }
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    page.setViewportSize(320, 640);
    complain(wrong, address, "sideways", Look.sideways(page));
    page.setViewportSize(360, 740);
  }

  private void axe(String address, int width, ColorScheme scheme, List<String> rules, Set<String> wrong) {
    page.setViewportSize(width, width == 360 ? 740 : 900);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    complain(wrong, address, width + " " + scheme, Look.axe(page, rules));
  }

  private static void complain(Set<String> wrong, String address, String what, List<String> said) {
    for (String line : said) {
      wrong.add(address + " [" + what + "] " + line);
    }
  }
}
