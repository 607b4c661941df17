package boundwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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
      "['h1','.figure .fig','.mark .fig','.who b','.watch b','button','.button','.warnings li','.warn','.taps button b','.fig','.guard > summary']";

  private static final String RUN =
      """
      async (strong) => {
        const all = await axe.run(document, {runOnly: {type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']}, resultTypes: ['violations']});
        const far = strong.filter(s => [...document.querySelectorAll(s)].some(e => e.offsetParent !== null));
        const sharp = far.length === 0 ? {violations: []} : await axe.run({include: far.map(s => [s])}, {runOnly: ['color-contrast-enhanced'], resultTypes: ['violations']});
        return [...all.violations, ...sharp.violations].map(v => v.id + ': ' + v.nodes.slice(0, 4).map(n => n.target.join(' ') + ' ' + (n.any[0] || n.all[0] || n.none[0] || {message: ''}).message.slice(0, 120)).join(' | '));
      }
      """;

  private static final String SMALL_LETTERS =
      """
      () => [...document.querySelectorAll('main svg text')]
        .map(t => [t, t.getBoundingClientRect(), parseFloat(getComputedStyle(t).fontSize) * (t.ownerSVGElement.getScreenCTM() || {a: 1}).a])
        .filter(([t, box, px]) => box.width > 0 && px < 11.95)
        .map(([t, box, px]) => t.textContent + ' ' + px.toFixed(1) + ' px')
      """;

  private static final String TARGETS =
      """
      () => [...document.querySelectorAll('button, input:not([type=hidden],[type=radio],[type=checkbox]), select, textarea, summary, .segments label, .ticks label, nav a, .squad a, .watch a, a.button')]
        .filter(e => e.getClientRects().length > 0 && !e.closest('.for-ears') && !e.classList.contains('for-ears') && !e.classList.contains('skip'))
        .filter(e => e.getBoundingClientRect().height < 47.5)
        .map(e => e.tagName + ' ' + (e.textContent || e.id).trim().slice(0, 24) + ' ' + e.getBoundingClientRect().height.toFixed(1))
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

  /** The addresses of the house, two of each kind, found by following the links from the front page. */
  private List<String> addresses() {
    Set<String> found = new LinkedHashSet<>();
    Map<String, Integer> kinds = new HashMap<>();
    Deque<String> next = new ArrayDeque<>(List.of("/"));
    while (!next.isEmpty()) {
      String address = next.removeFirst();
      String kind = address.replaceAll("\\?.*", "").replaceAll("\\d+", "N");
      int most = kind.equals("/athlete/N") || kind.equals("/athlete/N/care") ? 2 : 1;
      if (found.contains(address) || kinds.merge(kind, 1, Integer::sum) > most) {
        continue;
      }
      found.add(address);
      visit(address);
      for (Object href : (List<?>) page.evaluate("() => [...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href'))")) {
        String link = String.valueOf(href).replaceAll("#.*", "");
        if (link.startsWith("/") && !link.contains(".csv") && !link.contains(".pdf") && !link.contains(".json")) {
          next.addLast(link);
        }
      }
    }
    return new ArrayList<>(found);
  }

  @Test
  void everyPageCanBeReadByEverybody() {
    Set<String> wrong = new TreeSet<>();
    newPage(360, 740, true);
    List<String> addresses = addresses();
    assertThat(addresses).hasSizeGreaterThan(25);
    for (String address : addresses) {
      visit(address);
      complain(wrong, address, "words", page.evaluate("w => (document.body.textContent.match(new RegExp(w, 'gi')) || []).slice(0, 3)", FORBIDDEN));
      complain(wrong, address, "letters", page.evaluate(SMALL_LETTERS));
      complain(wrong, address, "targets", page.evaluate(TARGETS));
      page.evaluate(AXE);
      for (boolean desk : new boolean[] {false, true}) {
        page.setViewportSize(desk ? 1366 : 360, desk ? 900 : 740);
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
          page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
          complain(wrong, address, (desk ? "desk " : "phone ") + scheme, page.evaluate(RUN, List.of(FAR.replaceAll("[\\[\\]']", "").split(","))));
        }
      }
      page.setViewportSize(320, 640);
      complain(wrong, address, "sideways", page.evaluate("() => document.documentElement.scrollWidth > 320 ? ['scrolls sideways at 320: ' + document.documentElement.scrollWidth] : []"));
      page.setViewportSize(360, 740);
      page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    }
    assertThat(wrong).as(String.join("\n", wrong)).isEmpty();
  }

  private static void complain(Set<String> wrong, String address, String what, Object said) {
    for (Object line : (List<?>) said) {
      wrong.add(address + " [" + what + "] " + line);
    }
  }
}
