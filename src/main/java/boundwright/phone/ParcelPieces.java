package boundwright.phone;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;

/**
 * Pieces of a parcel's text, on the server, so that what did not change is not written again: {@link #begun}, then the lines of each
 * athlete, then {@link #ended}, are together the text of {@link Parcel#text} to the letter; of one athlete, that of {@link Parcel.Part#text}.
 * All are of single-byte signs, and none of them needs to be escaped in JSON but the line break.
 */
public final class ParcelPieces {
  private ParcelPieces() {}

  /** The lines of one athlete. */
  public static byte[] lines(Parcel.Part part) {
    return bytes(ParcelText.lines(part));
  }

  /** The text of a whole day up to its athletes; those in {@code parcel} do not matter. */
  public static byte[] begun(Parcel parcel) {
    return bytes(ParcelText.begun(parcel));
  }

  /** The text of one athlete up to the lines. */
  public static byte[] begun() {
    return bytes(ParcelText.begun());
  }

  /** The end of a text that consists of these pieces. */
  public static byte[] ended(List<byte[]> pieces) {
    CRC32 sum = new CRC32();
    int lines = 0;
    for (byte[] piece : pieces) {
      sum.update(piece);
      for (byte b : piece) {
        lines += b == '\n' ? 1 : 0;
      }
    }
    return bytes(ParcelText.last(lines, String.format(Locale.ROOT, "%08x", sum.getValue())));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }
}
