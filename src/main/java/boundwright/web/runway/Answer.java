package boundwright.web.runway;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;

/** An answer put together from pieces, plain or as one gzip member (RFC 1952) of their blocks as they were packed before. */
final class Answer {
  private static final int MOST_STORED = 65_535;
  private static final byte[] HEAD = {0x1f, (byte) 0x8b, 8, 0, 0, 0, 0, 0, 0, (byte) 255};

  private final List<Object> pieces = new ArrayList<>();
  private final StringBuilder between = new StringBuilder();

  /** Adds what is new in every answer. */
  Answer add(String text) {
    between.append(text);
    return this;
  }

  /** Adds a piece. */
  Answer add(Packed piece) {
    flush();
    pieces.add(piece);
    return this;
  }

  private void flush() {
    if (!between.isEmpty()) {
      pieces.add(between.toString().getBytes(StandardCharsets.UTF_8));
      between.setLength(0);
    }
  }

  private static byte[] plain(Object piece) {
    return piece instanceof Packed p ? p.plain() : (byte[]) piece;
  }

  /** As it is. */
  byte[] plain() {
    flush();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    pieces.forEach(p -> out.writeBytes(plain(p)));
    return out.toByteArray();
  }

  /** How long it is [bytes]. */
  long length() {
    flush();
    return pieces.stream().mapToLong(p -> plain(p).length).sum();
  }

  /** Compressed. */
  byte[] gzip() {
    flush();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(HEAD);
    CRC32 sum = new CRC32();
    for (Object piece : pieces) {
      sum.update(plain(piece));
      if (piece instanceof Packed p) {
        out.writeBytes(p.packed());
      } else {
        stored(out, (byte[]) piece);
      }
    }
    out.writeBytes(new byte[] {1, 0, 0, (byte) 255, (byte) 255});
    little(out, sum.getValue(), 4);
    little(out, length(), 4);
    return out.toByteArray();
  }

  /** Too short to pay, so not compressed: blocks that are stored. */
  private static void stored(ByteArrayOutputStream out, byte[] text) {
    for (int from = 0; from < text.length; from += MOST_STORED) {
      int n = Math.min(MOST_STORED, text.length - from);
      out.write(0);
      little(out, n, 2);
      little(out, ~n, 2);
      out.write(text, from, n);
    }
  }

  private static void little(ByteArrayOutputStream out, long value, int bytes) {
    for (int i = 0; i < bytes; i++) {
      out.write((int) (value >>> (8 * i)) & 0xff);
    }
  }
}
