package boundwright.store.age;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Base64;
import java.util.random.RandomGenerator;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.IvParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.crypto.generators.HKDFBytesGenerator;
import org.bouncycastle.crypto.generators.SCrypt;
import org.bouncycastle.crypto.params.HKDFParameters;

/**
 * The first lines of a sealed file: the file's own key, wrapped with a key made from the passphrase by scrypt. Published as
 * age-encryption.org/v1 by the C2SP project; the test reads that project's own vectors.
 */
final class AgeHeader {
  /** The largest scrypt work factor that is taken, as a power of two; it needs 1 GiB. */
  static final int MOST_WORK = 20;

  private static final String VERSION = "age-encryption.org/v1";
  private static final String STANZA = "-> scrypt ";
  private static final String MAC = "---";
  private static final int KEY_BYTES = 16;
  private static final int WRAPPED_BYTES = KEY_BYTES + 16;
  private static final int BLOCK = 8;
  /** A header with one passphrase has some 200 bytes. */
  private static final int MOST_LINE_BYTES = 256;

  private AgeHeader() {}

  /**
   * Makes the header of a new file.
   *
   * @param work scrypt's work factor as a power of two
   * @param key the file's own key, 16 bytes
   */
  static byte[] of(byte[] key, char[] passphrase, int work, RandomGenerator random) throws GeneralSecurityException {
    byte[] salt = new byte[KEY_BYTES];
    random.nextBytes(salt);
    byte[] wrapped = cipher(Cipher.ENCRYPT_MODE, wrapKey(passphrase, salt, work), new byte[12]).doFinal(key);
    String lines = VERSION + "\n" + STANZA + written(salt) + " " + work + "\n" + written(wrapped) + "\n" + MAC;
    return (lines + " " + written(mac(key, lines)) + "\n").getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * Reads the header and leaves the stream where the sealed bytes begin.
   *
   * @return the file's own key
   * @throws RefusedException if the header is not one that a passphrase opens, or the passphrase is another
   */
  static byte[] key(InputStream in, char[] passphrase) throws IOException, GeneralSecurityException {
    if (!line(in).equals(VERSION)) {
      throw new RefusedException("This is no sealed backup: its first line is not that of one. Give a file that boundwright backup wrote.");
    }
    String stanza = line(in);
    String[] said = stanza.split(" ", -1);
    if (!stanza.startsWith(STANZA) || said.length != 4 || !said[3].matches("[1-9][0-9]?")) {
      throw new RefusedException("This file is not sealed with a passphrase, so it cannot be opened here. Open it with the program that made it.");
    }
    int work = Integer.parseInt(said[3]);
    if (work > MOST_WORK) {
      throw new RefusedException("Opening this file needs " + work + " doublings of work; at most " + MOST_WORK + " are done. Seal it again with the usual.");
    }
    byte[] salt = read(said[2], KEY_BYTES);
    String body = line(in);
    byte[] wrapped = read(body, WRAPPED_BYTES);
    String end = line(in);
    if (!end.startsWith(MAC + " ")) {
      throw damaged();
    }
    byte[] key;
    try {
      key = cipher(Cipher.DECRYPT_MODE, wrapKey(passphrase, salt, work), new byte[12]).doFinal(wrapped);
    } catch (javax.crypto.AEADBadTagException e) {
      throw new RefusedException("The passphrase does not open this backup. Nothing was changed. Mind capitals and spaces and try again.", e);
    }
    String lines = VERSION + "\n" + stanza + "\n" + body + "\n" + MAC;
    if (!MessageDigest.isEqual(mac(key, lines), read(end.substring(MAC.length() + 1), 32))) {
      throw damaged();
    }
    return key;
  }

  /** The key of the sealed bytes. */
  static byte[] payloadKey(byte[] key, byte[] nonce) {
    return derived(key, nonce, "payload");
  }

  /** What does the sealing: ChaCha20-Poly1305 (RFC 8439). */
  static Cipher cipher(int mode, byte[] key, byte[] nonce) throws GeneralSecurityException {
    Cipher cipher = Cipher.getInstance("ChaCha20-Poly1305");
    cipher.init(mode, new SecretKeySpec(key, "ChaCha20"), new IvParameterSpec(nonce));
    return cipher;
  }

  static RefusedException damaged() {
    return new RefusedException("This sealed backup is cut or was changed, so nothing of it was taken. Take another copy of it.");
  }

  private static byte[] wrapKey(char[] passphrase, byte[] salt, int work) {
    byte[] label = (VERSION + "/scrypt").getBytes(StandardCharsets.US_ASCII);
    byte[] salted = Arrays.copyOf(label, label.length + salt.length);
    System.arraycopy(salt, 0, salted, label.length, salt.length);
    return SCrypt.generate(new String(passphrase).getBytes(StandardCharsets.UTF_8), salted, 1 << work, BLOCK, 1, 32);
  }

  private static byte[] mac(byte[] key, String lines) throws GeneralSecurityException {
    Mac mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(derived(key, new byte[0], "header"), "HmacSHA256"));
    return mac.doFinal(lines.getBytes(StandardCharsets.US_ASCII));
  }

  private static byte[] derived(byte[] key, byte[] salt, String use) {
    HKDFBytesGenerator hkdf = new HKDFBytesGenerator(new SHA256Digest());
    hkdf.init(new HKDFParameters(key, salt, use.getBytes(StandardCharsets.US_ASCII)));
    byte[] out = new byte[32];
    hkdf.generateBytes(out, 0, out.length);
    return out;
  }

  private static String written(byte[] bytes) {
    return Base64.getEncoder().withoutPadding().encodeToString(bytes);
  }

  /** Reads what {@link #written} wrote; another spelling of the same bytes is refused, as the format asks. */
  private static byte[] read(String text, int length) {
    try {
      byte[] bytes = Base64.getDecoder().decode(text);
      if (bytes.length == length && written(bytes).equals(text)) {
        return bytes;
      }
    } catch (IllegalArgumentException e) {
      throw new RefusedException(String.valueOf(damaged().getMessage()), e);
    }
    throw damaged();
  }

  private static String line(InputStream in) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (int b = in.read(); b != '\n'; b = in.read()) {
      if (b < 0 || out.size() > MOST_LINE_BYTES) {
        throw damaged();
      }
      out.write(b);
    }
    return out.toString(StandardCharsets.US_ASCII);
  }
}
