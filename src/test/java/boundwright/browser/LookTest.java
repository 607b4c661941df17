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
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
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
 * Every page of the invented squad as it is seen: on a small phone and on a desk, by day and with the dark setting. The rules of
 * access are axe-core's (version 4.10.2, WCAG 2.2 A and AA; read as its own messages); the strong contrast of 7 : 1 is WCAG 2.2,
 * success criterion 1.4.6 (published); 48 px for a finger, 12 px for the words of a picture and the words that no coach uses are the
 * house's own.
 */
class LookTest extends PhoneCase {
  private static final String AXE = axe();

  /** Words of the code that no screen shows, folded parts too. */
  static final String FORBIDDEN =
      "\\b(windows?|asked chance|rungs?|gates?|guards?|judged reps)\\b";

  /** Read from further off than an arm: 7 : 1. */
  private static final String FAR =
      "h1, .figure .fig, .mark .fig, .who b, .watch b, button, .button, .warnings li, .warn, .taps button b, .fig, .guard > summary, .together, .together b";

  private static final String RUN =
      """
      async ([far, tags]) => {
        const options = {resultTypes: ['violations'], rules: {'color-contrast-enhanced': {enabled: true}}};
        options.runOnly = tags.length ? {type: 'tag', values: tags} : {type: 'rule', values: ['color-contrast', 'color-contrast-enhanced']};
        const found = await axe.run(document, options);
        const counts = (v, n) => v.id !== 'color-contrast-enhanced' || document.querySelector(n.target[n.target.length - 1])?.matches(far);
        return found.violations
          .map(v => [v.id, v.nodes.filter(n => counts(v, n))])
          .filter(([id, nodes]) => nodes.length)
          .map(([id, nodes]) => id + ': ' + nodes.slice(0, 4).map(n => n.target.join(' ') + ' ' + (n.any[0] || n.all[0] || n.none[0] || {message: ''}).message.slice(0, 120)).join(' | '));
      }
      """;

  private static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

  private static final String SMALL_LETTERS =
      """
      () => [...document.querySelectorAll('main svg text')]
        .map(t => [t, t.getBoundingClientRect(), parseFloat(getComputedStyle(t).fontSize) * (t.ownerSVGElement.getScreenCTM() || {a: 1}).a])
        .filter(([t, box, px]) => box.width > 0 && px < 11.95)
        .map(([t, box, px]) => t.textContent + ' ' + px.toFixed(1) + ' px')
      """;

  private static String axe() {
    try (InputStream in = LookTest.class.getResourceAsStream("/axe.min.js")) {
      if (in == null) {
        throw new IllegalStateException("axe.min.js is not on the class path");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

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
    complain(wrong, address, "words", page.evaluate("w => (document.body.textContent.match(new RegExp(w, 'gi')) || []).slice(0, 3)", FORBIDDEN));
    complain(wrong, address, "letters", page.evaluate(SMALL_LETTERS));
    String small = (String) page.evaluate(SMALL_TARGETS);
    complain(wrong, address, "targets", small.isEmpty() ? List.of() : List.of(small));
    page.evaluate(AXE);
    axe(address, 360, ColorScheme.LIGHT, RULES, wrong);
    axe(address, 1366, ColorScheme.DARK, whole ? RULES : List.of(), wrong);
    if (whole) {
      axe(address, 360, ColorScheme.DARK, RULES, wrong);
      axe(address, 1366, ColorScheme.LIGHT, RULES, wrong);
    }
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    page.setViewportSize(320, 640);
    complain(wrong, address, "sideways", page.evaluate("() => document.documentElement.scrollWidth > 320 ? ['scrolls sideways at 320: ' + document.documentElement.scrollWidth] : []"));
    page.setViewportSize(360, 740);
  }

  private void axe(String address, int width, ColorScheme scheme, List<String> rules, Set<String> wrong) {
    page.setViewportSize(width, width == 360 ? 740 : 900);
    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    complain(wrong, address, width + " " + scheme, page.evaluate(RUN, List.of(FAR, rules)));
  }

  private static void complain(Set<String> wrong, String address, String what, Object said) {
    for (Object line : (List<?>) said) {
      wrong.add(address + " [" + what + "] " + line);
    }
  }
}
