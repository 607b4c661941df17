package boundwright.store.age;

import java.nio.ByteBuffer;
import java.security.GeneralSecurityException;
import javax.crypto.Cipher;

/** A sealed file comes in pieces, each with its number and whether it is the last, so that none can be left out or changed over. */
final class Pieces {
  /** Bytes of a piece before it is sealed. */
  static final int BYTES = 1 << 16;
  /** Bytes that sealing adds to a piece. */
  static final int TAG_BYTES = 16;

  private final byte[] key;
  private final int mode;
  private long number;

  Pieces(byte[] key, int mode) {
    this.key = key;
    this.mode = mode;
  }

  /** The present piece sealed or opened; it stays the present one. */
  byte[] worked(byte[] piece, int length, boolean last) throws GeneralSecurityException {
    byte[] nonce = ByteBuffer.allocate(12).position(3).putLong(number).put((byte) (last ? 1 : 0)).array();
    return AgeHeader.cipher(mode, key, nonce).doFinal(piece, 0, length);
  }

  /** Goes on to the next piece. */
  void given() {
    number++;
  }

  /** Whether no piece came yet. */
  boolean first() {
    return number == 0;
  }
}
