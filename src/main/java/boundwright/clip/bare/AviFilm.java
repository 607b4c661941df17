package boundwright.clip.bare;

import java.io.IOException;
import java.util.Set;

/** AVI: chunks of RIFF (Microsoft and IBM 1991), lengths with the least significant byte first. What tells becomes a junk chunk of noughts. */
final class AviFilm {
  private static final Set<String> TOLD = Set.of("IDIT", "ISFT", "strn", "strd", "JUNK", "_PMX", "exif");
  private static final int MOST_DEEP = 8;

  private final FilmBytes bytes;

  AviFilm(FilmBytes bytes) {
    this.bytes = bytes;
  }

  void strip() throws IOException {
    long at = 0;
    while (at + 12 <= bytes.size() && bytes.word(at).equals("RIFF")) {
      long end = Math.min(at + 8 + length(at), bytes.size());
      walk(at + 12, end, 0);
      at = end + (end & 1);
    }
  }

  private void walk(long from, long to, int depth) throws IOException {
    long at = from;
    while (at + 8 <= to) {
      long end = at + 8 + length(at);
      String word = bytes.word(at);
      if (end > to) {
        if (depth > 0) {
          throw new DamagedException(at);
        }
        end = to;
      }
      String list = word.equals("LIST") && at + 12 <= end ? bytes.word(at + 8) : "";
      if (TOLD.contains(word) || list.equals("INFO")) {
        bytes.word(at, "JUNK");
        bytes.blank(at + 8, end);
      } else if (!list.isEmpty() && !list.equals("movi") && depth < MOST_DEEP) {
        walk(at + 12, end, depth + 1);
      }
      at = end + (end & 1);
    }
  }

  private long length(long at) throws IOException {
    return Integer.toUnsignedLong(Integer.reverseBytes(bytes.read(at + 4, 4).getInt()));
  }
}
