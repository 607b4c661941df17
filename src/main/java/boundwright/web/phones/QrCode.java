package boundwright.web.phones;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Map;

/** An address as squares that a camera reads, for a screen and for a terminal. */
public final class QrCode {
  /** White squares around the code; cameras need them (ISO/IEC 18004: four; memory). */
  public static final int QUIET = 4;

  private static final String DARK_ON_WHITE = "\u001b[30;107m";
  private static final String USUAL = "\u001b[0m";

  private final ByteMatrix squares;

  private QrCode(ByteMatrix squares) {
    this.squares = squares;
  }

  /** The code of a text, with the correction that a photographed screen needs. */
  public static QrCode of(String text) {
    try {
      return new QrCode(Encoder.encode(text, ErrorCorrectionLevel.M, Map.of(EncodeHintType.CHARACTER_SET, "UTF-8")).getMatrix());
    } catch (WriterException e) {
      throw new IllegalArgumentException("an address of " + text.length() + " characters has no code", e);
    }
  }

  /** Squares along one side, the quiet ones included. */
  public int side() {
    return squares.getWidth() + 2 * QUIET;
  }

  /** Whether the square is dark; counted from the corner of the quiet zone. */
  public boolean dark(int x, int y) {
    int column = x - QUIET;
    int row = y - QUIET;
    return column >= 0 && row >= 0 && column < squares.getWidth() && row < squares.getHeight() && squares.get(column, row) == 1;
  }

  /** The dark squares as the path of an SVG, one unit a square. */
  public String path() {
    StringBuilder out = new StringBuilder();
    for (int y = 0; y < side(); y++) {
      for (int x = 0; x < side(); x++) {
        int from = x;
        while (x < side() && dark(x, y)) {
          x++;
        }
        if (x > from) {
          out.append('M').append(from).append(' ').append(y).append('h').append(x - from).append("v1H").append(from).append('z');
        }
      }
    }
    return out.toString();
  }

  /**
   * Two squares a character, one above the other.
   *
   * @param colours whether the terminal takes colours; without, it is drawn for a dark one
   */
  public String text(boolean colours) {
    StringBuilder out = new StringBuilder();
    for (int y = 0; y < side(); y += 2) {
      out.append(colours ? DARK_ON_WHITE : "");
      for (int x = 0; x < side(); x++) {
        boolean above = dark(x, y) == colours;
        boolean below = y + 1 < side() ? dark(x, y + 1) == colours : !colours;
        out.append(above ? (below ? '█' : '▀') : below ? '▄' : ' ');
      }
      out.append(colours ? USUAL : "").append('\n');
    }
    return out.toString();
  }
}
