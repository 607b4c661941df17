package boundwright.account;

import boundwright.quantity.RefusedException;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;

/**
 * Slow hashes of passwords: Argon2id (RFC 9106) with 19 MiB, two passes and one lane, which is the least that the OWASP list of password
 * storage asks for (from memory), in about a tenth of a second. The settings stand in each hash, so that they can be raised later.
 */
public final class Passwords {
  /** Fewest characters: length is what counts, not kinds of signs (NIST SP 800-63B, from memory; 12 is our judgement). */
  public static final int FEWEST = 12;
  /** Most characters: a slow hash of a book would be a way to stop the server. */
  public static final int MOST = 200;

  private static final Argon2Function ARGON2 = Argon2Function.getInstance(19_456, 2, 1, 32, Argon2.ID);
  private static final int SALT_BYTES = 16;
  /** Beginnings that everybody tries first; a whole list would be no better against twelve characters and five tries. */
  private static final List<String> USUAL = List.of("password", "passwort", "123456", "qwert", "letmein", "boundwright", "triplejump");

  /** Each hash takes 19 MiB while it is worked out: whoever tries many at once waits in line instead of filling the memory. */
  private static final Semaphore AT_ONCE = new Semaphore(4, true);

  private Passwords() {}

  /**
   * The hash that is kept of a new password.
   *
   * @param login of whose it is; it may not be in the password
   * @throws RefusedException if it is too short, too long, or what everybody would try first
   */
  public static String hash(String password, String login) {
    int length = password.codePointCount(0, password.length());
    if (length < FEWEST || length > MOST) {
      throw new RefusedException(
          "The password has " + length + " characters; " + FEWEST + " to " + MOST + " are taken. Four or five words in a row do well. Nothing was changed.");
    }
    String plain = password.toLowerCase(Locale.ROOT).replace(" ", "");
    if (plain.contains(login.toLowerCase(Locale.ROOT)) || USUAL.stream().anyMatch(plain::startsWith) || plain.chars().distinct().count() < 5) {
      throw new RefusedException(
          "This password is among the first that somebody would try: the login is in it, or it begins as many do, or it repeats a few signs."
              + " Four or five words in a row do well. Nothing was changed.");
    }
    return inLine(() -> Password.hash(password).addRandomSalt(SALT_BYTES).with(ARGON2).getResult());
  }

  /** Whether a password is the one of this hash. */
  public static boolean matches(String password, String hash) {
    return password.length() <= MOST && inLine(() -> Password.check(password, hash).with(Argon2Function.getInstanceFromHash(hash)));
  }

  private static <T> T inLine(Supplier<T> work) {
    AT_ONCE.acquireUninterruptibly();
    try {
      return work.get();
    } finally {
      AT_ONCE.release();
    }
  }
}
