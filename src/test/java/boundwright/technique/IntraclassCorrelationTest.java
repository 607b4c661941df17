package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.Interval;
import boundwright.quantity.RefusedException;
import boundwright.technique.IntraclassCorrelation.Form;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Six subjects judged by four judges: Shrout and Fleiss 1979, Psychol Bull 86:420-428. Standing: read. */
class IntraclassCorrelationTest {
  private static final double[][] TABLE = {{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}};

  @Test
  void meanSquaresOfShroutAndFleiss() {
    IntraclassCorrelation icc = IntraclassCorrelation.of(TABLE);
    assertThat(icc.betweenTargets()).isCloseTo(11.2417, within(5e-5));
    assertThat(icc.withinTargets()).isCloseTo(6.2639, within(5e-5));
    assertThat(icc.betweenObservers()).isCloseTo(32.4861, within(5e-5));
    assertThat(icc.residual()).isCloseTo(1.0194, within(5e-5));
  }

  /**
   * The six correlations (Shrout and Fleiss 1979, read), and their 95 % intervals as a general statistics package printed them
   * for the same table (second-hand: a public lesson on agreement that shows the output).
   */
  @ParameterizedTest
  @CsvSource({
    "ONE_WAY_SINGLE, .1657, -.133, .72",
    "RANDOM_SINGLE, .2898, .019, .76",
    "FIXED_SINGLE, .7148, .342, .95",
    "ONE_WAY_MEAN, .4428, -.884, .91",
    "RANDOM_MEAN, .6201, .071, .93",
    "FIXED_MEAN, .9093, .676, .99"
  })
  void sixFormsOfShroutAndFleiss(Form form, double value, double low, double high) {
    IntraclassCorrelation icc = IntraclassCorrelation.of(TABLE);
    assertThat(icc.value(form)).isCloseTo(value, within(5e-5));
    assertThat(icc.interval(form).low()).isCloseTo(low, within(5.1e-4));
    assertThat(icc.interval(form).high()).isCloseTo(high, within(5.1e-3));
  }

  /** The typical-error example of Hopkins' form; ICC(3,1) .9384. Standing: worked. */
  @Test
  void correlationOfTheRepeatedTest() {
    double[][] pairs = {{62, 67}, {78, 76}, {81, 87}, {55, 55}, {66, 63}};
    assertThat(IntraclassCorrelation.of(pairs).value(Form.FIXED_SINGLE)).isCloseTo(.9384, within(5e-5));
  }

  /** Law: a constant that one observer adds changes the agreement, not the consistency. */
  @Test
  void aStrictObserverIsForgivenByTheFixedFormOnly() {
    double[][] strict = new double[TABLE.length][];
    for (int i = 0; i < TABLE.length; i++) {
      strict[i] = TABLE[i].clone();
      strict[i][1] -= 5;
    }
    IntraclassCorrelation before = IntraclassCorrelation.of(TABLE);
    IntraclassCorrelation after = IntraclassCorrelation.of(strict);
    assertThat(after.value(Form.FIXED_SINGLE)).isCloseTo(before.value(Form.FIXED_SINGLE), within(1e-12));
    assertThat(after.value(Form.RANDOM_SINGLE)).isLessThan(before.value(Form.RANDOM_SINGLE));
  }

  @Test
  void fullAgreementIsOneInEveryForm() {
    IntraclassCorrelation icc = IntraclassCorrelation.of(new double[][] {{1.1, 1.1}, {2.3, 2.3}, {7.7, 7.7}});
    for (Form form : Form.values()) {
      assertThat(icc.value(form)).isCloseTo(1, within(1e-12));
      assertThat(icc.interval(form)).isEqualTo(new Interval(1, 1, 0.95));
    }
  }

  @Test
  void intervalsHoldTheirEstimateEvenBelowZero() {
    IntraclassCorrelation icc = IntraclassCorrelation.of(new double[][] {{1, 5}, {5, 1}, {2, 4}, {4, 1.5}});
    for (Form form : new Form[] {Form.ONE_WAY_SINGLE, Form.RANDOM_SINGLE, Form.FIXED_SINGLE}) {
      assertThat(icc.value(form)).isNegative();
      assertThat(icc.interval(form).holds(icc.value(form))).isTrue();
    }
  }

  /** Law, seeded: an interval holds its estimate in every form, whatever the table. */
  @Test
  void everyIntervalHoldsItsEstimate() {
    Random r = new Random(20260413);
    for (int round = 0; round < 300; round++) {
      double[][] table = new double[3 + r.nextInt(6)][2 + r.nextInt(3)];
      for (double[] row : table) {
        double level = r.nextGaussian() * r.nextInt(3);
        for (int j = 0; j < row.length; j++) {
          row[j] = Math.rint(level + r.nextGaussian() * 2) + j * r.nextInt(2);
        }
      }
      if (IntStream.range(0, table.length).allMatch(i -> Arrays.stream(table[i]).allMatch(v -> v == table[0][0]))) {
        continue;
      }
      IntraclassCorrelation icc = IntraclassCorrelation.of(table);
      for (Form form : Form.values()) {
        assertThat(icc.interval(form).holds(icc.value(form))).as("%s of %s", form, Arrays.deepToString(table)).isTrue();
      }
    }
  }

  @Test
  void refusesTablesWithoutContent() {
    assertThatThrownBy(() -> IntraclassCorrelation.of(new double[][] {{1, 2}})).isInstanceOf(RefusedException.class).hasMessageContaining("1 and 2");
    assertThatThrownBy(() -> IntraclassCorrelation.of(new double[][] {{1, 2}, {1}, {2, 3}})).isInstanceOf(RefusedException.class).hasMessageContaining("Row 2");
    assertThatThrownBy(() -> IntraclassCorrelation.of(new double[][] {{1, Double.NaN}, {1, 2}, {3, 3}}))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("observer 2");
    assertThatThrownBy(() -> IntraclassCorrelation.of(new double[][] {{.1, .1}, {.1, .1}, {.1, .1}}))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("same figures");
  }
}
