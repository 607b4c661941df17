package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.web.phones.QrCode;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import org.junit.jupiter.api.Test;

/** Read back by the reader of the library that wrote it, from what is printed (own output; a real camera was not asked). */
class QrCodeTest {
  private static final String ADDRESS = "http://192.0.2.17:7100/pair/0123456789abcdef0123456789abcdef";

  @Test
  void theTerminalsHalfBlocksAreRead() throws Exception {
    QrCode code = QrCode.of(ADDRESS);
    assertThat(read(code.text(true).replaceAll("\u001b\\[[0-9;]*m", ""), true)).isEqualTo(ADDRESS);
    assertThat(read(code.text(false), false)).isEqualTo(ADDRESS);
    assertThat(code.text(true).lines().count()).isLessThan(24);
  }

  private static String read(String text, boolean inkIsDark) throws Exception {
    String[] lines = text.split("\n");
    int scale = 8;
    int width = lines[0].length() * scale;
    int height = lines.length * 2 * scale;
    int[] pixels = new int[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        char c = lines[y / scale / 2].charAt(x / scale);
        boolean ink = c == '█' || (c == '▀' && y / scale % 2 == 0) || (c == '▄' && y / scale % 2 == 1);
        pixels[y * width + x] = ink == inkIsDark ? 0xff000000 : 0xffffffff;
      }
    }
    return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels)))).getText();
  }
}
