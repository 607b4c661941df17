package boundwright.technique;

import boundwright.evidence.Sources;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;

/**
 * A fault that a coach added to the list. The texts are the coach's own and may be empty, except the label.
 *
 * @param key short stable name, lower case with hyphens, 1 to {@value #MAX_KEY} characters; what a rep keeps
 * @param label what is ticked, 1 to {@value #MAX_LABEL} characters
 * @param looksLike what is seen, at most {@value #MAX_TEXT} characters
 * @param likelyCause why it happens, at most {@value #MAX_TEXT} characters
 * @param say a cue, at most {@value #MAX_TEXT} characters
 * @param next what to do next, at most {@value #MAX_TEXT} characters
 */
public record Fault(String key, String label, String looksLike, String likelyCause, String say, String next) {
  /** Longest key. */
  public static final int MAX_KEY = 40;
  /** Longest label: it has to fit on a button under a thumb. */
  public static final int MAX_LABEL = 30;
  /** Longest text. */
  public static final int MAX_TEXT = 300;

  /** Tidies the texts and refuses what does not fit. */
  public Fault {
    FaultTick.checkKey(key);
    label = tidy(label);
    looksLike = text("what it looks like", looksLike);
    likelyCause = text("the likely cause", likelyCause);
    say = text("what to say", say);
    next = text("what to do next", next);
    if (label.isEmpty() || label.length() > MAX_LABEL) {
      throw new RefusedException(
          "A fault's name has 1 to " + MAX_LABEL + " characters; this one has " + label.length() + ". Two or three words fit the button.");
    }
    if (TeachingPoint.byKey(key).isPresent()) {
      throw new RefusedException(
          "A fault '" + key + "' is in the list already: " + TeachingPoint.byKey(key).get().wentWrong() + ". Give yours another name.");
    }
  }

  /**
   * A fault named by its label; the key is made from it.
   *
   * @throws RefusedException if the label has no letter or digit a key could be made of
   */
  public static Fault named(String label, String looksLike, String likelyCause, String say, String next) {
    String key = tidy(label).toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    if (key.length() > MAX_KEY) {
      key = key.substring(0, MAX_KEY).replaceAll("-+$", "");
    }
    if (key.isEmpty()) {
      throw new RefusedException("The name '" + tidy(label) + "' has no letter from a to z and no digit. Write it in two or three plain words.");
    }
    return new Fault(key, label, looksLike, likelyCause, say, next);
  }

  /** The fault as advice, marked as the coach's own. */
  public FaultAdvice advice() {
    return new FaultAdvice(key, label, looksLike, likelyCause.isEmpty() ? List.of() : List.of(likelyCause), say, next, Sources.OWN_FAULT);
  }

  private static String text(String what, String text) {
    String tidy = tidy(text);
    if (tidy.length() > MAX_TEXT) {
      throw new RefusedException(
          "The text for " + what + " has " + tidy.length() + " characters; at most " + MAX_TEXT + " fit. Shorten it: it is read between two reps.");
    }
    return tidy;
  }

  private static String tidy(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }
}
