package boundwright.account;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who is away to log in at the department.
 *
 * @param state SHA-256 of what they bring back, 64 hexadecimal digits
 * @param browser SHA-256 of what their browser alone was given
 * @param nonce what the department's answer must contain
 * @param verifier what proves that the answer was asked for here (RFC 7636)
 * @param purpose what for
 * @param session to connect: the session in which it was asked for
 * @param link by a link: SHA-256 of its code
 * @param until how long it is waited for
 */
public record Visit(
    String state, String browser, String nonce, String verifier, Purpose purpose, @Nullable Long session, @Nullable String link, Instant until) {
  /** What somebody logs in at the department for. */
  public enum Purpose {
    /** To come in. */
    LOGIN,
    /** To come in by it from now on. */
    CONNECT,
    /** To use a link that was given to them, instead of setting a password. */
    LINK
  }
}
