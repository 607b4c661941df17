package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Decimals as the Java machine's own formatter writes them (reference library). */
class DecimalsTest {
  private static final long SEED = 5;

  @Test
  void writesWhatTheFormatterWrites() {
    Random random = new Random(SEED);
    for (int i = 0; i < 20_000; i++) {
      double x = random.nextInt(3) == 0 ? (random.nextInt(200_001) - 100_000) / 1000.0 : 100 * random.nextGaussian();
      for (int n = 0; n <= 2; n++) {
        assertThat(Decimals.fixed(x, n)).as("seed " + SEED + ": " + x).isEqualTo(String.format(Locale.ROOT, "%." + n + "f", x));
      }
    }
  }

  @Test
  void aMinusStaysBeforeANought() {
    assertThat(Decimals.fixed(-0.0, 2)).isEqualTo(String.format(Locale.ROOT, "%.2f", -0.0)).isEqualTo("-0.00");
    assertThat(Decimals.fixed(-0.001, 2)).isEqualTo("-0.00");
    assertThat(Decimals.fixed(12.345, 2)).isEqualTo("12.35");
    assertThat(Decimals.fixed(Double.NaN, 2)).isEqualTo("NaN");
  }
}
