package boundwright.technique;

import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * One tap of the coach: this fault was seen, and perhaps on which contact. Written {@code knee-up} or {@code knee-up@3}.
 *
 * @param key the fault's key, of a {@link TeachingPoint} or a {@link Fault}
 * @param contact the contact on which it was seen, counted from 1, or null if the coach did not say
 */
public record FaultTick(String key, @Nullable Integer contact) {
  private static final Pattern KEY = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  /** Refuses keys and contacts out of range. */
  public FaultTick {
    checkKey(key);
    if (contact != null && (contact < 1 || contact > Sequence.MAX_CONTACTS)) {
      throw new RefusedException(
          "Contact " + contact + " is out of range: 1 to " + Sequence.MAX_CONTACTS + ". Leave it out if you did not see on which contact.");
    }
  }

  /** A tick without a contact. */
  public static FaultTick of(String key) {
    return new FaultTick(key, null);
  }

  /**
   * Reads a tick.
   *
   * @param text {@code key} or {@code key@contact}
   * @throws RefusedException if it is neither
   */
  public static FaultTick parse(String text) {
    String t = text.strip();
    int at = t.indexOf('@');
    if (at < 0) {
      return new FaultTick(t, null);
    }
    String digits = t.substring(at + 1);
    if (!digits.matches("\\d{1,3}")) {
      throw new RefusedException("The fault '" + t + "' has no contact after the @. Write knee-up@3, or knee-up without a contact.");
    }
    return new FaultTick(t.substring(0, at), Integer.valueOf(digits));
  }

  /** Reads all the ticks of a rep. */
  public static List<FaultTick> parseAll(List<String> texts) {
    return texts.stream().map(FaultTick::parse).toList();
  }

  /** The tick as a rep keeps it; {@link #parse} reads it back. */
  public String written() {
    return contact == null ? key : key + "@" + contact;
  }

  /** Refuses a contact that the sequence does not have. */
  public FaultTick within(Sequence sequence) {
    if (contact != null && contact > sequence.size()) {
      throw new RefusedException(
          "The fault '" + written() + "' is on contact " + contact + ", but " + sequence.text() + " has " + sequence.size()
              + " contacts. Tap one of 1 to " + sequence.size() + ".");
    }
    return this;
  }

  static void checkKey(String key) {
    if (key.length() > Fault.MAX_KEY || !KEY.matcher(key).matches()) {
      throw new RefusedException(
          "A fault's key is 1 to " + Fault.MAX_KEY + " small letters, digits and single hyphens; this one is '" + key + "'. Write it like knee-up.");
    }
  }
}
