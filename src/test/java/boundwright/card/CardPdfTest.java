package boundwright.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The printed card, read back by another program than the one that set it (PDFBox's reader). */
class CardPdfTest {
  private static final double POINTS_IN_MM = 72 / 25.4;
  private static final CardPdf PDF = new CardPdf();

  private static PDDocument print(int athletes, CoachSettings settings, Paper paper) throws IOException {
    return Loader.loadPDF(PDF.render(Fixtures.cards().of(Fixtures.athletes(athletes), Fixtures.PLAN, settings, "Invented squad."), paper));
  }

  private static String text(PDDocument document) throws IOException {
    return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
  }

  /** A5 is 148 mm x 210 mm and A4 210 mm x 297 mm (ISO 216; published). */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void thePageHasTheSizeOfThePaper(Paper paper) throws IOException {
    try (PDDocument document = print(1, CoachSettings.DEFAULT, paper)) {
      for (PDPage page : document.getPages()) {
        assertThat(page.getMediaBox().getWidth() / POINTS_IN_MM).isCloseTo(paper == Paper.A5 ? 148 : 210, within(0.5));
        assertThat(page.getMediaBox().getHeight() / POINTS_IN_MM).isCloseTo(paper == Paper.A5 ? 210 : 297, within(0.5));
      }
    }
  }

  @Test
  void theStripIsLinesAndNotAPhotoAndItsTextIsText() throws IOException {
    try (PDDocument document = print(1, CoachSettings.DEFAULT, Paper.A5)) {
      List<PDImageXObject> images = new ArrayList<>();
      List<PDFont> fonts = new ArrayList<>();
      for (PDPage page : document.getPages()) {
        collect(page.getResources(), images, fonts);
      }
      assertThat(images).isEmpty();
      assertThat(fonts).isNotEmpty().allMatch(PDFont::isEmbedded).allMatch(f -> f.getName().contains("Bitter"));
      // brick red of the runway is filled as a colour of the page: 168/255 = 0.6588
      String drawn = new String(document.getPage(0).getContents().readAllBytes(), java.nio.charset.StandardCharsets.ISO_8859_1);
      StringBuilder all = new StringBuilder(drawn);
      for (COSName name : document.getPage(0).getResources().getXObjectNames()) {
        if (document.getPage(0).getResources().getXObject(name) instanceof PDFormXObject form) {
          all.append(new String(form.getContents().readAllBytes(), java.nio.charset.StandardCharsets.ISO_8859_1));
        }
      }
      assertThat(all.toString()).containsPattern("0\\.658\\d* 0\\.27\\d* 0\\.18\\d* rg");
    }
  }

  private static void collect(PDResources resources, List<PDImageXObject> images, List<PDFont> fonts) throws IOException {
    for (COSName name : resources.getFontNames()) {
      fonts.add(resources.getFont(name));
    }
    for (COSName name : resources.getXObjectNames()) {
      PDXObject object = resources.getXObject(name);
      if (object instanceof PDImageXObject image) {
        images.add(image);
      } else if (object instanceof PDFormXObject form && form.getResources() != null) {
        collect(form.getResources(), images, fonts);
      }
    }
  }

  @Test
  void theMarksCanBeReadBack() throws IOException {
    try (PDDocument document = print(1, CoachSettings.DEFAULT, Paper.A5)) {
      // worked from the fixture: RRL from 6 steps, hop 2.6 m, bound 2.3 m, jump 2.8 m: mark (4.9 + 7.7) / 2 = 6.30 m
      assertThat(text(document).replace("- ", "-")) // a line of the legend may end at the hyphen
          .contains("Ilva Torun", "RL x5", "6.30 m", "LLR", "Tuesday 3 March 2026", "Invented squad.", "licensed medical staff", "s short", "l late", "to the take-off mark", "Take-off mark");
    }
    try (PDDocument document = print(1, Fixtures.FEET, Paper.A4)) {
      // worked: 6.30 m / 0.0254 = 248.03 in = 20 ft 8 in
      assertThat(text(document)).contains("20 ft 8 in");
    }
  }

  @Test
  void theSquadsCardNamesEverybodyAndTheTapes() throws IOException {
    try (PDDocument document = print(40, CoachSettings.DEFAULT, Paper.A4)) {
      String text = text(document);
      for (Athlete athlete : Fixtures.athletes(40)) {
        assertThat(text).contains(athlete.name());
      }
      assertThat(text).contains("Tapes to lay: 5");
      assertThat(document.getNumberOfPages()).isGreaterThan(1);
    }
  }

  private static final DayPlan DAY =
      new DayPlan(
          "Three drills",
          List.of(
              new Drill(Sequence.parse("RL x5"), 0, 2, 2, false),
              new Drill(Sequence.parse("RRL x2"), null, 2, 3, true),
              new Drill(Sequence.parse("RRL"), 4, 1, 4, true)));

  /** A group of eight on one sheet, with a box for every rep: that is what fits into a pocket. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void aGroupsCardIsOneSheet(Paper paper) throws IOException {
    for (CoachSettings settings : new CoachSettings[] {CoachSettings.DEFAULT, Fixtures.FEET}) {
      byte[] pdf = PDF.render(Fixtures.cards().of(Fixtures.athletes(8), DAY, settings, "Invented squad."), paper);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).as(settings.unit().name()).isEqualTo(1);
      }
    }
  }

  @Test
  void namesMayHoldAnySign() throws IOException {
    Athlete odd = new Athlete(1, "O'<b>&\"Å\\} 王; */ ĝ", Level.BEGINNER, Foot.LEFT, 2);
    byte[] pdf = PDF.render(Fixtures.cards().of(List.of(odd), Fixtures.PLAN, CoachSettings.DEFAULT), Paper.A5);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(text(document)).contains("O'<b>&\"Å\\}").contains("; */ ĝ");
      assertThat(document.getPage(0).getMediaBox().getWidth() / POINTS_IN_MM).isCloseTo(148, within(0.5));
    }
  }
}
