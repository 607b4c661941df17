package boundwright.card;

import java.io.IOException;
import java.io.InputStream;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/**
 * Answers every question for a font with the house's own. Without it the PDF library reads all fonts of the machine before
 * the first page, which takes seconds on some, writes a list of them into the home folder, and makes the card depend on what
 * happens to be installed.
 */
final class OwnFontsOnly implements FontMapper {
  private final TrueTypeFont font;

  OwnFontsOnly(InputStream trueType) throws IOException {
    font = new TTFParser().parse(new RandomAccessReadBuffer(trueType));
  }

  @Override
  public FontMapping<TrueTypeFont> getTrueTypeFont(String baseFont, @Nullable PDFontDescriptor descriptor) {
    return new FontMapping<>(font, false);
  }

  @Override
  public FontMapping<FontBoxFont> getFontBoxFont(String baseFont, @Nullable PDFontDescriptor descriptor) {
    return new FontMapping<>(font, false);
  }

  @Override
  public CIDFontMapping getCIDFont(
      String baseFont, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo systemInfo) {
    return new CIDFontMapping(null, font, true);
  }
}
