package boundwright.season.weeks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import org.junit.jupiter.api.Test;

class TaperCurveTest {
  /** Mean cuts of 41, 50 and 60 % over 14 days: 13.045, 9.623 and 6.950 days (worked); the range is that of Bosquet et al. 2007 (read). */
  @Test
  void timeConstantsOfTheUsualCutsWorked() {
    assertThat(TaperCurve.of(14, 0.41).tau()).isCloseTo(13.045, within(0.0005));
    assertThat(TaperCurve.of(14, 0.50).tau()).isCloseTo(9.623, within(0.0005));
    assertThat(TaperCurve.of(14, 0.60).tau()).isCloseTo(6.950, within(0.0005));
  }

  @Test
  void everyAllowedCutIsReached() {
    for (int days = 7; days <= 28; days += 7) {
      for (double cut = 0.05; cut <= 0.95; cut += 0.05) {
        TaperCurve curve = TaperCurve.of(days, cut);
        double sum = 0;
        for (int k = 1; k <= days; k++) {
          sum += curve.share(k);
        }
        assertThat(sum / days).as("%d days, %.2f", days, cut).isCloseTo(1 - cut, within(1e-6));
      }
    }
  }

  @Test
  void aCutOutOfRangeIsRefusedInWords() {
    assertThatThrownBy(() -> TaperCurve.of(14, 1.2)).isInstanceOf(RefusedException.class).hasMessageContaining("1.2").hasMessageContaining("0.95");
  }
}
