package boundwright.track;

import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * One rep as somebody told it.
 *
 * @param token 32 hexadecimal digits made where the tap was made; the same token is logged once, however often and after whatever
 *     restart it is sent. Null where nothing can be sent twice
 * @param rep what happened; its number is ignored
 * @param sure whether a tape far from the mark is meant; otherwise it is asked about once
 */
public record Tap(@Nullable String token, Rep rep, boolean sure) {
  /** Refuses a token of another form. */
  public Tap {
    if (token != null && !Deed.isToken(token)) {
      throw new RefusedException("This form has no token against double taps, so nothing was logged. Reload the page and tap again.");
    }
  }
}
