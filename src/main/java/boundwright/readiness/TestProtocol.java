package boundwright.readiness;

import boundwright.athlete.Surface;
import boundwright.quantity.RefusedException;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * How a test was done. It is stored beside every score, because scores by different protocols cannot be compared.
 *
 * @param surface what was jumped or run on
 * @param shoes for example {@code spikes} or {@code flat shoes}, 1 to {@value #MAX_TEXT} characters
 * @param start for example {@code standing on the take-off foot}, 1 to {@value #MAX_TEXT} characters
 * @param bestOf how many tries the score is the best of, 1 to 10
 * @param notes anything else, at most 300 characters, may be empty
 */
public record TestProtocol(Surface surface, String shoes, String start, int bestOf, String notes) {
  /** Longest name of shoes or start. */
  public static final int MAX_TEXT = 60;
  /** How standing tests usually begin here: as every bound from standing does, so that the score tells of the same flights. */
  public static final String ONE_FOOT = "standing on the take-off foot";
  private static final Pattern BOTH_FEET = Pattern.compile("\\b(both|two)\\b|\\bparallel\\b", Pattern.CASE_INSENSITIVE);
  /** Longest notes. */
  public static final int MAX_NOTES = 300;

  /** Tidies the texts and refuses what is missing or too long. */
  public TestProtocol {
    shoes = needed("shoes", shoes, "spikes");
    start = needed("start", start, ONE_FOOT);
    notes = tidy(notes);
    if (bestOf < 1 || bestOf > 10) {
      throw new RefusedException("A score that is the best of " + bestOf + " is out of range: best of 1 to 10 tries.");
    }
    if (notes.length() > MAX_NOTES) {
      throw new RefusedException("The notes have " + notes.length() + " characters; at most " + MAX_NOTES + " are kept. Shorten them.");
    }
  }

  /** Whether the test began off both feet, as far as the words for the start say so. */
  public boolean offBothFeet() {
    return BOTH_FEET.matcher(start).find();
  }

  /** The usual way to do this test, three tries, the best counts (common practice; off one foot by the judgement of the makers). */
  public static TestProtocol usual(TestKind kind, Surface surface) {
    return switch (kind) {
      case STANDING_TRIPLE, STANDING_FIVE, STANDING_TEN ->
          new TestProtocol(surface, "flat shoes", ONE_FOOT, 3, "Measured from the line to the nearest mark of the landing.");
      case SINGLE_LEG_RIGHT, SINGLE_LEG_LEFT ->
          new TestProtocol(surface, "flat shoes", "standing on that leg", 3, "Measured from the line to the nearest mark of the landing on both feet.");
      case TIMED_RUN_UP -> new TestProtocol(surface, "spikes", "standing", 3, "Mean speed over the last 5 m before the mark.");
    };
  }

  /** Whether scores by the two protocols may be compared: everything the same but the notes, whatever the case of the letters. */
  public boolean comparableWith(TestProtocol other) {
    return surface == other.surface
        && bestOf == other.bestOf
        && shoes.equalsIgnoreCase(other.shoes)
        && start.equalsIgnoreCase(other.start);
  }

  /** The protocol in a sentence, as shown beside a score. */
  public String text() {
    String head =
        String.format(Locale.ROOT, "On %s, %s, start: %s, %s.", surface.label(), shoes, start, bestOf == 1 ? "one try" : "best of " + bestOf);
    return notes.isEmpty() ? head : head + " " + notes;
  }

  private static String needed(String what, String text, String example) {
    String tidy = tidy(text);
    if (tidy.isEmpty() || tidy.length() > MAX_TEXT) {
      throw new RefusedException(
          "The " + what + " of a test need 1 to " + MAX_TEXT + " characters; there are " + tidy.length() + ". Write for example '" + example
              + "': without it the score cannot be compared.");
    }
    return tidy;
  }

  private static String tidy(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }
}
