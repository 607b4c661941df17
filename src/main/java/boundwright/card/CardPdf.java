package boundwright.card;

import boundwright.card.plain.PlainReport;
import boundwright.quantity.PlainText;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Sets a session card or an athlete's report as a PDF: the screen's own template, the house's font inside, the strip as lines and not as a photo. */
public final class CardPdf {
  private static final String FONT = "Bitter";

  private final TemplateEngine pages;
  private final String css;

  static {
    XRLog.setLoggingEnabled(false);
    try (InputStream regular = open("/fonts/Bitter_400Regular.ttf")) {
      FontMappers.set(new OwnFontsOnly(regular));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Made when it is first asked for: fonts and templates take long to load. */
  private static final class Shared {
    static final CardPdf ONE = new CardPdf();
  }

  /** The one that all pages use, from as many threads as ask. */
  public static CardPdf shared() {
    return Shared.ONE;
  }

  /** Reads templates and style sheets from the program itself. */
  public CardPdf() {
    pages = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");
    css = text("/web/strip.css") + text("/web/card.css");
  }

  /** The card as a PDF. Nothing is read from outside the program. */
  public byte[] render(SessionCard card, Paper paper) {
    String foot = page(card.whom() + ", " + card.date(), paper);
    return set("card/sheet.jte", Map.of("card", card, "css", css + foot));
  }

  /** The report as a PDF. Small paper gets the pictures that are made for a phone, so that they can be read. */
  public byte[] renderReport(AthleteReport report, Paper paper) {
    String foot = page(report.name() + ", " + report.date(), paper);
    return set("card/reportsheet.jte", Map.of("report", report, "small", paper == Paper.A5, "css", css + foot));
  }

  /** A report for those who do not coach as a PDF. */
  public byte[] renderPlain(PlainReport report, Paper paper) {
    String foot = page(report.title() + ", " + report.when(), paper);
    return set("card/plainsheet.jte", Map.of("report", report, "small", paper == Paper.A5, "css", css + foot));
  }

  /** Sets a page of the program's own as a PDF. */
  byte[] set(String template, Map<String, Object> what) {
    StringOutput html = new StringOutput(64 * 1024);
    pages.render(template, what, html);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument();
        BatikSVGDrawer drawer = new BatikSVGDrawer()) {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.usePDDocument(document);
      builder.withProducer("boundwright");
      builder.useSVGDrawer(drawer);
      font(builder, document, "/fonts/Bitter_400Regular.ttf", 400, FontStyle.NORMAL);
      font(builder, document, "/fonts/Bitter_400Regular_Italic.ttf", 400, FontStyle.ITALIC);
      font(builder, document, "/fonts/Bitter_700Bold.ttf", 700, FontStyle.NORMAL);
      builder.withHtmlContent(PlainText.shown(html.toString()), null);
      builder.toStream(out);
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException("The page could not be set as a PDF.", e);
    }
    return out.toByteArray();
  }

  /**
   * Gives the writer a font, for the words and for the strip. Ligatures are off: they come out of the file as no letter at
   * all, and "take-off" must be found when the coach searches the card.
   */
  private static void font(PdfRendererBuilder builder, PDDocument document, String resource, int weight, FontStyle style)
      throws IOException {
    builder.useFont(new PDFontSupplier(embedded(document, resource)), FONT, weight, style, true);
    builder.useFont(() -> open(resource), FONT, weight, style, true, EnumSet.of(FSFontUseCase.SVG));
  }

  private static PDFont embedded(PDDocument document, String resource) throws IOException {
    try (InputStream in = open(resource)) {
      TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
      font.setEnableGsub(false);
      document.registerTrueTypeFontForClosing(font);
      return PDType0Font.load(document, font, true);
    }
  }

  static String page(String foot, Paper paper) {
    return "@page { size: " + paper.width_mm() + "mm " + paper.height_mm() + "mm; margin: 8mm 10mm 11mm 10mm;"
        + " @bottom-left { content: '" + quoted(foot) + "'; font: 7pt Bitter; color: #4a423c; }"
        + " @bottom-right { content: counter(page) ' / ' counter(pages); font: 7pt Bitter; color: #4a423c; } }\n"
        + "body { margin: 0; font-family: Bitter; font-size: " + paper.type_pt() + "pt; }\n"
        + ".card-squad, .card-evidence { -fs-table-paginate: paginate; }\n"
        + ".card .strip-wide { max-width: none; width: " + (paper.width_mm() - 20) + "mm; }\n"
        + ".card-drill .strip-wide { width: " + (paper == Paper.A5 ? 112 : Math.min(158, paper.width_mm() - 20)) + "mm; }\n"
        + ".card .strip-narrow { display: block; max-width: none; width: 96mm; }\n";
  }

  /** The house's style for paper and one more sheet. */
  String css(String sheet) {
    return css + text(sheet);
  }

  /** A page across, with what it is and its number at the foot. */
  static String across(String foot, int width_mm, int height_mm, double type_pt) {
    return "@page { size: " + width_mm + "mm " + height_mm + "mm; margin: 8mm 10mm 11mm 10mm;"
        + " @bottom-left { content: '" + quoted(foot) + "'; font: 7pt Bitter; color: #4a423c; }"
        + " @bottom-right { content: counter(page) ' / ' counter(pages); font: 7pt Bitter; color: #4a423c; } }\n"
        + "body { margin: 0; font-family: Bitter; font-size: " + type_pt + "pt; }\n"
        + ".wall-table, .week-table { -fs-table-paginate: paginate; }\n";
  }

  /** A name inside a quoted CSS string: everything but letters, digits and harmless signs by its number. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if ((Character.isLetterOrDigit(c) && c < 0x250) || c == ' ' || c == ',') {
                out.appendCodePoint(c);
              } else {
                out.append('\\').append(String.format(Locale.ROOT, "%06x", c));
              }
            });
    return out.toString();
  }

  private static InputStream open(String resource) {
    InputStream in = CardPdf.class.getResourceAsStream(resource);
    if (in == null) {
      throw new IllegalStateException("missing from the program: " + resource);
    }
    return in;
  }

  private static String text(String resource) {
    try (InputStream in = open(resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
