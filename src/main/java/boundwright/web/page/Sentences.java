package boundwright.web.page;

/** Cuts what the rooms below say into its first sentence, which a page sets large, and the rest. */
public final class Sentences {
  private Sentences() {}

  /** Up to the first full stop that ends a sentence, without it. */
  public static String first(String words) {
    int end = words.indexOf(". ");
    return end < 0 ? words.replaceFirst("\\.$", "") : words.substring(0, end);
  }

  /** What follows it; may be empty. */
  public static String rest(String words) {
    int end = words.indexOf(". ");
    return end < 0 ? "" : words.substring(end + 2);
  }
}
