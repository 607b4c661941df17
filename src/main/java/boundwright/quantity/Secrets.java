package boundwright.quantity;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.random.RandomGenerator;

/** Texts that cannot be guessed: 128 bits as 32 hexadecimal digits. So many bits that a fast hash of one may be kept in its place. */
public final class Secrets {
  private static final int BYTES = 16;
  private static final String FORM = "[0-9a-f]{32}";

  private Secrets() {}

  /** A new one; {@code random} must be a generator that cannot be guessed. */
  public static String fresh(RandomGenerator random) {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** Whether a text could be one. */
  public static boolean looksLike(String text) {
    return text.matches(FORM);
  }

  /** What is kept in its place: SHA-256, 64 hexadecimal digits. */
  public static String hash(String secret) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.US_ASCII)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
