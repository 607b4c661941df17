package boundwright.picture.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.card.Fixtures;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Arc;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.picture.strip.RunwayStrip.Row;
import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Tick;
import boundwright.picture.strip.RunwayStrip.Whisker;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.LengthUnit;
import boundwright.runway.MarkAdvice;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The picture against the advice it is drawn from. Expected values are worked from the advice, not from the drawing. */
class RunwayStripTest {
  private static RunwayStrip strip(String letters, int steps, Width width) {
    return RunwayStrip.of(Fixtures.advice(letters, steps), LengthUnit.METRES, width);
  }

  private static Stream<Print> prints(RunwayStrip strip) {
    return strip.rows().stream().flatMap(r -> r.prints().stream());
  }

  private static List<String> figures(RunwayStrip strip) {
    return strip.rows().stream()
        .flatMap(r -> r.texts().stream())
        .filter(t -> t.tone() == Text.Tone.FIGURE)
        .map(Text::said)
        .toList();
  }

  @Test
  void theMarkAndTheStartAreWrittenAsDistancesFromTheSand() {
    MarkAdvice advice = Fixtures.advice("RRL x2", 4);
    // worked: hops 2.4 m, bounds 2.1 m, jump 2.6 m give contact 6 at 11.1 m and the landing at 13.7 m, the mark half way: 12.40 m;
    // start 1.45 * 4 - 0.6 = 5.20 m before it
    assertThat(figures(RunwayStrip.of(advice, LengthUnit.METRES))).containsExactly("17.60 m", "12.40 m");
    // worked: 12.40 / 0.0254 = 488.19 in = 40 ft 8.19 in, to the quarter 40 ft 8 1/4 in; 17.60 / 0.0254 = 692.91 in = 57 ft 9 in
    assertThat(figures(RunwayStrip.of(advice, LengthUnit.FEET_INCHES))).containsExactly("57 ft 9 in", "40 ft 8 1/4 in");
  }

  @Test
  void fromStandingThereIsNoStartMarkAndNoBreak() {
    RunwayStrip strip = strip("RRL", 0, Width.WIDE);
    assertThat(strip.rows().get(0).tapes()).hasSize(1);
    assertThat(strip.rows().get(0).breakPath()).isNull();
    assertThat(strip("RRL", 2, Width.WIDE).rows().get(0).breakPath()).isNotNull();
  }

  @Test
  void rightFeetAreFilledAndLowLeftFeetOutlinedAndHigh() {
    Row row = strip("RRLL", 0, Width.WIDE).rows().get(0);
    double middle = (row.top() + row.bottom()) / 2;
    for (Print p : row.prints()) {
      assertThat(p.filled()).as("foot of contact %d", p.contact()).isEqualTo(p.y() > middle);
    }
    assertThat(row.prints().stream().map(Print::filled)).containsExactly(true, true, false, false, false, true);
  }

  @Test
  void theLandingIsTwoFeetSideBySideThatDoNotTouch() {
    for (String letters : new String[] {"R", "RRL", "RL x5", "R x60"}) {
      RunwayStrip strip = strip(letters, 0, Width.WIDE);
      int n = strip.rows().stream().flatMap(r -> r.prints().stream()).mapToInt(Print::contact).max().orElseThrow();
      List<Print> landing = prints(strip).filter(p -> p.contact() == n).toList();
      assertThat(landing).hasSize(2);
      assertThat(landing.get(0).x()).isEqualTo(landing.get(1).x());
      // a sole is at most 0.26 of its length to one side of its middle (the points of the drawing)
      assertThat(landing.get(1).y() - landing.get(0).y()).isGreaterThan(2 * 0.26 * landing.get(0).length());
    }
  }

  @Test
  void distancesOnPaperAreDistancesOnTheRunway() {
    MarkAdvice advice = Fixtures.advice("RRL x2", 0);
    Row row = RunwayStrip.of(advice, LengthUnit.METRES).rows().get(0);
    List<Tick> ticks = row.ticks();
    double perMetre = ticks.get(0).x() - ticks.get(1).x();
    double sand = Objects.requireNonNull(row.sandX());
    assertThat(ticks.get(0).x()).isCloseTo(sand, within(0.02));
    assertThat((sand - row.tapes().get(0).x()) / perMetre).isCloseTo(advice.markToSand_m(), within(0.01));
    for (Print p : row.prints()) {
      assertThat((p.x() - row.tapes().get(0).x()) / perMetre).isCloseTo(advice.forecast().mean(p.contact()), within(0.01));
    }
    assertThat((sand - Objects.requireNonNull(row.bracket()).left()) / perMetre)
        .isCloseTo(Objects.requireNonNull(advice.window()).max_m(), within(0.01));
  }

  @Test
  void theKindOfFlightIsToldByHeightAndDash() {
    Row row = strip("RRL", 0, Width.WIDE).rows().get(0);
    assertThat(row.arcs().stream().map(Arc::kind)).containsExactly(Arc.Kind.HOP, Arc.Kind.BOUND, Arc.Kind.JUMP);
  }

  @Test
  void withoutAWindowThereIsNoBracketAndTheTapeIsHollow() {
    MarkAdvice closed = Fixtures.advice("RRL x3", 6, 0.08);
    assertThat(closed.window()).isNull();
    Row row = RunwayStrip.of(closed, LengthUnit.METRES).rows().get(0);
    assertThat(row.bracket()).isNull();
    assertThat(row.tapes().get(1).hollow()).isTrue();
    assertThat(row.tapes().get(0).hollow()).isFalse();
    assertThat(row.texts()).anyMatch(t -> t.said().equals("BEST MARK"));
  }

  @Test
  void onTheFlatThereIsNoSandAndTheScaleBeginsAtTheTakeOff() {
    RunwayStrip strip = RunwayStrip.ofFlat(Fixtures.advice("RL x5", 4), LengthUnit.METRES);
    Row row = strip.rows().get(0);
    assertThat(row.sandX()).isNull();
    assertThat(row.ticks().get(0).x()).isCloseTo(row.tapes().get(1).x(), within(0.02));
    assertThat(row.ticks().get(1).x()).isGreaterThan(row.ticks().get(0).x());
    assertThat(figures(strip)).containsExactly("5.20 m");
  }

  @ParameterizedTest
  @EnumSource(Width.class)
  void everySequenceFromOneToSixtyContactsFitsAndCanBeRead(Width width) {
    long seed = 20260303L;
    Random random = new Random(seed);
    for (int n = 1; n <= 60; n++) {
      StringBuilder letters = new StringBuilder();
      for (int i = 0; i < n; i++) {
        letters.append(random.nextBoolean() ? 'R' : 'L');
      }
      LengthUnit unit = n % 2 == 0 ? LengthUnit.METRES : LengthUnit.FEET_INCHES;
      RunwayStrip strip = RunwayStrip.of(Fixtures.advice(letters.toString(), n % 3 * 4, 0.02), unit, width);
      String as = letters + " " + width + " seed " + seed;
      Set<Integer> seen = new HashSet<>();
      double before = 0;
      for (Row row : strip.rows()) {
        assertThat(row.width()).as(as).isLessThanOrEqualTo(width.units() + 0.05);
        assertThat(row.x()).as(as).isEqualTo(before);
        before = row.right();
        row.prints().stream().filter(p -> p.x() >= row.x() && p.x() <= row.right()).forEach(p -> seen.add(p.contact()));
        for (Text t : row.texts()) {
          assertThat(t.size()).as(as).isGreaterThanOrEqualTo(8.5);
          double reach = StripPaths.textWidth(t.said(), t.size());
          if (t.tone() == Text.Tone.FIGURE) {
            assertThat(t.x() + ("start".equals(t.anchor()) ? reach : 0)).as(as + " " + t.said()).isLessThanOrEqualTo(row.right() + 0.1);
            assertThat(t.x() - ("end".equals(t.anchor()) ? reach : 0)).as(as + " " + t.said()).isGreaterThanOrEqualTo(row.x());
          }
        }
      }
      assertThat(seen).as(as).hasSize(n + 1);
      assertThat(prints(strip).mapToDouble(Print::length).min().orElse(0)).as(as).isGreaterThanOrEqualTo(9);
      assertThat(before).as(as).isGreaterThan(0);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"RRL x3", "RL x5", "R x30", "RRLL x10", "R x60"})
  void intervalsBelowTheRunwayNeverLieOnEachOther(String letters) {
    for (double spread : new double[] {0.01, 0.05, 0.15}) {
      RunwayStrip strip = RunwayStrip.of(Fixtures.advice(letters, 0, spread), LengthUnit.METRES, Width.NARROW);
      for (Row row : strip.rows()) {
        for (int i = 0; i < row.whiskers().size(); i++) {
          Whisker a = row.whiskers().get(i);
          for (Whisker b : row.whiskers().subList(0, i)) {
            assertThat(a.lane() != b.lane() || a.right() < b.left() || b.right() < a.left()).as("%s %s", a, b).isTrue();
          }
        }
      }
      assertThat(strip.rows().get(strip.rows().size() - 1).whiskers()).anyMatch(Whisker::landing);
    }
  }

  /** Where little is known the bands overlap: they are laid on fainter and the picture does not grow without end. */
  @Test
  void wideSpreadsNeitherHideTheRunwayNorStretchThePicture() {
    RunwayStrip sure = RunwayStrip.of(Fixtures.advice("RL x5", 0, 0.01), LengthUnit.METRES);
    RunwayStrip unsure = RunwayStrip.of(Fixtures.advice("RL x5", 0, 0.4), LengthUnit.METRES);
    assertThat(sure.bandOpacity()).isEqualTo(0.34);
    assertThat(unsure.bandOpacity()).isLessThan(0.2);
    Row row = unsure.rows().get(0);
    double flights = row.prints().get(row.prints().size() - 1).x() - row.prints().get(0).x();
    assertThat(flights).isGreaterThan(0.6 * row.width());
  }

  @Test
  void itIsAlsoToldInWords() {
    RunwayStrip strip = strip("RRL x2", 4, Width.WIDE);
    assertThat(strip.title()).isEqualTo("RRL x2 from 4 steps: take-off mark 12.40 m from the sand");
    assertThat(strip.said())
        .contains("Start mark 5.20 m before the take-off mark")
        .contains("4 contacts right (filled), 2 left (outlined)")
        .contains("hop, bound, bound, hop, bound, jump")
        .contains("Landing 13.70 m from the take-off mark");
  }

  @Test
  void numbersInPathsNeverHaveAnExponent() {
    assertThat(StripPaths.number(0.0004)).isEqualTo("0");
    assertThat(StripPaths.number(-0.05)).isEqualTo("-0.05");
    assertThat(StripPaths.number(-12.345)).isEqualTo("-12.34");
    assertThat(StripPaths.number(1e6)).isEqualTo("1000000");
  }
}
