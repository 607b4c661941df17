package boundwright.store.age;

import java.io.IOException;
import java.io.InputStream;
import java.security.GeneralSecurityException;
import javax.crypto.Cipher;
import org.jspecify.annotations.Nullable;

/** Opens piece by piece; gives out nothing that was not checked. */
final class SealedInput extends InputStream {
  private static final int SEALED_BYTES = Pieces.BYTES + Pieces.TAG_BYTES;

  private final InputStream in;
  private final Pieces pieces;
  private byte[] opened = new byte[0];
  private int at;
  private boolean last;
  private boolean ended;

  SealedInput(InputStream in, byte[] key) {
    this.in = in;
    this.pieces = new Pieces(key, Cipher.DECRYPT_MODE);
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] into, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    while (at == opened.length) {
      if (ended) {
        return -1;
      }
      open();
    }
    int n = Math.min(length, opened.length - at);
    System.arraycopy(opened, at, into, from, n);
    at += n;
    return n;
  }

  /** A full piece says by its own seal whether it is the last, so that what is whole is given out before a cut or an addition is told. */
  private void open() throws IOException {
    if (last) {
      if (in.read() >= 0) {
        throw AgeHeader.damaged();
      }
      ended = true;
      return;
    }
    byte[] piece = in.readNBytes(SEALED_BYTES);
    boolean first = pieces.first();
    byte[] plain = piece.length < SEALED_BYTES ? null : opened(piece, false);
    boolean asLast = plain == null;
    if (asLast) {
      plain = opened(piece, true);
    }
    if (plain == null) {
      throw AgeHeader.damaged();
    }
    last = asLast;
    opened = plain;
    at = 0;
    pieces.given();
    if (opened.length == 0 && !first) {
      throw AgeHeader.damaged(); // the format allows an empty last piece only where nothing was sealed
    }
  }

  private byte @Nullable [] opened(byte[] piece, boolean asLast) {
    try {
      return pieces.worked(piece, piece.length, asLast);
    } catch (GeneralSecurityException e) {
      return null;
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
