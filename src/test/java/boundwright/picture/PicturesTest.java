package boundwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.GuardLimits;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegWeek;
import boundwright.picture.LadderPicture.Ladder;
import boundwright.picture.LadderPicture.Mark;
import boundwright.picture.LoadPicture.Bar;
import boundwright.picture.LoadPicture.Limit;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Interval;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.TestError;
import boundwright.readiness.TestKind;
import boundwright.readiness.TestScore;
import boundwright.readiness.TestTrend;
import boundwright.readiness.TrendLine;
import boundwright.technique.FaultTrends;
import boundwright.technique.JudgedRep;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** The pictures against the records they are drawn from. Expected places are worked from the records, not from the drawing. */
class PicturesTest {
  private static final TemplateEngine PAGES = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");

  // ---- letters ----

  /** The widths that break lines and keep figures apart are those of the font that ships. */
  @Test
  void widthsAreTheFontsOwn() throws IOException {
    for (Lettering.Style style : List.of(Lettering.Style.PLAIN, Lettering.Style.BOLD)) {
      String file = style == Lettering.Style.BOLD ? "/fonts/Bitter_700Bold.ttf" : "/fonts/Bitter_400Regular.ttf";
      try (InputStream in = Objects.requireNonNull(PicturesTest.class.getResourceAsStream(file))) {
        TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in));
        CmapLookup glyphs = font.getUnicodeCmapLookup();
        for (int c = ' '; c <= '~'; c++) {
          double expected = 1000.0 * font.getAdvanceWidth(glyphs.getGlyphId(c)) / font.getUnitsPerEm();
          assertThat(Lettering.width(Character.toString(c), 1000, style)).as("%c, %s", c, style).isCloseTo(expected, within(0.51));
        }
      }
    }
  }

  @Test
  void wrappingLosesNoWordAndKeepsTheWidth() {
    String text = "Figures: reps with the fault on that contact, the darker the larger the share of an extraordinarilylongwordwithoutend.";
    List<String> lines = Lettering.wrap(text, 11, Lettering.Style.PLAIN, 150);
    assertThat(String.join(" ", lines)).isEqualTo(text);
    assertThat(lines).hasSizeGreaterThan(3);
    assertThat(lines.stream().filter(l -> l.contains(" "))).allSatisfy(l -> assertThat(Lettering.width(l, 11, Lettering.Style.PLAIN)).isLessThanOrEqualTo(150));
  }

  // ---- every picture ----

  @ParameterizedTest
  @EnumSource(Width.class)
  void everyPictureIsWellFormedNamedAndWithinItsFrame(Width width) throws Exception {
    for (PictureFixtures.Shown s : PictureFixtures.all(width)) {
      StringOutput html = new StringOutput();
      PAGES.render(s.template(), Map.of("picture", s.picture()), html);
      Document svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html.toString())));
      assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).isNotBlank();
      assertThat(svg.getElementsByTagName("desc").item(0).getTextContent()).isNotBlank();
      assertThat(html.toString()).doesNotContain("NaN").doesNotContain("Infinity").doesNotContain("<image").doesNotContain("url(");
      String[] box = svg.getDocumentElement().getAttribute("viewBox").split(" ");
      double high = Double.parseDouble(box[3]);
      assertThat(Double.parseDouble(box[2])).isEqualTo(width.units());
      for (Lettering l : words(s.picture())) {
        assertThat(l.left()).as(l.toString()).isGreaterThan(-1);
        assertThat(l.right()).as(l.toString()).isLessThan(width.units() + 1);
        assertThat(l.y()).as(l.toString()).isBetween(l.size() * 0.6, high);
      }
    }
  }

  private static List<Lettering> words(Object picture) {
    if (picture instanceof LoadPicture p) {
      return p.words();
    }
    if (picture instanceof LadderPicture p) {
      return p.words();
    }
    return picture instanceof TestPicture p ? p.words() : ((FaultPicture) picture).words();
  }

  private static List<String> said(List<Lettering> words) {
    return words.stream().map(Lettering::said).toList();
  }

  // ---- load ----

  @ParameterizedTest
  @EnumSource(Width.class)
  void barsAreAsHighAsTheirContactsAndEveryContactIsInOne(Width width) {
    List<LegWeek> weeks = LegWeek.of(History.of(PictureFixtures.days()), PictureFixtures.TODAY, 8, PictureFixtures.WEIGHTS);
    LoadPicture p = PictureFixtures.load(width);
    double perContact = p.bars().get(0).height() / p.bars().get(0).units();
    for (Bar b : p.bars()) {
      assertThat(b.height()).as(b.toString()).isCloseTo(perContact * b.units(), within(0.01 + 0.02 * b.units()));
    }
    double ground = ground(p);
    for (int w = 0; w < weeks.size(); w++) {
      for (Foot foot : Foot.values()) {
        int week = w;
        List<Bar> stack = p.bars().stream().filter(b -> b.week() == week && b.filled() == (foot == Foot.RIGHT)).toList();
        assertThat(stack.stream().mapToDouble(Bar::units).sum()).isCloseTo(weeks.get(w).units(foot), within(1e-9));
        // from standing upwards, one on the other
        assertThat(stack.stream().map(Bar::steps)).isSorted();
        double y = ground;
        for (Bar b : stack) {
          assertThat(b.y() + b.height()).isCloseTo(y, within(0.02));
          y = b.y();
        }
      }
    }
  }

  private static double ground(LoadPicture p) {
    return p.rules().stream().filter(LoadPicture.Rule::ground).mapToDouble(LoadPicture.Rule::y).min().orElseThrow();
  }

  @ParameterizedTest
  @EnumSource(Width.class)
  void limitsAndRoofsStandAtTheirContactsOnTheSameScale(Width width) {
    List<LegWeek> weeks = LegWeek.of(History.of(PictureFixtures.days()), PictureFixtures.TODAY, 8, PictureFixtures.WEIGHTS);
    LoadPicture p = PictureFixtures.load(width);
    double ground = ground(p);
    double perContact = p.bars().stream().mapToDouble(Bar::height).sum() / p.bars().stream().mapToDouble(Bar::units).sum();
    for (int w = 0; w < weeks.size(); w++) {
      int week = w;
      Limit refuse = p.limits().stream().filter(l -> l.week() == week && l.refuses()).findFirst().orElseThrow();
      Limit caution = p.limits().stream().filter(l -> l.week() == week && !l.refuses()).findFirst().orElseThrow();
      assertThat(refuse.y()).isCloseTo(ground - perContact * GuardLimits.DEFAULT.ownWeek(weeks.get(w).before()).refuse(), within(0.5));
      assertThat(caution.y()).isCloseTo(ground - perContact * GuardLimits.DEFAULT.ownWeek(weeks.get(w).before()).caution(), within(0.5));
      LoadPicture.Roof roof = p.roofs().get(w);
      assertThat(roof.units()).isCloseTo(weeks.get(w).units(), within(1e-9));
      assertThat(roof.y()).isCloseTo(ground - perContact * weeks.get(w).units(), within(0.5));
    }
    // worked: caution a tenth and refused three tenths above the newest week's own, cut to whole contacts
    String joined = String.join("|", said(p.words()));
    double own = weeks.get(7).before();
    assertThat(joined).contains(String.valueOf((long) (1.1 * own))).contains(String.valueOf((long) (1.3 * own))).contains("3 Mar").contains(width == Width.WIDE ? "13 Jan" : "20 Jan"); // on a phone every second week is named
  }

  @Test
  void theLeftLegStandsOnTheLeftOutlinedAndTheRightOneOnTheRightFilled() {
    LoadPicture p = PictureFixtures.load(Width.WIDE);
    for (int w = 0; w < 8; w++) {
      int week = w;
      double left = p.bars().stream().filter(b -> b.week() == week && !b.filled()).mapToDouble(Bar::x).max().orElseThrow();
      double right = p.bars().stream().filter(b -> b.week() == week && b.filled()).mapToDouble(Bar::x).min().orElseThrow();
      assertThat(left).isLessThan(right);
    }
    assertThat(p.bars().stream().filter(b -> !b.filled()).map(Bar::fill)).containsOnly("#faf6ec");
    assertThat(p.bars().stream().filter(Bar::filled).map(Bar::hatch)).containsOnly("");
    // rungs are told apart without colour: by hatching on the left
    assertThat(p.swatches().stream().map(LoadPicture.Swatch::hatch)).doesNotHaveDuplicates();
  }

  @Test
  void everySessionHasAStemAsHighAsItsContacts() {
    LoadPicture p = PictureFixtures.load(Width.WIDE);
    List<DayLoad> shown = PictureFixtures.days().stream().filter(d -> d.date().isAfter(PictureFixtures.TODAY.minusWeeks(8))).toList();
    assertThat(p.stems().stream().map(LoadPicture.Stem::date)).containsExactlyElementsOf(shown.stream().map(DayLoad::date).toList());
    double per = (p.stems().get(0).ground() - p.stems().get(0).top()) / p.stems().get(0).contacts();
    assertThat(p.stems()).allSatisfy(s -> assertThat(s.ground() - s.top()).isCloseTo(per * s.contacts(), within(0.02 * s.contacts())));
    assertThat(p.stems().stream().map(LoadPicture.Stem::x)).isSorted().doesNotHaveDuplicates();
    Limit caution = p.limits().stream().filter(l -> l.week() == -1 && !l.refuses()).findFirst().orElseThrow();
    assertThat(p.stems().get(0).ground() - caution.y()).isCloseTo(60 * per, within(1.3));
  }

  @Test
  void hatchingStaysInsideItsBar() {
    for (int steps = 0; steps <= 14; steps++) {
      String path = RungInk.hatch(steps, 10, 20, 30, 12);
      for (String piece : path.split("[ML]")) {
        if (!piece.isBlank()) {
          String[] xy = piece.trim().split(" ");
          assertThat(Double.parseDouble(xy[0])).isBetween(9.99, 40.01);
          assertThat(Double.parseDouble(xy[1])).isBetween(19.99, 32.01);
        }
      }
    }
  }

  @Test
  void noWeeksAreRefused() {
    assertThatThrownBy(() -> PictureFixtures.load(List.of(), 0, Width.WIDE)).isInstanceOf(RefusedException.class).hasMessageContaining("at least 1 week");
  }

  // ---- ladder ----

  @ParameterizedTest
  @EnumSource(Width.class)
  void everyJudgedRepIsDrawnOnceBesideItsRung(Width width) {
    Random random = new Random(7);
    for (int round = 0; round < 30; round++) {
      StringBuilder how = new StringBuilder();
      int n = random.nextInt(90);
      for (int i = 0; i < n; i++) {
        how.append("ccc-2f".charAt(random.nextInt(6)));
      }
      int steps = 2 * random.nextInt(7);
      List<Rep> reps = PictureFixtures.reps("RL x5", steps, how.toString(), "knee-up");
      LadderPicture p = LadderPicture.of(PictureFixtures.answers(reps), reps, width);
      Ladder ladder = p.ladders().get(0);
      long judged = how.chars().filter(c -> c != '-').count();
      long clean = how.chars().filter(c -> c == 'c').count();
      assertThat(ladder.marks()).as("seed 7, round %d", round).hasSize((int) judged);
      assertThat(ladder.marks().stream().filter(Mark::clean)).hasSize((int) clean);
      assertThat(p.ladders().get(1).marks()).isEmpty();
      double y = ladder.rungs().stream().filter(r -> r.steps() == steps).findFirst().orElseThrow().y();
      Set<String> places = new HashSet<>();
      for (Mark m : ladder.marks()) {
        assertThat(m.steps()).isEqualTo(steps);
        assertThat(Math.abs(m.y() - y)).as("nearer to its own rung than to the next").isLessThan(width == Width.WIDE ? 16.5 : 13.5);
        assertThat(places.add(m.x() + " " + m.y())).as("no two marks in one place").isTrue();
        assertThat(m.x() + m.radius()).isLessThan(width.units());
      }
    }
  }

  @Test
  void theAthleteStandsOnOneRungAndTheArrowPointsWhereTheGateSays() {
    LadderPicture p = PictureFixtures.ladder(Width.WIDE);
    for (Ladder l : p.ladders()) {
      assertThat(l.rungs().stream().filter(LadderPicture.Rung::here)).hasSize(1);
      assertThat(l.rungs().stream().map(LadderPicture.Rung::steps)).containsExactly(0, 2, 4, 6, 8, 10, 12);
      for (int k = 1; k < l.rungs().size(); k++) {
        assertThat(l.rungs().get(k).y()).as("upwards").isLessThan(l.rungs().get(k - 1).y());
      }
    }
    assertThat(said(p.words())).contains("add two steps", "go back two", "stay");
    assertThat(arrowEnd(p.ladders().get(0))).isCloseTo(rung(p.ladders().get(0), 6), within(0.01));
    assertThat(arrowEnd(p.ladders().get(1))).isCloseTo(rung(p.ladders().get(1), 0), within(0.01));
    assertThat(p.ladders().get(2).arrow()).isEmpty();
    assertThat(p.said()).contains("39 of 42 reps looked at clean from 4 steps").contains("go back two");
  }

  private static double rung(Ladder l, int steps) {
    return l.rungs().stream().filter(r -> r.steps() == steps).findFirst().orElseThrow().y();
  }

  private static double arrowEnd(Ladder l) {
    return Double.parseDouble(l.arrow().replaceAll("^M\\S+ \\S+V([0-9.]+)M.*$", "$1"));
  }

  @Test
  void aRungThatIsNotOfTheProgressionIsDrawnToo() {
    List<Rep> reps = PictureFixtures.reps("RRL x2", 14, "cc", "knee-up");
    Ladder l = LadderPicture.of(PictureFixtures.answers(reps), reps, Width.NARROW).ladders().stream().filter(x -> x.family() == DrillFamily.COMBINATION).findFirst().orElseThrow();
    assertThat(l.rungs().stream().map(LadderPicture.Rung::steps)).endsWith(12, 14);
    assertThat(l.marks()).hasSize(2);
  }

  // ---- tests ----

  @Test
  void aScoreAsTheFirstIsToldAsTheSame() {
    List<TestScore> same = List.of(PictureFixtures.score(1, TestKind.STANDING_TRIPLE, 6.90, 60, "spikes"), PictureFixtures.score(2, TestKind.STANDING_TRIPLE, 6.90, 4, "spikes"));
    assertThat(TestPicture.of(same, null, null, LengthUnit.METRES, Width.WIDE).said()).contains(": the same as the first, of ").doesNotContain("0.00 m");
    assertThat(TestPicture.plain(same, null, LengthUnit.METRES, Width.WIDE).said()).contains(": the same as on ");
    assertThat(TestPicture.of(PictureFixtures.scores(TestKind.STANDING_TRIPLE, 6.9), null, null, LengthUnit.METRES, Width.WIDE).said()).contains(" m above the first, of ");
  }

  @ParameterizedTest
  @EnumSource(Width.class)
  void scoresErrorBandAndTrendStandOnOneScale(Width width) {
    List<TestScore> squad = PictureFixtures.squad(TestKind.STANDING_TRIPLE, 6.9);
    TestError error = TestError.of(squad, TestKind.STANDING_TRIPLE, 0, false).orElseThrow();
    TestTrend trend = TestTrend.of(squad, TestKind.STANDING_TRIPLE, 0);
    TestPicture p = TestPicture.of(PictureFixtures.scores(TestKind.STANDING_TRIPLE, 6.9), error, trend, LengthUnit.METRES, width);
    List<TestPicture.Dot> dots = p.dots();
    double per = (dots.get(0).y() - dots.get(4).y()) / (dots.get(4).value() - dots.get(0).value());
    assertThat(per).isPositive();
    for (TestPicture.Dot d : dots) {
      assertThat(d.y()).isCloseTo(dots.get(0).y() - per * (d.value() - dots.get(0).value()), within(0.03));
    }
    // 1.96 sqrt 2 typical errors to either side of the first (Hopkins 2000, read; arithmetic worked)
    TestPicture.Band band = Objects.requireNonNull(p.band());
    assertThat(band.middle()).isCloseTo(dots.get(0).y(), within(0.03));
    assertThat(band.height()).isCloseTo(2 * per * Interval.Z975 * Math.sqrt(2) * error.te(), within(0.1));
    double whisker = Double.parseDouble(dots.get(0).whisker().replaceAll("^M\\S+ ([0-9.]+)h6.*$", "$1"));
    assertThat(dots.get(0).y() - whisker).isCloseTo(per * error.te(), within(0.05));
    TrendLine own = trend.model().athletes().stream().filter(l -> l.athlete() == 1).findFirst().orElseThrow();
    double lineStart = Double.parseDouble(Objects.requireNonNull(p.trend()).line().replaceAll("^M\\S+ ([0-9.]+)L.*$", "$1"));
    double expected = own.at(trend.weeksTo(dots.get(0).date())).p50();
    assertThat(lineStart).isCloseTo(dots.get(0).y() - per * (expected - dots.get(0).value()), within(0.1));
  }

  @Test
  void scoresByAnotherProtocolAreNotCompared() {
    TestPicture p = PictureFixtures.test(TestKind.STANDING_TRIPLE, 6.9, LengthUnit.METRES, Width.WIDE);
    assertThat(p.dots().stream().map(TestPicture.Dot::compared)).containsExactly(true, false, true, true, true);
    assertThat(p.dots().get(1).whisker()).isEmpty();
    assertThat(p.said()).contains("by another protocol");
  }

  @Test
  void theLeftLegHasOutlinedDots() {
    assertThat(PictureFixtures.test(TestKind.SINGLE_LEG_LEFT, 9, LengthUnit.METRES, Width.WIDE).filled()).isFalse();
    assertThat(PictureFixtures.test(TestKind.SINGLE_LEG_RIGHT, 9, LengthUnit.METRES, Width.WIDE).filled()).isTrue();
  }

  /** Those who do not coach are shown the scores and what the test can miss by, in their words, and no more. */
  @Test
  void inPlainWordsThereIsNoTrendAndNoTypicalError() {
    TestError error = TestError.of(PictureFixtures.scores(TestKind.STANDING_TEN, 24.1), TestKind.STANDING_TEN, 0, false).orElse(null);
    TestPicture p = TestPicture.plain(PictureFixtures.scores(TestKind.STANDING_TEN, 24.1), error, LengthUnit.METRES, Width.NARROW);
    assertThat(p.title()).startsWith("ten bounds from standing: ");
    assertThat(p.trend()).isNull();
    assertThat(p.dots()).allMatch(d -> d.whisker().isEmpty());
    assertThat(p.said()).contains(" than on ").contains("the test can miss by").doesNotContain("typical error").doesNotContain("Slanting").doesNotContain("protocol.");
  }

  @Test
  void withoutAKnownErrorNothingIsClaimed() {
    TestPicture p = TestPicture.of(PictureFixtures.scores(TestKind.TIMED_RUN_UP, 7.1), null, null, LengthUnit.METRES, Width.WIDE);
    assertThat(p.band()).isNull();
    assertThat(p.trend()).isNull();
    assertThat(p.said()).contains("the error of the test is not known, so nothing can be told").doesNotContain("more than the error");
    assertThatThrownBy(() -> TestPicture.of(List.of(), null, null, LengthUnit.METRES, Width.WIDE)).isInstanceOf(RefusedException.class);
  }

  // ---- faults ----

  @ParameterizedTest
  @EnumSource(Width.class)
  void everyCountStandsUnderItsContactAndTheContactBeforeIsFramed(Width width) {
    FaultTrends trends = PictureFixtures.trends();
    FaultPicture p = FaultPicture.of(trends, PictureFixtures.FAULTS, width);
    int counted = 0;
    for (var row : trends.map().rows()) {
      for (int c = 1; c <= trends.map().contacts(); c++) {
        int contact = c;
        List<FaultPicture.Cell> there =
            p.cells().stream().filter(x -> x.fault().equals(row.key()) && Integer.valueOf(contact).equals(x.contact())).toList();
        int n = row.perContact().get(c - 1);
        assertThat(there).hasSize(n > 0 ? 1 : 0);
        if (n > 0) {
          counted++;
          assertThat(there.get(0).count()).isEqualTo(n);
          assertThat(there.get(0).depth()).isCloseTo(n / 9.0, within(0.006));
        }
      }
    }
    assertThat(p.cells()).hasSize(counted);
    // worked from the fixture: toe-up first shows on 4 5 5 5 6 5, median 5; hips-tall on 1 1 1; upright on 9; the coach's own on 2
    assertThat(p.frames())
        .extracting(FaultPicture.Frame::fault, FaultPicture.Frame::contact)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple("toe-up", 4), org.assertj.core.groups.Tuple.tuple("hips-tall", 0),
            org.assertj.core.groups.Tuple.tuple("upright", 8), org.assertj.core.groups.Tuple.tuple("late-left-arm-held-too-high", 1));
    assertThat(p.heads().stream().map(FaultPicture.Head::filled)).containsExactly(true, true, false, true, true, false, true, true, false);
  }

  @ParameterizedTest
  @EnumSource(Width.class)
  void aLongDrillIsFoldedAndNamesWhatItLeavesOut(Width width) {
    FaultPicture p = FaultPicture.of(PictureFixtures.longTrends(), PictureFixtures.FAULTS, width);
    assertThat(p.cells().stream().map(FaultPicture.Cell::contact)).containsExactlyInAnyOrder(3, 14, 15, 16);
    assertThat(String.join(" ", said(p.words()))).contains("17 to 30").contains("nothing seen");
    assertThat(p.cells()).allSatisfy(c -> assertThat(c.x() + c.width()).isLessThanOrEqualTo(width.units()));
  }

  @Test
  void aCleanDrillSaysSo() {
    List<JudgedRep> clean = new ArrayList<>(List.of(PictureFixtures.judged(1, "RL x5"), PictureFixtures.judged(2, "RL x5")));
    FaultPicture p = FaultPicture.of(FaultTrends.ofDrill(clean), PictureFixtures.FAULTS, Width.NARROW);
    assertThat(said(p.words())).contains("Nothing was seen wrong.", "2 reps looked at, 2 clean");
    assertThat(p.title()).contains(Sequence.parse("RL x5").text());
  }
}
