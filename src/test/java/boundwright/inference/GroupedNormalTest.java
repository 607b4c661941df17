package boundwright.inference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
import org.junit.jupiter.api.Test;

/** Groups that share a straight line: against the reference data of mixed models and against full matrices. */
class GroupedNormalTest {
  private static List<double[]> sleepstudy() throws IOException {
    List<double[]> out = new ArrayList<>();
    try (InputStream in = Objects.requireNonNull(GroupedNormalTest.class.getResourceAsStream("/boundwright/readiness/sleepstudy.csv"));
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line : reader.lines().filter(l -> !l.startsWith("#") && !l.startsWith("subject")).toList()) {
        String[] cells = line.split(",");
        double[] y = new double[10];
        for (int day = 0; day < 10; day++) {
          y[day] = Double.parseDouble(cells[day + 1]);
        }
        out.add(y);
      }
    }
    return out;
  }

  /** Level and slope of each person, correlated: {@code v = L L'} of level and slope, and a residual, all in logarithms and one free number. */
  private static GroupedNormal at(List<double[]> people, double[] t) {
    double a = Math.exp(t[0]);
    double c = Math.exp(t[1]);
    double b = t[2];
    double rest = Math.exp(2 * t[3]);
    GroupedNormal out = new GroupedNormal(new double[2], new double[2][2]);
    for (double[] y : people) {
      double[][] x = new double[10][];
      double[][] v = new double[10][10];
      for (int i = 0; i < 10; i++) {
        x[i] = new double[] {1, i};
        for (int j = 0; j < 10; j++) {
          v[i][j] = a * a + a * b * (i + j) + (b * b + c * c) * i * j + (i == j ? rest : 0);
        }
      }
      out.add(y, x, v);
    }
    return out;
  }

  /**
   * REML fit of the reference data (Belenky et al. 2003; the values as collected in the project's formulas, section 5: second-hand): fixed effects
   * with their errors, variances, correlation, and the deviations of the first person.
   */
  @Test
  void restrictedLikelihoodOfSleepstudyBelenky2003() throws IOException {
    List<double[]> people = sleepstudy();
    assertThat(people).hasSize(18);
    double[] top = {Math.log(20), Math.log(5), 0, Math.log(25)};
    for (double step : new double[] {0.5, 0.05, 0.01}) {
      top =
          new SimplexOptimizer(new SimpleValueChecker(-1, 1e-12))
              .optimize(
                  new MaxEval(20_000), new ObjectiveFunction(t -> at(people, t).logLikelihood()), GoalType.MAXIMIZE, new InitialGuess(top),
                  new NelderMeadSimplex(4, step))
              .getPoint();
    }
    GroupedNormal fit = at(people, top);
    GroupedNormal.Told level = fit.coefficient(new double[] {1, 0});
    GroupedNormal.Told slope = fit.coefficient(new double[] {0, 1});
    assertThat(level.mean()).isCloseTo(251.4051, within(1e-4));
    assertThat(Math.sqrt(level.variance())).isCloseTo(6.8246, within(5e-4));
    assertThat(slope.mean()).isCloseTo(10.4673, within(1e-4));
    assertThat(Math.sqrt(slope.variance())).isCloseTo(1.5458, within(5e-4));
    double a = Math.exp(top[0]);
    double c = Math.exp(top[1]);
    double b = top[2];
    assertThat(a * a).isCloseTo(612.09, within(0.2));
    assertThat(b * b + c * c).isCloseTo(35.07, within(0.02));
    assertThat(b / Math.hypot(b, c)).isCloseTo(0.0656, within(5e-4));
    assertThat(Math.exp(2 * top[3])).isCloseTo(654.94, within(0.05));
    // the first person is number 308: their own level less the squad's is a new value at x = 0 whose row of the shared line is nothing
    double[] with = new double[10];
    double[] withSlope = new double[10];
    for (int i = 0; i < 10; i++) {
      with[i] = a * a + a * b * i;
      withSlope[i] = a * b + (b * b + c * c) * i;
    }
    assertThat(fit.value(0, new double[] {0, 0}, with, a * a).mean()).isCloseTo(2.2586, within(2e-3));
    assertThat(fit.value(0, new double[] {0, 0}, withSlope, b * b + c * c).mean()).isCloseTo(9.1990, within(1e-3));
  }

  /** Likelihood, coefficients and a new value against one multivariate normal of all values and beta, done with full matrices. */
  @Test
  void agreesWithOneBigNormal() {
    Random r = new Random(20_261_130L);
    for (int round = 0; round < 20; round++) {
      int p = 3;
      double[] m = {r.nextGaussian(), r.nextGaussian(), r.nextGaussian()};
      double[][] precision = {{2, 0.3, 0}, {0.3, 1.5, 0.2}, {0, 0.2, 0.7}};
      RealMatrix prior = new LUDecomposition(MatrixUtils.createRealMatrix(precision)).getSolver().getInverse();
      GroupedNormal g = new GroupedNormal(m, precision);
      List<double[]> rows = new ArrayList<>();
      List<Double> values = new ArrayList<>();
      List<double[][]> blocks = new ArrayList<>();
      for (int k = 0; k < 4; k++) {
        int n = k == 2 ? 0 : 1 + r.nextInt(4);
        double[] y = new double[n];
        double[][] x = new double[n][];
        double[][] half = new double[n][n];
        for (int i = 0; i < n; i++) {
          y[i] = 3 * r.nextGaussian();
          x[i] = new double[] {1, r.nextGaussian(), r.nextGaussian()};
          for (int j = 0; j < n; j++) {
            half[i][j] = r.nextGaussian() + (i == j ? 2 : 0);
          }
          rows.add(x[i]);
          values.add(y[i]);
        }
        double[][] v = n == 0 ? new double[0][0] : square(half);
        blocks.add(v);
        g.add(y, x, v);
      }
      int n = rows.size();
      RealMatrix x = MatrixUtils.createRealMatrix(rows.toArray(new double[0][]));
      RealMatrix v = x.multiply(prior).multiply(x.transpose());
      int at = 0;
      int first = 0;
      for (double[][] block : blocks) {
        for (int i = 0; i < block.length; i++) {
          for (int j = 0; j < block.length; j++) {
            v.addToEntry(at + i, at + j, block[i][j]);
          }
        }
        at += block.length;
        first = first == 0 ? block.length : first;
      }
      RealVector off = MatrixUtils.createRealVector(values.stream().mapToDouble(d -> d).toArray()).subtract(x.operate(MatrixUtils.createRealVector(m)));
      LUDecomposition lu = new LUDecomposition(v);
      RealVector solved = lu.getSolver().solve(off);
      double known = -(n * Math.log(2 * Math.PI) + Math.log(lu.getDeterminant()) + off.dotProduct(solved)) / 2;
      assertThat(g.logLikelihood()).as("round %s", round).isCloseTo(known, within(1e-8));
      // a new value of the first group, correlated a little with its first value
      double[] row = {1, 0.4, -0.7};
      double[] with = new double[first];
      with[0] = 0.2;
      RealVector cross = x.operate(prior.operate(MatrixUtils.createRealVector(row)));
      cross.addToEntry(0, 0.2);
      double variance = 1.3 + MatrixUtils.createRealVector(row).dotProduct(prior.operate(MatrixUtils.createRealVector(row)));
      GroupedNormal.Told told = g.value(0, row, with, 1.3);
      assertThat(told.mean()).isCloseTo(MatrixUtils.createRealVector(row).dotProduct(MatrixUtils.createRealVector(m)) + cross.dotProduct(solved), within(1e-8));
      assertThat(told.variance()).isCloseTo(variance - cross.dotProduct(lu.getSolver().solve(cross)), within(1e-8));
      assertThat(p).isEqualTo(x.getColumnDimension());
    }
  }

  private static double[][] square(double[][] half) {
    RealMatrix h = MatrixUtils.createRealMatrix(half);
    return h.multiply(h.transpose()).getData();
  }

  @Test
  void refusesACovarianceThatIsNone() {
    GroupedNormal g = new GroupedNormal(new double[1], new double[][] {{1}});
    assertThatThrownBy(() -> g.add(new double[2], new double[][] {{1}, {1}}, new double[][] {{1, 2}, {2, 1}})).isInstanceOf(IllegalArgumentException.class);
  }

  /** A point set against quadrature: mean and spread of a skew density (log of a gamma variate with shape 3: digamma and trigamma, Abramowitz and Stegun 6.3, 6.4). */
  @Test
  void weighedPointsStandForTheDensity() {
    double mean = 0;
    double square = 0;
    for (SpreadSearch.Weighed w : SpreadSearch.of(t -> 3 * t[0] - Math.exp(t[0]), new double[] {0}, 1, 20_000, new Random(7))) {
      mean += w.weight() * w.at()[0];
      square += w.weight() * w.at()[0] * w.at()[0];
    }
    assertThat(mean).isCloseTo(0.9227843351, within(0.02));
    assertThat(square - mean * mean).isCloseTo(0.3949340668, within(0.02));
  }

  /** Where nothing was seen what was believed before is left: two spreads, log-normal and apart (its definition). */
  @Test
  void spreadsOfWhichNothingIsSeenStayNearTheUsual() {
    double[] sum = new double[5];
    for (SpreadSearch.Weighed w : SpreadSearch.near(new double[] {0.03, 2}, 0.6, logs -> 0, 20_000, new Random(8))) {
      double a = w.at()[0] - Math.log(0.03);
      double b = w.at()[1] - Math.log(2);
      double[] of = {a, b, a * a, b * b, a * b};
      for (int i = 0; i < of.length; i++) {
        sum[i] += w.weight() * of[i];
      }
    }
    assertThat(sum).usingComparatorWithPrecision(0.02).containsExactly(0, 0, 0.36, 0.36, 0);
  }

  /** Quantiles of a mixture of two: against adding the two normals up by hand. */
  @Test
  void mixtureOfTwo() {
    Mixture m = new Mixture(List.of(new Mixture.Part(0, 1, 0.25), new Mixture.Part(5, 2, 0.75)));
    assertThat(m.below(m.quantile(0.3))).isCloseTo(0.3, within(1e-9));
    assertThat(m.below(1)).isCloseTo(0.25 * Normal.below(1) + 0.75 * Normal.below(-2), within(1e-15));
    Random r = new Random(11);
    double sum = 0;
    for (int i = 0; i < 40_000; i++) {
      sum += m.draw(r);
    }
    assertThat(sum / 40_000).isCloseTo(3.75, within(0.06));
    // worked: .25 x 0 + .75 x 5, and .25 x 1 + .75 x 4 within plus .25 x 3.75^2 + .75 x 1.25^2 between
    assertThat(m.mean()).isCloseTo(3.75, within(1e-12));
    assertThat(m.variance()).isCloseTo(3.25 + 4.6875, within(1e-12));
  }
}
