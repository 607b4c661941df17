package boundwright.quantity;

import java.util.Locale;

/**
 * The one rule of what a text may hold that somebody typed: no control character but tab and line end, no half of a pair (both from Unicode,
 * categories Cc and Cs), no code point that is none (FFFE, FFFF of each plane), and none that turns the direction of what follows. Such a name
 * breaks paper, or hides what it is. Every door asks here.
 */
public final class PlainText {
  private static final int SHOWN_FOR_ONE = 0xFFFD;

  private PlainText() {}

  /** Whether a text may be kept. */
  public static boolean isPlain(String text) {
    return text.codePoints().allMatch(PlainText::isPlain);
  }

  private static boolean isPlain(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL -> c == '\t' || c == '\n' || c == '\r';
      case Character.SURROGATE -> false;
      case Character.UNASSIGNED -> (c & 0xFFFE) != 0xFFFE && (c < 0xFDD0 || c > 0xFDEF);
      // embeddings, overrides and isolates; the marks 200E and 200F, which names in Hebrew or Arabic need, turn nothing round
      case Character.FORMAT -> !(c >= 0x202A && c <= 0x202E) && !(c >= 0x2066 && c <= 0x2069);
      default -> true;
    };
  }

  /**
   * {@code text} if it may be kept.
   *
   * @throws RefusedException if not; it names the first character that may not
   */
  public static String checked(String text) {
    if (!isPlain(text)) {
      int bad = text.codePoints().filter(c -> !isPlain(c)).findFirst().orElseThrow();
      throw new RefusedException(
          String.format(
              Locale.ROOT, "'%s' holds the character U+%04X, which cannot be read or printed. Nothing was kept. Type it anew instead of pasting it.", shown(text), bad));
    }
    return text;
  }

  /** A text that was kept before this rule, as it can be shown: each such character as the sign for one that cannot be read. */
  public static String shown(String text) {
    return isPlain(text)
        ? text
        : text.codePoints().map(c -> isPlain(c) ? c : SHOWN_FOR_ONE).collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
  }
}
