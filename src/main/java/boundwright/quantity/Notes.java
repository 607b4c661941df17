package boundwright.quantity;

import java.util.Locale;

/** The words a coach adds to an entry, and counts in words. */
public final class Notes {
  private static final int MOST = 200;

  private Notes() {}

  /** Stripped; refuses more than {@value #MOST} characters. */
  public static String checked(String note) {
    String plain = note.strip();
    if (plain.length() > MOST) {
      throw new RefusedException("A note of " + plain.length() + " characters is too long: at most " + MOST + " are kept. Shorten it.");
    }
    return plain;
  }

  /** As a sentence begins. */
  public static String capital(String text) {
    return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  /** {@code 1 run-through}, {@code 2 run-throughs}. */
  public static String counted(long n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }

  /** {@code 1 entry}, {@code 2 entries}. */
  public static String counted(long n, String one, String many) {
    return n + " " + (n == 1 ? one : many);
  }
}
