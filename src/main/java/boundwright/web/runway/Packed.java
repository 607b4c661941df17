package boundwright.web.runway;

import java.io.ByteArrayOutputStream;
import java.util.zip.Deflater;
import org.jspecify.annotations.Nullable;

/** A piece of an answer, compressed once however often it is sent. Safe to use from many threads. */
final class Packed {
  private final byte[] plain;
  private byte @Nullable [] packed;

  Packed(byte[] plain) {
    this.plain = plain;
  }

  byte[] plain() {
    return plain;
  }

  /** As whole blocks of raw deflate (RFC 1951), none of them the last, that look back at nothing before them. */
  synchronized byte[] packed() {
    byte[] known = packed;
    if (known == null) {
      known = deflated(plain);
      packed = known;
    }
    return known;
  }

  private static byte[] deflated(byte[] plain) {
    Deflater deflater = new Deflater(Deflater.BEST_SPEED, true);
    try {
      deflater.setInput(plain);
      ByteArrayOutputStream out = new ByteArrayOutputStream(plain.length / 2 + 64);
      byte[] buffer = new byte[8192];
      for (int n = buffer.length; n == buffer.length; ) {
        // flushed: ends at a whole byte
        n = deflater.deflate(buffer, 0, buffer.length, Deflater.SYNC_FLUSH);
        out.write(buffer, 0, n);
      }
      return out.toByteArray();
    } finally {
      deflater.end();
    }
  }
}
