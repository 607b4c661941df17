package boundwright.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.demo.DemoSquad;
import boundwright.load.LegCare;
import boundwright.picture.LoadPicture;
import boundwright.picture.PictureFixtures;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestProtocol;
import boundwright.readiness.TestScore;
import boundwright.runway.CoachSettings;
import boundwright.store.Workbench;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The report as it is read back from paper by another program than the one that set it. */
class AthleteReportTest {
  private static final CardPdf PDF = new CardPdf();

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void guardGateLoadTestsAndFaultsAreOnPaperWithTheirSources(Paper paper) throws IOException {
    String text = text(PDF.renderReport(PictureFixtures.report(), paper));
    assertThat(text)
        .contains("Ilva Torun", "Tuesday 3 March 2026", "refused", "add two steps", "go back two", "at least 12", "a description, no limit", "Monotony")
        .contains("Foster 1998 (from memory, not confirmed)", "Buist et al. 2008; Nielsen et al. 2014 (second-hand: reported by another page)")
        .contains("contacts in the session", "Two weeks of illness before", "its 3 earlier tests", "look one contact earlier", "foot too far ahead")
        .contains("Land under yourself", "It is no diagnosis", "licensed medical staff", "Invented athlete, invented place");
  }

  /** The words of a picture are outlines on paper, so it is looked for by its colours: the test's band is the only ground of sand. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void thePicturesAreOnPaperOfEitherSize(Paper paper) throws IOException {
    int sand = 0;
    int brick = 0;
    try (PDDocument document = Loader.loadPDF(PDF.renderReport(PictureFixtures.report(), paper))) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        BufferedImage page = renderer.renderImageWithDPI(i, 50);
        for (int y = 0; y < page.getHeight(); y++) {
          for (int x = 0; x < page.getWidth(); x++) {
            int rgb = page.getRGB(x, y) & 0xffffff;
            sand += rgb == 0xefe3c8 ? 1 : 0;
            brick += rgb == 0xa8452f ? 1 : 0;
          }
        }
      }
    }
    // three bands of about 165 x 39 pixels on the smaller paper (worked from its 96 mm), less lines and dots: at least half of them
    assertThat(sand).isGreaterThan(9_600);
    assertThat(brick).isGreaterThan(50);
  }

  @Test
  void aMedicalHoldIsAFactAndSaysWhoEndsIt() throws IOException {
    AthleteReport report = PictureFixtures.report();
    assertThat(report.holds())
        .containsExactly(
            "Medical hold since 2 Mar 2026. No bounding. A named clinician ends it, with a date; a coach cannot.",
            "Medical hold since 15 Aug 2025, ended by Dr A. Invented from 4 Sep 2025 on.");
    // what was told to the coach stays with the coach
    assertThat(text(PDF.renderReport(report, Paper.A4))).contains("A named clinician ends it").doesNotContain("set by the coach");
  }

  @Test
  void aHoldWhoseEndIsEnteredNamesTheDayAndTheClinician() {
    LegCare.MedicalHold ends = new LegCare.MedicalHold(1, PictureFixtures.TODAY.minusDays(1), "", "Dr A. Invented", PictureFixtures.TODAY.plusDays(4));
    LegCare care = new LegCare(false, null, List.of(), List.of(ends));
    assertThat(AthleteReports.of(PictureFixtures.facts(care), PictureFixtures.ATHLETE, CoachSettings.DEFAULT, PictureFixtures.TODAY, "").holds())
        .containsExactly("Medical hold since 2 Mar 2026. No bounding before 7 Mar 2026, the day named by Dr A. Invented.");
  }

  @Test
  void nothingIsSaidOfChancesOfInjury() throws IOException {
    String text = text(PDF.renderReport(PictureFixtures.report(), Paper.A4)).toLowerCase(Locale.ROOT);
    assertThat(text.replace("no diagnosis and gives no chance of injury", "")).doesNotContain("injur").doesNotContain("diagnos").doesNotContain("risk");
  }

  @ParameterizedTest
  @EnumSource(Paper.class)
  void anAthleteOfWhomNothingIsKnownHasAReportToo(Paper paper) throws IOException {
    String text = text(PDF.renderReport(PictureFixtures.bare(Fixtures.FEET), paper));
    assertThat(text)
        .contains("No rep was looked at in the last 8 weeks.", "No session was rated in four weeks.", "allowed")
        .doesNotContain("null");
  }

  @Test
  void everySourceOfTheGateIsListedOnce() {
    AthleteReport report = PictureFixtures.report();
    Set<Integer> numbers = new TreeSet<>();
    report.answers().forEach(a -> a.evidence().forEach(e -> numbers.add(report.number(e.source()))));
    assertThat(report.gateSources()).doesNotHaveDuplicates().hasSize(numbers.size());
    assertThat(numbers).doesNotContain(0);
  }

  @Test
  void theLoadPictureTakesTheLimitsOfAGrowingAthlete() {
    LegCare growing = new LegCare(true, PictureFixtures.TODAY.minusWeeks(3), List.of(), List.of());
    AthleteReport report = AthleteReports.of(PictureFixtures.facts(growing), PictureFixtures.ATHLETE, CoachSettings.DEFAULT, PictureFixtures.TODAY, "");
    // 50-60 jumps a session (Johnson et al. 2011; read)
    assertThat(report.load().wide().said()).contains("A single session in jump contacts: caution above 50, refused above 60.");
  }

  @Test
  void theReportIsLinesAndNotAPhoto() throws IOException {
    try (PDDocument document = Loader.loadPDF(PDF.renderReport(PictureFixtures.report(), Paper.A4))) {
      for (PDPage page : document.getPages()) {
        assertNoImage(page.getResources());
      }
    }
  }

  private static void assertNoImage(PDResources resources) throws IOException {
    for (COSName name : resources.getXObjectNames()) {
      PDXObject object = resources.getXObject(name);
      assertThat(object).isNotInstanceOf(PDImageXObject.class);
      if (object instanceof PDFormXObject form && form.getResources() != null) {
        assertNoImage(form.getResources());
      }
    }
  }

  /** From the store to paper, with the invented squad. */
  @Test
  void everyAthleteOfTheInventedSquadHasAReport(@TempDir Path dir) throws IOException {
    try (Workbench w = Workbench.open(dir, Fixtures.CLOCK)) {
      DemoSquad.fill(w);
      AthleteReports reports =
          new AthleteReports(w.reps(), w.care(), w.loadDesk(), w.ladderDesk(), w.ladder(), w.looks(), w.tests(), w.clock());
      Athlete athlete = w.athletes().all().get(0);
      w.tests()
          .add(
              new TestScore(
                  0, athlete.id(), TestKind.STANDING_TRIPLE, 0, 6.4, null, LocalDate.now(w.clock()),
                  TestProtocol.usual(TestKind.STANDING_TRIPLE, Surface.GRASS)));
      AthleteReport report = reports.of(athlete, CoachSettings.DEFAULT, DemoSquad.NOTE);
      assertThat(report.tests()).as("the one added here and the two series of hops that the squad comes with").hasSize(3);
      double drawn = report.load().wide().roofs().stream().mapToDouble(LoadPicture.Roof::units).sum();
      double counted =
          w.loadDesk().history(athlete, 7 * AthleteReports.WEEKS - 1).days().stream()
              .mapToDouble(d -> w.loadDesk().weights(athlete, LocalDate.now(w.clock())).of(d).units())
              .sum();
      assertThat(drawn).isCloseTo(counted, within(1e-6)).isPositive();
      for (Athlete a : w.athletes().all()) {
        assertThat(text(PDF.renderReport(reports.of(a, CoachSettings.DEFAULT, DemoSquad.NOTE), Paper.A4))).contains(a.name(), DemoSquad.NOTE);
      }
    }
  }

  /** Five drills fit two sheets of A4: the coach carries paper. */
  @Test
  void aSessionOfFiveDrillsFitsTwoSheets() throws IOException {
    for (CoachSettings settings : List.of(CoachSettings.DEFAULT, Fixtures.FEET)) {
      byte[] pdf = PDF.render(Fixtures.cards().of(Fixtures.athletes(1), Fixtures.PLAN, settings, "Invented squad."), Paper.A4);
      try (PDDocument document = Loader.loadPDF(pdf)) {
        assertThat(document.getNumberOfPages()).isEqualTo(2);
      }
    }
  }
}
