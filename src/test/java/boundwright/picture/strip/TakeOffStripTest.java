package boundwright.picture.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.picture.strip.RunwayStrip.Row;
import boundwright.picture.strip.RunwayStrip.Tape;
import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.MarkSettings;
import boundwright.runway.SandMarks;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpMarks.TakeOffMark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The strip of take-offs in a row against the marks it is drawn from: invented, 5.50 m apart, the last flight 4.00 m. */
class TakeOffStripTest {
  private static RunJumpMarks marks(int jumps, boolean inSand) {
    RunJumps pattern = new RunJumps(Foot.LEFT, 2, jumps);
    double last = 5.5 * (jumps - 1);
    Double mark = inSand ? (Double) (last + 2) : null;
    List<TakeOffMark> out = new ArrayList<>();
    for (int jump = 1; jump <= jumps; jump++) {
      double at = 5.5 * (jump - 1);
      out.add(new TakeOffMark(jump, pattern.foot(jump), Estimate.normal(at, 0.1 * jump), mark == null ? null : (Double) (mark - at)));
    }
    SandMarks sand = mark == null ? null : new SandMarks(mark, 0.8, null);
    RunUp runUp = new RunUp(new Estimate(6.4, 6.5, 6.6), new Estimate(6, 6, 6), 3);
    return new RunJumpMarks(pattern, 4, out, Estimate.normal(last + 4, 0.4), sand, MarkSettings.DEFAULT, runUp, last + 10.5, null, 9, List.of());
  }

  private static Row row(RunJumpMarks marks, LengthUnit unit, Width form) {
    return TakeOffStrip.of(marks, unit, form).rows().get(0);
  }

  @ParameterizedTest
  @EnumSource(Width.class)
  void tapesLieWhereTheMarksSay(Width form) {
    RunJumpMarks marks = marks(4, true);
    Row row = row(marks, LengthUnit.METRES, form);
    double sand = Objects.requireNonNull(row.sandX());
    List<Double> tapes = row.tapes().stream().map(Tape::x).toList();
    double perMetre = (sand - tapes.get(0)) / 18.5; // the first tape is 3 x 5.5 + 2 m from the sand (worked)
    assertThat(tapes).hasSize(4);
    for (int i = 0; i < 4; i++) {
      assertThat((sand - tapes.get(i)) / perMetre).isCloseTo(18.5 - 5.5 * i, within(0.01));
    }
    // off L R L R, both feet into the sand; right is filled and low
    assertThat(row.prints().stream().map(Print::filled)).containsExactly(false, true, false, true, false, true);
    assertThat(row.prints()).allMatch(p -> p.filled() == p.y() > (row.top() + row.bottom()) / 2);
  }

  @Test
  void onTheFlatThereIsNoSandAndTheLastLandsOnTheFreeLeg() {
    Row row = row(marks(4, false), LengthUnit.METRES, Width.NARROW);
    assertThat(row.sandX()).isNull();
    assertThat(row.prints().stream().map(Print::filled)).as("off L R L R, down on the left").containsExactly(false, true, false, true, false);
  }

  /** On a phone too, however many take-offs there are. */
  @ParameterizedTest
  @EnumSource(Width.class)
  void labelsOfTheScaleNeverTouch(Width form) {
    for (LengthUnit unit : LengthUnit.values()) {
      for (int jumps = 2; jumps <= RunJumps.MOST_JUMPS; jumps++) {
        for (boolean inSand : new boolean[] {false, true}) {
          List<Text> labels =
              row(marks(jumps, inSand), unit, form).texts().stream()
                  .filter(t -> t.tone() == Text.Tone.SCALE)
                  .sorted(Comparator.comparingDouble(Text::x))
                  .toList();
          assertThat(labels).as("%s, %d take-offs", unit, jumps).hasSizeGreaterThan(1);
          for (int i = 1; i < labels.size(); i++) {
            Text a = labels.get(i - 1);
            Text b = labels.get(i);
            assertThat(b.x() - half(b) - a.x() - half(a)).as("%s, %d take-offs, %s beside %s", unit, jumps, a.said(), b.said()).isPositive();
          }
        }
      }
    }
  }

  private static double half(Text t) {
    return StripPaths.textWidth(t.said(), t.size()) / 2;
  }
}
