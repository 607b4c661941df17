package boundwright.phone;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
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

  /** A piece of a text. */
  public static final class Piece {
    private final byte[] bytes;
    private final int lines;

    private Piece(byte[] bytes, int lines) {
      this.bytes = bytes;
      this.lines = lines;
    }

    private static Piece of(String text) {
      byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
      int lines = 0;
      for (byte b : bytes) {
        lines += b == '\n' ? 1 : 0;
      }
      return new Piece(bytes, lines);
    }

    /** Whether it is the same text. */
    public boolean same(Piece other) {
      return Arrays.equals(bytes, other.bytes);
    }

    /** Gives its text to a check sum. */
    public void into(MessageDigest digest) {
      digest.update(bytes);
    }

    /** As it stands inside JSON. */
    public byte[] inJson() {
      byte[] out = new byte[bytes.length + lines];
      int n = 0;
      for (byte b : bytes) {
        if (b == '\n') {
          out[n++] = '\\';
          out[n++] = 'n';
        } else {
          out[n++] = b;
        }
      }
      return out;
    }
  }

  /** The lines of one athlete. */
  public static Piece lines(Parcel.Part part) {
    return Piece.of(ParcelText.lines(part));
  }

  /** The text of a whole day up to its athletes; those in {@code parcel} do not matter. */
  public static Piece begun(Parcel parcel) {
    return Piece.of(ParcelText.begun(parcel));
  }

  /** The text of one athlete up to the lines. */
  public static Piece begun() {
    return Piece.of(ParcelText.begun());
  }

  /** The end of a text that consists of these pieces. */
  public static Piece ended(List<Piece> pieces) {
    CRC32 sum = new CRC32();
    int lines = 0;
    for (Piece piece : pieces) {
      sum.update(piece.bytes);
      lines += piece.lines;
    }
    return Piece.of(ParcelText.last(lines, String.format(Locale.ROOT, "%08x", sum.getValue())));
  }
}
