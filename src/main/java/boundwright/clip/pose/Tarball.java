package boundwright.clip.pose;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;

/** Takes named files out of a gzip-packed tar archive (POSIX ustar, published) and nothing else. */
final class Tarball {
  private static final int BLOCK = 512;
  private static final int NAME = 100;
  private static final int SIZE_AT = 124;
  private static final int SIZE = 12;
  /** No file of a network is larger; a damaged length must not fill the disk [bytes]. */
  private static final long LIMIT = 100_000_000;

  private Tarball() {}

  /** Only names that are asked for are written, so no entry can leave the folder. */
  static void unpack(InputStream packed, String prefix, List<String> wanted, Path to) throws IOException {
    try (GZIPInputStream in = new GZIPInputStream(packed)) {
      while (true) {
        byte[] head = in.readNBytes(BLOCK);
        if (head.length == 0 || head[0] == 0) {
          return;
        }
        if (head.length < BLOCK) {
          throw new EOFException("cut off in a head");
        }
        long size = octal(head);
        String name = text(head, 0, NAME);
        if (name.startsWith(prefix) && wanted.contains(name.substring(prefix.length()))) {
          byte[] all = in.readNBytes((int) size);
          if (all.length < size) {
            throw new EOFException("cut off in " + name);
          }
          Files.write(to.resolve(name.substring(prefix.length())), all);
          in.skipNBytes((BLOCK - size % BLOCK) % BLOCK);
        } else {
          in.skipNBytes((size + BLOCK - 1) / BLOCK * BLOCK);
        }
      }
    }
  }

  private static long octal(byte[] head) throws IOException {
    try {
      long size = Long.parseLong(text(head, SIZE_AT, SIZE).strip(), 8);
      if (size < 0 || size > LIMIT) {
        throw new IOException("an entry of " + size + " bytes");
      }
      return size;
    } catch (NumberFormatException e) {
      throw new IOException("a damaged head", e);
    }
  }

  private static String text(byte[] head, int from, int length) {
    int end = from;
    while (end < from + length && head[end] != 0) {
      end++;
    }
    return new String(head, from, end - from, StandardCharsets.US_ASCII);
  }
}
