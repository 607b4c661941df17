package boundwright.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What an interval tells, by its definition. */
class EstimateTest {
  @ParameterizedTest
  @CsvSource({"0.01, 1, 2, true", "-2, -1, -0.01, true", "-1, 0.5, 2, false", "0, 1, 2, false", "-2, -1, 0, false", "0, 0, 0, false"})
  void anIntervalTellsWhereItLeaves0Out(double p05, double p50, double p95, boolean told) {
    assertThat(new Estimate(p05, p50, p95).told()).isEqualTo(told);
  }
}
