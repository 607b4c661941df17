package boundwright.store.age;

import java.io.IOException;
import java.io.OutputStream;
import java.security.GeneralSecurityException;
import javax.crypto.Cipher;

/** Seals piece by piece. */
final class SealedOutput extends OutputStream {
  private final OutputStream out;
  private final Pieces pieces;
  private final byte[] piece = new byte[Pieces.BYTES];
  private int filled;
  private boolean closed;

  SealedOutput(OutputStream out, byte[] key) {
    this.out = out;
    this.pieces = new Pieces(key, Cipher.ENCRYPT_MODE);
  }

  @Override
  public void write(int b) throws IOException {
    write(new byte[] {(byte) b}, 0, 1);
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    int at = from;
    while (at < from + length) {
      if (filled == piece.length) {
        send(false); // only now is it known not to be the last
      }
      int n = Math.min(from + length - at, piece.length - filled);
      System.arraycopy(bytes, at, piece, filled, n);
      filled += n;
      at += n;
    }
  }

  private void send(boolean last) throws IOException {
    try {
      out.write(pieces.worked(piece, filled, last));
    } catch (GeneralSecurityException e) {
      throw new IOException("this Java cannot seal", e);
    }
    pieces.given();
    filled = 0;
  }

  @Override
  public void close() throws IOException {
    if (!closed) {
      closed = true;
      try (out) {
        send(true);
      }
    }
  }
}
