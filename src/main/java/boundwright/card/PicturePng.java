package boundwright.card;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.GraphicsEnvironment;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.batik.transcoder.image.PNGTranscoder;

/** One of the house's drawings as a PNG file, for an athlete's phone, in the house's font. Nothing is fetched: photographs come inside the drawing. */
public final class PicturePng {
  private static final Color PAPER = new Color(0xfaf6ec);

  /** Registers the house's font once; a machine that has it already keeps its own. */
  public PicturePng() {
    for (String font : new String[] {"Bitter_400Regular.ttf", "Bitter_400Regular_Italic.ttf", "Bitter_700Bold.ttf"}) {
      try (InputStream in = PicturePng.class.getResourceAsStream("/fonts/" + font)) {
        if (in == null) {
          throw new IllegalStateException("missing from the program: " + font);
        }
        GraphicsEnvironment.getLocalGraphicsEnvironment().registerFont(Font.createFont(Font.TRUETYPE_FONT, in));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (FontFormatException e) {
        throw new IllegalStateException(font + " is damaged", e);
      }
    }
  }

  /**
   * The drawing as a picture.
   *
   * @param svg an {@code svg} element whose photographs are data addresses
   * @param width of the picture [px]
   */
  public byte[] render(String svg, int width) {
    PNGTranscoder coder = new PNGTranscoder();
    coder.addTranscodingHint(SVGAbstractTranscoder.KEY_WIDTH, (float) width);
    coder.addTranscodingHint(ImageTranscoder.KEY_BACKGROUND_COLOR, PAPER);
    coder.addTranscodingHint(SVGAbstractTranscoder.KEY_EXECUTE_ONLOAD, false);
    coder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      coder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(out));
    } catch (TranscoderException e) {
      throw new IllegalStateException("the picture could not be drawn", e);
    }
    return out.toByteArray();
  }
}
