package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import boundwright.readiness.TrendModel.Observation;
import boundwright.readiness.TrendModel.Structure;
import boundwright.technique.IntraclassCorrelation;
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
import org.junit.jupiter.api.Test;

/** The trend of a squad, against the reference data of linear mixed models and against the textbook formulas done with full matrices. */
class TrendModelTest {
  private static final long SEED = 20260416;

  private static List<Observation> sleepstudy() throws IOException {
    List<Observation> out = new ArrayList<>();
    try (InputStream in = Objects.requireNonNull(TrendModelTest.class.getResourceAsStream("sleepstudy.csv"));
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line : reader.lines().filter(l -> !l.startsWith("#") && !l.startsWith("subject")).toList()) {
        String[] cells = line.split(",");
        for (int day = 0; day < 10; day++) {
          out.add(new Observation(Long.parseLong(cells[0]), day, Double.parseDouble(cells[day + 1])));
        }
      }
    }
    return out;
  }

  /**
   * REML fit of the reference data (Belenky et al. 2003; fit by the mixed-model package of Bates and others, values as collected in
   * the project's formulas, section 5: second-hand).
   */
  @Test
  void referenceFitOfSleepstudy() throws IOException {
    List<Observation> data = sleepstudy();
    assertThat(data).hasSize(180);
    TrendModel m = TrendModel.fit(data);
    assertThat(m.structure()).isEqualTo(Structure.OWN_LINES);
    assertThat(m.level().value()).isCloseTo(251.4051, within(5e-5));
    assertThat(m.level().se()).isCloseTo(6.8246, within(2e-4));
    assertThat(m.slope().value()).isCloseTo(10.4673, within(5e-5));
    assertThat(m.slope().se()).isCloseTo(1.5458, within(1e-4));
    assertThat(m.spread().levelVariance()).isCloseTo(612.09, within(.05));
    assertThat(m.spread().slopeVariance()).isCloseTo(35.07, within(.006));
    assertThat(m.spread().residualVariance()).isCloseTo(654.94, within(.01));
    assertThat(m.spread().correlation().orElseThrow()).isCloseTo(.0656, within(1e-4));
    TrendLine s308 = m.of(308).orElseThrow();
    assertThat(s308.levelDeviation()).isCloseTo(2.2586, within(5e-4));
    assertThat(s308.slopeDeviation()).isCloseTo(9.1990, within(2e-4));
    assertThat(m.notes()).isEmpty();
    assertThat(m.inWords()).contains("better");
  }

  /** Criterion 1743.6 and the conditional errors 12.07 and 2.30 of each person's deviations in the same fit. Standing: memory. */
  @Test
  void criterionAndConditionalErrorsOfSleepstudy() throws IOException {
    TrendModel m = TrendModel.fit(sleepstudy());
    assertThat(m.criterion()).isCloseTo(1743.6, within(.05));
    for (TrendLine line : m.athletes()) {
      assertThat(line.deviationIfSquadKnown().level()).isCloseTo(12.07, within(.01));
      assertThat(line.deviationIfSquadKnown().slope()).isCloseTo(2.30, within(.01));
      assertThat(line.deviation().level()).isGreaterThan(line.deviationIfSquadKnown().level());
    }
  }

  /** Other time units and starts change the figures as arithmetic says, and nothing else. */
  @Test
  void timeInAnotherUnitFromAnotherStart() throws IOException {
    TrendModel m = TrendModel.fit(sleepstudy());
    TrendModel moved = TrendModel.fit(sleepstudy().stream().map(o -> new Observation(o.athlete(), 7 * o.time() - 500, o.value())).toList());
    assertThat(moved.slope().value()).isCloseTo(m.slope().value() / 7, within(1e-5));
    assertThat(moved.level().value()).isCloseTo(m.level().value() + m.slope().value() * 500 / 7, within(1e-3));
    assertThat(moved.spread().slopeVariance()).isCloseTo(m.spread().slopeVariance() / 49, within(1e-3));
    assertThat(moved.of(308).orElseThrow().at(7 * 4 - 500).p05()).isCloseTo(m.of(308).orElseThrow().at(4).p05(), within(1e-2));
  }

  private static List<Observation> squad(Random r, int athletes, int most, double levelSd, double slopeSd, double error) {
    List<Observation> out = new ArrayList<>();
    for (int a = 1; a <= athletes; a++) {
      double level = 7 + levelSd * r.nextGaussian();
      double slope = 0.02 + slopeSd * r.nextGaussian();
      int tests = 1 + r.nextInt(most);
      for (int t = 0; t < tests; t++) {
        double week = r.nextInt(30);
        out.add(new Observation(a, week, level + slope * week + error * r.nextGaussian()));
      }
    }
    return out;
  }

  /** Fixed effects, their errors, each athlete's line and its error: V = Z G Z' + s2 I and Henderson's equations, written out in full. */
  @Test
  void agreesWithFullMatrices() {
    Random r = new Random(SEED);
    int compared = 0;
    for (int round = 0; round < 8; round++) {
      List<Observation> data = squad(r, 9, 7, 0.5, 0.02, 0.15);
      TrendModel m = TrendModel.fit(data);
      if (!m.notes().isEmpty()) {
        continue;
      }
      compared++;
      int n = data.size();
      List<TrendLine> lines = m.athletes();
      int q = lines.size();
      RealMatrix x = MatrixUtils.createRealMatrix(n, 2);
      RealMatrix z = MatrixUtils.createRealMatrix(n, 2 * q);
      RealVector y = MatrixUtils.createRealVector(new double[n]);
      for (int i = 0; i < n; i++) {
        Observation o = data.get(i);
        int a = 0;
        while (lines.get(a).athlete() != o.athlete()) {
          a++;
        }
        x.setRow(i, new double[] {1, o.time()});
        z.setEntry(i, 2 * a, 1);
        z.setEntry(i, 2 * a + 1, o.time());
        y.setEntry(i, o.value());
      }
      RealMatrix g = MatrixUtils.createRealMatrix(2 * q, 2 * q);
      for (int a = 0; a < q; a++) {
        g.setEntry(2 * a, 2 * a, m.spread().levelVariance());
        g.setEntry(2 * a, 2 * a + 1, m.spread().covariance());
        g.setEntry(2 * a + 1, 2 * a, m.spread().covariance());
        g.setEntry(2 * a + 1, 2 * a + 1, m.spread().slopeVariance());
      }
      double s2 = m.spread().residualVariance();
      RealMatrix all = MatrixUtils.createRealMatrix(2 + 2 * q, 2 + 2 * q);
      all.setSubMatrix(x.transpose().multiply(x).scalarMultiply(1 / s2).getData(), 0, 0);
      all.setSubMatrix(x.transpose().multiply(z).scalarMultiply(1 / s2).getData(), 0, 2);
      all.setSubMatrix(z.transpose().multiply(x).scalarMultiply(1 / s2).getData(), 2, 0);
      all.setSubMatrix(z.transpose().multiply(z).scalarMultiply(1 / s2).add(MatrixUtils.inverse(g)).getData(), 2, 2);
      RealMatrix inverse = MatrixUtils.inverse(all);
      RealVector right = x.transpose().operate(y).append(z.transpose().operate(y)).mapMultiply(1 / s2);
      RealVector solved = inverse.operate(right);
      assertThat(m.level().value()).as("seed " + SEED).isCloseTo(solved.getEntry(0), within(1e-6));
      assertThat(m.slope().value()).isCloseTo(solved.getEntry(1), within(1e-7));
      assertThat(m.level().se()).isCloseTo(Math.sqrt(inverse.getEntry(0, 0)), within(1e-6));
      assertThat(m.slope().se()).isCloseTo(Math.sqrt(inverse.getEntry(1, 1)), within(1e-7));
      for (int a = 0; a < q; a++) {
        TrendLine line = lines.get(a);
        int u = 2 + 2 * a;
        assertThat(line.levelDeviation()).isCloseTo(solved.getEntry(u), within(1e-6));
        assertThat(line.slopeDeviation()).isCloseTo(solved.getEntry(u + 1), within(1e-7));
        assertThat(line.deviation().level()).isCloseTo(Math.sqrt(inverse.getEntry(u, u)), within(1e-6));
        assertThat(line.deviation().slope()).isCloseTo(Math.sqrt(inverse.getEntry(u + 1, u + 1)), within(1e-7));
        assertThat(line.own().slope())
            .isCloseTo(Math.sqrt(inverse.getEntry(1, 1) + 2 * inverse.getEntry(1, u + 1) + inverse.getEntry(u + 1, u + 1)), within(1e-7));
      }
      double reml = criterion(x, z, y, g, s2);
      assertThat(m.criterion()).isCloseTo(reml, within(1e-6));
      // The fit is a minimum: every other spread nearby is no better.
      for (double f : new double[] {0.9, 1.1}) {
        assertThat(criterion(x, z, y, g.scalarMultiply(f), s2)).isGreaterThan(reml - 1e-7);
        assertThat(criterion(x, z, y, g, s2 * f)).isGreaterThan(reml - 1e-7);
      }
    }
    assertThat(compared).isGreaterThanOrEqualTo(4);
  }

  // Minus twice the REML log-likelihood from its definition.
  private static double criterion(RealMatrix x, RealMatrix z, RealVector y, RealMatrix g, double s2) {
    int n = x.getRowDimension();
    RealMatrix v = z.multiply(g).multiply(z.transpose()).add(MatrixUtils.createRealIdentityMatrix(n).scalarMultiply(s2));
    RealMatrix vi = MatrixUtils.inverse(v);
    RealMatrix info = x.transpose().multiply(vi).multiply(x);
    RealVector b = MatrixUtils.inverse(info).operate(x.transpose().operate(vi.operate(y)));
    RealVector e = y.subtract(x.operate(b));
    return Math.log(new LUDecomposition(v).getDeterminant()) + Math.log(new LUDecomposition(info).getDeterminant())
        + e.dotProduct(vi.operate(e)) + (n - 2) * Math.log(2 * Math.PI);
  }

  @Test
  void anAthleteWithOneScoreIsPulledTowardsTheSquad() {
    Random r = new Random(SEED);
    List<Observation> data = new ArrayList<>(squad(r, 10, 8, 0.5, 0.02, 0.15));
    data.add(new Observation(99, 10, 9.5));
    TrendModel m = TrendModel.fit(data);
    TrendLine one = m.of(99).orElseThrow();
    double squadAt = m.level().value() + 10 * m.slope().value();
    assertThat(one.scores()).isEqualTo(1);
    assertThat(one.at(10).p50()).isBetween(squadAt, 9.5);
    TrendLine many = m.athletes().stream().filter(t -> t.scores() >= 6).findFirst().orElseThrow();
    assertThat(one.own().slope()).isGreaterThan(many.own().slope());
    assertThat(one.nextScore(10).halfWidth()).isGreaterThan(one.at(10).halfWidth());
    assertThat(m.of(1234)).isEmpty();
  }

  @Test
  void oneScoreEachGivesOneLineAndSaysSo() {
    List<Observation> data = new ArrayList<>();
    Random r = new Random(SEED);
    for (int a = 1; a <= 8; a++) {
      data.add(new Observation(a, a, 7 + 0.1 * a + 0.05 * r.nextGaussian()));
    }
    TrendModel m = TrendModel.fit(data);
    assertThat(m.structure()).isEqualTo(Structure.ONE_LINE);
    assertThat(m.notes()).singleElement().asString().contains("cannot be told");
    assertThat(m.athletes()).allSatisfy(t -> assertThat(t.levelDeviation()).isZero());
    // The plain least-squares line, worked from its own formula.
    double mx = 4.5;
    double my = data.stream().mapToDouble(Observation::value).average().orElseThrow();
    double sxy = data.stream().mapToDouble(o -> (o.time() - mx) * (o.value() - my)).sum();
    double sxx = data.stream().mapToDouble(o -> (o.time() - mx) * (o.time() - mx)).sum();
    double rest = data.stream().mapToDouble(o -> Math.pow(o.value() - my - sxy / sxx * (o.time() - mx), 2)).sum();
    assertThat(m.slope().value()).isCloseTo(sxy / sxx, within(1e-9));
    assertThat(m.slope().se()).isCloseTo(Math.sqrt(rest / 6 / sxx), within(1e-9));
    assertThat(m.slopeInterval().holds(0.1)).isTrue();
  }

  /** Two scores each: levels apart, one slope. Balanced, so the level's variance is the textbook's (between less within) / 2. */
  @Test
  void twoScoresEachShareTheSlope() {
    Random r = new Random(SEED);
    List<Observation> data = new ArrayList<>();
    double[][] scores = new double[12][2];
    for (int a = 0; a < 12; a++) {
      double level = 7 + 0.6 * r.nextGaussian();
      for (int t = 0; t < 2; t++) {
        scores[a][t] = level + 0.1 * t + 0.15 * r.nextGaussian();
        data.add(new Observation(a, t, scores[a][t]));
      }
    }
    TrendModel m = TrendModel.fit(data);
    assertThat(m.structure()).isEqualTo(Structure.OWN_LEVELS);
    assertThat(m.notes()).singleElement().asString().contains("shares the squad's trend");
    IntraclassCorrelation icc = IntraclassCorrelation.of(scores);
    assertThat(m.spread().residualVariance()).isCloseTo(icc.residual(), within(1e-6));
    assertThat(m.spread().levelVariance()).isCloseTo((icc.betweenTargets() - icc.residual()) / 2, within(1e-5));
    assertThat(m.spread().slopeVariance()).isZero();
  }

  @Test
  void aSquadWithoutDifferencesIsSaidToBeSingular() {
    // Levels and slopes all the same, and errors that cancel within each athlete: less spread than chance leaves.
    List<Observation> data = new ArrayList<>();
    double[] error = {0.1, -0.1, -0.1, 0.1};
    for (int a = 1; a <= 6; a++) {
      for (int t = 0; t < 4; t++) {
        data.add(new Observation(a, t, 7 + 0.05 * t + (a % 2 == 0 ? error[t] : -error[t])));
      }
    }
    TrendModel m = TrendModel.fit(data);
    assertThat(m.notes()).singleElement().asString().contains("Neither levels nor trends");
    assertThat(m.spread().residualVariance()).isPositive();
    assertThat(m.athletes()).allSatisfy(t -> assertThat(t.slopeDeviation()).isCloseTo(0, within(1e-6)));
  }

  @Test
  void levelsApartButOneTrendIsSaid() {
    List<Observation> data = new ArrayList<>();
    double[] error = {0.1, -0.1, -0.1, 0.1};
    for (int a = 1; a <= 6; a++) {
      for (int t = 0; t < 4; t++) {
        data.add(new Observation(a, t, 6 + 0.4 * a + 0.05 * t + (a % 2 == 0 ? error[t] : -error[t])));
      }
    }
    TrendModel m = TrendModel.fit(data);
    assertThat(m.notes()).singleElement().asString().contains("share the squad's trend");
    assertThat(m.spread().levelVariance()).isGreaterThan(0.3);
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> TrendModel.fit(List.of())).isInstanceOf(RefusedException.class).hasMessageContaining("there are 0 on 0");
    List<Observation> oneDay = List.of(new Observation(1, 3, 7), new Observation(2, 3, 8), new Observation(3, 3, 6), new Observation(4, 3, 6.5));
    assertThatThrownBy(() -> TrendModel.fit(oneDay)).isInstanceOf(RefusedException.class).hasMessageContaining("4 on 1");
    List<Observation> same = List.of(new Observation(1, 0, 7), new Observation(1, 1, 7), new Observation(2, 0, 7), new Observation(2, 1, 7));
    assertThatThrownBy(() -> TrendModel.fit(same)).isInstanceOf(RefusedException.class).hasMessageContaining("the same");
    List<Observation> line = new ArrayList<>();
    for (int t = 0; t < 5; t++) {
      line.add(new Observation(1, t, 7 + 0.25 * t));
    }
    assertThatThrownBy(() -> TrendModel.fit(line)).isInstanceOf(RefusedException.class).hasMessageContaining("without any scatter");
    line.set(2, new Observation(1, 2, Double.NaN));
    assertThatThrownBy(() -> TrendModel.fit(line)).isInstanceOf(RefusedException.class).hasMessageContaining("NaN");
  }
}
