package boundwright.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.athlete.growth.GrowthAnswer;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.GrowthTrend;
import boundwright.athlete.growth.GrowthWords;
import boundwright.athlete.growth.Measurement;
import boundwright.picture.growth.GrowthDrawing;
import boundwright.picture.growth.GrowthPicture;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The picture of growth stays in its frame, says its figures in words too, and letters do not leave it. */
class GrowthPictureTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);

  private static GrowthAnswer answer(List<Measurement> measured) {
    return new GrowthAnswer(
        measured, new Estimate(5, 6, 7), null, null, null, null, null, "", measured.size() < 2 ? List.of() : GrowthTrend.curve(measured, 14), GrowthSettings.DEFAULT);
  }

  private static List<Measurement> heights(int count, double first, double step) {
    List<Measurement> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      out.add(new Measurement(i + 1, TODAY.minusWeeks(8L * (count - i)), Math.round(10 * (first + step * i)) / 1000.0, null, null, ""));
    }
    return out;
  }

  @Test
  void everythingStaysInTheFrame() {
    for (LengthUnit unit : LengthUnit.values()) {
      for (double step : new double[] {0, 0.4, 1.2, 2.5}) {
        for (int count : new int[] {2, 5, 40}) {
          GrowthPicture p = GrowthDrawing.of("Ada", answer(heights(count, 110, step)), new GrowthWords(unit, LocalDate::toString));
          assertThat(p.dots()).hasSize(count).allSatisfy(d -> {
            assertThat(d.x()).isBetween(0.0, p.width());
            assertThat(d.y()).isBetween(15.0, 140.0);
          });
          assertThat(p.words()).allSatisfy(l -> {
            assertThat(l.size()).isGreaterThanOrEqualTo(12);
            double w = Lettering.width(l.said(), l.size(), l.style());
            assertThat(l.anchor().equals("end") ? l.x() - w : l.x()).as(l.said()).isGreaterThanOrEqualTo(0);
            assertThat(l.anchor().equals("end") ? l.x() : l.x() + w).as(l.said()).isLessThanOrEqualTo(p.width());
          });
          assertThat(p.shapes()).allSatisfy(s -> assertThat(s.path()).doesNotContain("NaN").doesNotContain("Infinity"));
        }
      }
    }
  }

  @Test
  void itSaysInWordsWhatItShows() {
    GrowthPicture p = GrowthDrawing.of("Ada", answer(heights(3, 150, 1)), new GrowthWords(LengthUnit.METRES, LocalDate::toString));
    assertThat(p.title()).isEqualTo("How Ada grows");
    assertThat(p.said()).contains("From 150.0 cm on 2025-11-25 to 152.0 cm on 2026-03-17", "about 6.0 cm a year; between 5.0 and 7.0 nine times in ten");
    assertThat(p.dots().get(2).y()).isLessThan(p.dots().get(0).y());
  }

  @Test
  void oneHeightIsNoPicture() {
    assertThatThrownBy(() -> GrowthDrawing.of("Ada", answer(heights(1, 150, 1)), new GrowthWords(LengthUnit.METRES, LocalDate::toString)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("at least 2 days");
  }
}
