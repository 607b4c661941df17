package boundwright.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is left of a normal above 0, held against a reference library's density and quadrature (Hipparchus). */
class NormalTest {
  @ParameterizedTest
  @CsvSource({"0.08, 0.10", "-0.05, 0.10", "0.3, 0.02", "-0.4, 0.2", "12, 3"})
  void theMeanAbove0IsTheIntegralOverWhatIsAbove0(double mean, double sd) {
    NormalDistribution normal = new NormalDistribution(mean, sd);
    IterativeLegendreGaussIntegrator sum = new IterativeLegendreGaussIntegrator(24, 1e-12, 1e-15);
    double most = Math.max(mean, 0) + 12 * sd;
    double moment = sum.integrate(10_000_000, x -> x * normal.density(x), 0, most);
    double all = sum.integrate(10_000_000, normal::density, 0, most);
    assertThat(Normal.meanAbove0(mean, sd)).isCloseTo(moment / all, within(1e-9 * Math.max(1, Math.abs(mean))));
  }

  /** Half-normal: sd times the root of 2 / pi (textbook). */
  @Test
  void atMean0ItIsTheHalfNormals() {
    assertThat(Normal.meanAbove0(0, 0.1)).isCloseTo(0.1 * Math.sqrt(2 / Math.PI), within(1e-15));
  }
}
