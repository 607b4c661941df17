package boundwright.browser;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.Media;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What can be complained of on a page as it is seen, one question a method; an empty list is a good page. The rules of access are
 * axe-core's (version 4.10.2, WCAG 2.2 A and AA; read as its own messages); the strong contrast of 7 : 1 is WCAG 2.2, success criterion
 * 1.4.6, that what has the focus is seen 2.4.7 (published); 48 px for a finger, 12 px for the words of a picture and the words that no
 * coach uses are the house's own.
 */
final class Look {
  /** Rules of axe that every page keeps. */
  static final List<String> RULES = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

  private static final String AXE = axe();

  /** Words of the code that no screen shows, folded parts too. */
  private static final String FORBIDDEN =
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

  private static final String SMALL_LETTERS =
      """
      () => [...document.querySelectorAll('main svg text')]
        .map(t => [t, t.getBoundingClientRect(), parseFloat(getComputedStyle(t).fontSize) * (t.ownerSVGElement.getScreenCTM() || {a: 1}).a])
        .filter(([t, box, px]) => box.width > 0 && px < 11.95)
        .map(([t, box, px]) => t.textContent + ' ' + px.toFixed(1) + ' px')
      """;

  /** Words of one picture that lie on each other by more than a hair. */
  private static final String OVERLAPS =
      """
      () => [...document.querySelectorAll('main svg')].flatMap(svg => {
        const words = [...svg.querySelectorAll('text')].map(t => [t.textContent.trim(), t.getBoundingClientRect()]).filter(([w, b]) => w && b.width > 0);
        const out = [];
        for (let i = 0; i < words.length; i++) {
          for (let j = i + 1; j < words.length; j++) {
            const [v, a] = words[i], [w, b] = words[j];
            const x = Math.min(a.right, b.right) - Math.max(a.left, b.left);
            // of a line's height a fifth above and below the letters is empty
            const y = Math.min(a.bottom - a.height / 5, b.bottom - b.height / 5) - Math.max(a.top + a.height / 5, b.top + b.height / 5);
            if (x > 1 && y > 0.5) { out.push(v + ' on ' + w); }
          }
        }
        return out;
      })
      """;

  /** From the skip link on by Tab alone: what was not come to, and where the focus was not seen. Of a group of radios one is come to. */
  private static final String WATCH =
      """
      () => {
        const same = e => e.type === 'radio' ? 'input[type=radio][name="' + e.name + '"]' : '';
        const told = e => e.tagName + ' ' + (e.id || e.getAttribute('aria-label') || e.textContent || e.name).trim().slice(0, 32);
        const can = [...document.querySelectorAll('main a[href], main button, main input:not([type=hidden]), main select, main textarea, main summary')]
          .filter(e => e.getClientRects().length > 0 && e.tabIndex >= 0 && !e.disabled);
        const left = new Set(can), dim = [];
        const line = e => e && getComputedStyle(e).outlineStyle !== 'none' && parseFloat(getComputedStyle(e).outlineWidth) >= 2;
        document.addEventListener('focusin', event => {
          const e = event.target;
          left.delete(e);
          if (same(e)) { document.querySelectorAll(same(e)).forEach(r => { if (r.form === e.form) { left.delete(r); } }); }
          if (e.closest('main') && e.id !== 'main' && !line(e) && !line(e.nextElementSibling)) { dim.push('not seen: ' + told(e)); }
        });
        window.keysLeft = () => left.size;
        window.keysSaid = () => [...left].map(e => 'not come to: ' + told(e)).concat(dim);
        document.querySelector('.skip').focus();
      }
      """;

  /** What leads elsewhere or takes something in has no place on paper. */
  private static final String ON_PAPER =
      """
      () => [...document.querySelectorAll('.top, .foot-line, .skip, main nav, main button, main input, main select, main a.button')]
        .filter(e => e.getClientRects().length > 0 && getComputedStyle(e).visibility !== 'hidden' && !e.closest('details:not([open])'))
        .map(e => e.tagName + ' ' + (e.className || e.name || e.textContent).toString().trim().slice(0, 32)).slice(0, 6)
      """;

  private Look() {}

  private static String axe() {
    try (InputStream in = Look.class.getResourceAsStream("/axe.min.js")) {
      if (in == null) {
        throw new IllegalStateException("axe.min.js is not on the class path");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Words that no screen shows. */
  static List<String> words(Page page) {
    return list(page.evaluate("w => (document.body.textContent.match(new RegExp(w, 'gi')) || []).slice(0, 3)", FORBIDDEN));
  }

  /** Words of pictures below 12 px. */
  static List<String> letters(Page page) {
    return list(page.evaluate(SMALL_LETTERS));
  }

  /** Words of a picture that lie on each other. */
  static List<String> overlaps(Page page) {
    return list(page.evaluate(OVERLAPS));
  }

  /** What is too low for a finger. */
  static List<String> targets(Page page) {
    String small = (String) page.evaluate(PhoneCase.SMALL_TARGETS);
    return small.isEmpty() ? List.of() : List.of(small);
  }

  /** How far the page scrolls sideways. */
  static List<String> sideways(Page page) {
    return list(page.evaluate("() => document.documentElement.scrollWidth > innerWidth ? ['scrolls sideways at ' + innerWidth + ': ' + document.documentElement.scrollWidth] : []"));
  }

  /** By these rules of axe; by none, contrast alone. */
  static List<String> axe(Page page, List<String> rules) {
    if (Boolean.TRUE.equals(page.evaluate("() => typeof axe === 'undefined'"))) {
      page.evaluate(AXE);
    }
    return list(page.evaluate(RUN, List.of(FAR, rules)));
  }

  /** What keys alone do not come to, or come to without its being seen. */
  static List<String> keyboard(Page page) {
    page.evaluate(WATCH);
    page.keyboard().press("Enter");
    for (int i = 0; i < 400 && (i % 10 != 0 || (int) page.evaluate("keysLeft()") > 0); i++) {
      page.keyboard().press("Tab");
    }
    return list(page.evaluate("keysSaid()"));
  }

  /** What stands on paper and should not. */
  static List<String> onPaper(Page page) {
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    List<String> out = list(page.evaluate(ON_PAPER));
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    return out;
  }

  private static List<String> list(Object said) {
    List<String> out = new ArrayList<>();
    for (Object line : (List<?>) said) {
      out.add(String.valueOf(line));
    }
    return out;
  }
}
