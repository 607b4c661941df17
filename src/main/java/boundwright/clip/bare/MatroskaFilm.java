package boundwright.clip.bare;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Set;

/**
 * Matroska and WebM (RFC 9559; elements as of RFC 8794): tags, attachments, titles and names become void elements of noughts. The list is walked from front to back, and only what holds such an element is stepped into.
 */
final class MatroskaFilm {
  private static final long SEGMENT = 0x18538067L;
  private static final long INFO = 0x1549A966L;
  private static final long TRACKS = 0x1654AE6BL;
  private static final long TRACK = 0xAEL;
  private static final Set<Long> HOLDS = Set.of(SEGMENT, INFO, TRACKS, TRACK);
  /** Tags, attachments, title, file name, name of a track, and the check sums of what changes. */
  private static final Set<Long> TOLD = Set.of(0x1254C367L, 0x1941A469L, 0x7BA9L, 0x7384L, 0x536EL, 0xBFL);
  /** What wrote the film: must be there, so it is emptied. */
  private static final Set<Long> WRITERS = Set.of(0x4D80L, 0x5741L);
  private static final int VOID = 0xEC;

  private final FilmBytes bytes;

  MatroskaFilm(FilmBytes bytes) {
    this.bytes = bytes;
  }

  void strip() throws IOException {
    long at = 0;
    while (at + 2 <= bytes.size()) {
      int idLength = length(at, 4);
      long id = number(at, idLength);
      long sizeAt = at + idLength;
      if (sizeAt >= bytes.size()) {
        return;
      }
      int sizeLength = length(sizeAt, 8);
      long bits = (1L << (7 * sizeLength)) - 1;
      long size = number(sizeAt, sizeLength) & bits;
      long body = sizeAt + sizeLength;
      // a size of ones is not known: what is in it follows
      long end = size == bits ? body : Math.min(body + size, bytes.size());
      if (TOLD.contains(id)) {
        gone(at, end);
      } else if (WRITERS.contains(id)) {
        bytes.blank(body, end);
      }
      at = HOLDS.contains(id) ? body : end;
    }
  }

  private void gone(long at, long end) throws IOException {
    long whole = end - at;
    if (whole < 9) {
      bytes.write(at, (byte) VOID, (byte) (0x80 | (int) (whole - 2)));
      bytes.blank(at + 2, end);
    } else {
      bytes.write(at, ByteBuffer.allocate(9).put((byte) VOID).putLong((1L << 56) | (whole - 9)).array());
      bytes.blank(at + 9, end);
    }
  }

  /** How many bytes a number has, by the noughts before its first one. */
  private int length(long at, int most) throws IOException {
    int length = Integer.numberOfLeadingZeros(bytes.read(at, 1).get(0) & 0xFF) - 23;
    if (length > most) {
      throw new DamagedException(at);
    }
    return length;
  }

  private long number(long at, int length) throws IOException {
    ByteBuffer in = bytes.read(at, length);
    long out = 0;
    while (in.hasRemaining()) {
      out = (out << 8) | (in.get() & 0xFF);
    }
    return out;
  }
}
