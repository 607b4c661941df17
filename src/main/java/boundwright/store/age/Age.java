package boundwright.store.age;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import java.util.random.RandomGenerator;

/** Seals what is written with a passphrase, and opens what was sealed so. */
public final class Age {
  /** Work of one guess at the passphrase, as a power of two: about half a second and 128 MiB (the format's own tool takes 18). */
  private static final int WORK = 17;

  private static final int NONCE_BYTES = 16;

  private Age() {}

  /**
   * What is written to the answer goes to {@code out} sealed. Close it, or the file is not whole; {@code out} is closed with it.
   *
   * @param random must be one that cannot be guessed
   */
  public static OutputStream sealing(OutputStream out, char[] passphrase, RandomGenerator random) throws IOException {
    return sealing(out, passphrase, WORK, random);
  }

  static OutputStream sealing(OutputStream out, char[] passphrase, int work, RandomGenerator random) throws IOException {
    byte[] key = new byte[16];
    random.nextBytes(key);
    byte[] nonce = new byte[NONCE_BYTES];
    random.nextBytes(nonce);
    try {
      out.write(AgeHeader.of(key, passphrase, work, random));
    } catch (GeneralSecurityException e) {
      throw new IOException("this Java cannot seal", e);
    }
    out.write(nonce);
    return new SealedOutput(out, AgeHeader.payloadKey(key, nonce));
  }

  /**
   * Opens what was sealed. Every piece is checked before it is given out, and a file that was cut is told at its end.
   *
   * @throws boundwright.quantity.RefusedException if it was not sealed with this passphrase, is cut or was changed
   */
  public static InputStream opening(InputStream in, char[] passphrase) throws IOException {
    InputStream buffered = new BufferedInputStream(in, 1 << 16);
    try {
      byte[] key = AgeHeader.key(buffered, passphrase);
      byte[] nonce = buffered.readNBytes(NONCE_BYTES);
      if (nonce.length < NONCE_BYTES) {
        throw AgeHeader.damaged();
      }
      return new SealedInput(buffered, AgeHeader.payloadKey(key, nonce));
    } catch (GeneralSecurityException e) {
      throw new IOException("this Java cannot open what is sealed", e);
    }
  }
}
