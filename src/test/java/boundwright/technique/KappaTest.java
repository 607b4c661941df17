package boundwright.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Agreement in categories, against published tables and against the delta method worked by differences. */
class KappaTest {
  private static final long SEED = 20260412;
  /** Cells .44 .07 .09 / .05 .20 .05 / .01 .03 .06 of 200 (cells: memory, high; from the literature on kappa). */
  private static final int[][] TWO_HUNDRED = {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}};

  /** Standing: result worked, cells memory (high). */
  @Test
  void kappaOfTheTableOfThreeCategories() {
    Kappa k = Kappa.of(TWO_HUNDRED);
    assertThat(k.value()).isCloseTo(.491525, within(5e-7));
    assertThat(k.agreed()).isCloseTo(.70, within(1e-12));
    assertThat(k.byChance()).isCloseTo(.41, within(1e-12));
  }

  /** Fleiss, Statistical Methods for Rates and Proportions, two raters of 100 subjects: .68 with error .087. Standing: memory. */
  @Test
  void kappaAndErrorOfTheTextbookTable() {
    Kappa k = Kappa.of(new int[][] {{75, 1, 4}, {5, 4, 1}, {0, 0, 10}});
    assertThat(k.value()).isCloseTo(.68, within(.005));
    assertThat(k.se()).isCloseTo(.087, within(.001));
  }

  /** The formula of the error is the delta method: here by central differences of kappa over the cells. Standing: worked. */
  @Test
  void errorIsThatOfTheDeltaMethod() {
    Random r = new Random(SEED);
    for (int round = 0; round < 50; round++) {
      int size = 2 + r.nextInt(4);
      int[][] counts = new int[size][size];
      for (int i = 0; i < size; i++) {
        for (int j = 0; j < size; j++) {
          counts[i][j] = 1 + r.nextInt(i == j ? 60 : 12);
        }
      }
      Kappa k = Kappa.of(counts);
      double n = k.reps();
      double mean = 0;
      double square = 0;
      for (int i = 0; i < size; i++) {
        for (int j = 0; j < size; j++) {
          double slope = (plain(counts, i, j, 1e-5 * n) - plain(counts, i, j, -1e-5 * n)) / 2e-5;
          mean += counts[i][j] / n * slope;
          square += counts[i][j] / n * slope * slope;
        }
      }
      assertThat(k.se()).as("seed " + SEED).isCloseTo(Math.sqrt((square - mean * mean) / n), within(1e-7));
    }
  }

  // Kappa straight from its definition, one cell nudged.
  private static double plain(int[][] counts, int row, int column, double by) {
    double n = by;
    double agree = row == column ? by : 0;
    double[] r = new double[counts.length];
    double[] c = new double[counts.length];
    r[row] += by;
    c[column] += by;
    for (int i = 0; i < counts.length; i++) {
      for (int j = 0; j < counts.length; j++) {
        n += counts[i][j];
        r[i] += counts[i][j];
        c[j] += counts[i][j];
        agree += i == j ? counts[i][j] : 0;
      }
    }
    double chance = 0;
    for (int i = 0; i < counts.length; i++) {
      chance += r[i] * c[i] / (n * n);
    }
    return (agree / n - chance) / (1 - chance);
  }

  @Test
  void fullAgreementAndTheOrderOfTheObservers() {
    assertThat(Kappa.of(new int[][] {{5, 0}, {0, 7}}).value()).isEqualTo(1);
    assertThat(Kappa.of(new int[][] {{5, 0}, {0, 7}}).se()).isZero();
    Kappa there = Kappa.of(TWO_HUNDRED);
    Kappa back = Kappa.of(new int[][] {{88, 10, 2}, {14, 40, 6}, {18, 10, 12}});
    assertThat(back.value()).isCloseTo(there.value(), within(1e-12));
    assertThat(back.se()).isCloseTo(there.se(), within(1e-12));
  }

  @Test
  void saysWhatTheFigureIsWorth() {
    assertThat(Kappa.of(TWO_HUNDRED).inWords()).contains("70 % of 200 reps", "kappa 0.49", "more than chance").doesNotContain("too narrow");
    assertThat(Kappa.of(new int[][] {{4, 3}, {3, 4}}).inWords()).contains("cannot be told from chance", "fewer than 30");
  }

  @Test
  void refusesTablesThatSayNothing() {
    assertThatThrownBy(() -> Kappa.of(new int[][] {{9, 0}, {0, 0}})).isInstanceOf(RefusedException.class).hasMessageContaining("all 9 reps");
    assertThatThrownBy(() -> Kappa.of(new int[][] {{0, 0}, {0, 0}})).isInstanceOf(RefusedException.class).hasMessageContaining("2 and 0");
    assertThatThrownBy(() -> Kappa.of(new int[][] {{1, 0}, {0}})).isInstanceOf(RefusedException.class).hasMessageContaining("square");
  }
}
