package boundwright.athlete.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * Filter and smoother beside the same posterior worked without steps in time: all heights and speeds are jointly normal with the covariances of
 * an integrated Wiener process (textbook), and are conditioned on the readings by one dense linear system of an outside library (Hipparchus).
 */
class GrowthTrendTest {
  private static final double Q = GrowthTrend.WANDER;

  private static double hh(double s, double t) {
    double a = Math.min(s, t);
    double b = Math.max(s, t);
    return sq(GrowthTrend.HEIGHT_SD) + sq(GrowthTrend.SPEED_SD) * s * t + Q * (a * a * b / 2 - a * a * a / 6);
  }

  /** Covariance of the height at s and the speed at t. */
  private static double hv(double s, double t) {
    return sq(GrowthTrend.SPEED_SD) * s + Q * (t >= s ? s * s / 2 : s * t - t * t / 2);
  }

  private static double vv(double s, double t) {
    return sq(GrowthTrend.SPEED_SD) + Q * Math.min(s, t);
  }

  private static double sq(double x) {
    return x * x;
  }

  /** Mean and variance of height and speed at {@code at}, given the readings: {h, var h, v, var v}. */
  private static double[] dense(double[] t, double[] y, double at) {
    int n = t.length;
    RealMatrix s = new Array2DRowRealMatrix(n, n);
    RealVector off = new ArrayRealVector(n);
    RealVector h = new ArrayRealVector(n);
    RealVector v = new ArrayRealVector(n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        s.setEntry(i, j, hh(t[i], t[j]) + (i == j ? sq(GrowthTrend.READING_SD_CM) : 0));
      }
      off.setEntry(i, y[i] - GrowthTrend.HEIGHT_MEAN - GrowthTrend.SPEED_MEAN * t[i]);
      h.setEntry(i, hh(t[i], at));
      v.setEntry(i, hv(t[i], at));
    }
    RealMatrix inverse = MatrixUtils.inverse(s);
    RealVector w = new LUDecomposition(s).getSolver().solve(off);
    return new double[] {
      GrowthTrend.HEIGHT_MEAN + GrowthTrend.SPEED_MEAN * at + h.dotProduct(w),
      hh(at, at) - h.dotProduct(inverse.operate(h)),
      GrowthTrend.SPEED_MEAN + v.dotProduct(w),
      vv(at, at) - v.dotProduct(inverse.operate(v))
    };
  }

  @Test
  void filterAndSmootherAreThePosteriorOfOneDenseSystem() {
    for (long seed = 1; seed <= 20; seed++) {
      Random r = new Random(seed);
      List<Measurement> all = new ArrayList<>(GrownUp.drawn(r).measured(r).subList(0, 12));
      if (seed % 2 == 0) { // a second reading of the same day
        Measurement m = all.get(4);
        all.add(5, new Measurement(0, m.date(), m.height_m() + 0.003, null, null, ""));
      }
      double[] t = all.stream().mapToDouble(m -> GrowthTrend.years(all.get(0).date(), m.date())).toArray();
      double[] y = all.stream().mapToDouble(m -> 100 * m.height_m()).toArray();
      List<LocalDate> days = all.stream().map(Measurement::date).distinct().toList();
      List<GrowthTrend.State> smooth = GrowthTrend.of(all).smoothed();
      List<GrowthTrend.State> filtered = GrowthTrend.of(all).filtered();
      assertThat(smooth).hasSameSizeAs(days);
      for (int i = 0; i < days.size(); i++) {
        LocalDate day = days.get(i);
        double at = GrowthTrend.years(days.get(0), day);
        same(smooth.get(i), dense(t, y, at), seed);
        int upTo = (int) all.stream().filter(m -> !m.date().isAfter(day)).count();
        same(filtered.get(i), dense(Arrays.copyOf(t, upTo), Arrays.copyOf(y, upTo), at), seed);
      }
      LocalDate later = days.get(days.size() - 1).plusDays(50);
      double[] ahead = dense(t, y, GrowthTrend.years(days.get(0), later));
      GrowthTrend.Point p = GrowthTrend.of(all).on(later);
      assertThat(p.height_cm().p50()).as("seed %d", seed).isCloseTo(ahead[0], within(1e-6));
      assertThat(p.height_cm().halfWidth()).isCloseTo(Estimate.Z95 * Math.sqrt(ahead[1]), within(1e-6));
      assertThat(GrowthTrend.of(all).unsure_cm_y(later)).isCloseTo(Estimate.Z95 * Math.sqrt(ahead[3]), within(1e-6));
    }
  }

  private static void same(GrowthTrend.State s, double[] dense, long seed) {
    assertThat(new double[] {s.h(), s.hh(), s.v(), s.vv()}).as("seed %d", seed).containsExactly(dense, within(2e-6));
  }

  @Test
  void theDensityOfTheHeightsIsThatOfTheDenseSystem() {
    Random r = new Random(5);
    List<Measurement> all = GrownUp.drawn(r).measured(r).subList(0, 10);
    int n = all.size();
    RealMatrix s = new Array2DRowRealMatrix(n, n);
    RealVector off = new ArrayRealVector(n);
    for (int i = 0; i < n; i++) {
      double t = GrowthTrend.years(all.get(0).date(), all.get(i).date());
      for (int j = 0; j < n; j++) {
        s.setEntry(i, j, hh(t, GrowthTrend.years(all.get(0).date(), all.get(j).date())) + (i == j ? sq(GrowthTrend.READING_SD_CM) : 0));
      }
      off.setEntry(i, 100 * all.get(i).height_m() - GrowthTrend.HEIGHT_MEAN - GrowthTrend.SPEED_MEAN * t);
    }
    LUDecomposition lu = new LUDecomposition(s);
    double expected = -0.5 * (n * Math.log(2 * Math.PI) + Math.log(lu.getDeterminant()) + off.dotProduct(lu.getSolver().solve(off)));
    assertThat(GrowthTrend.of(all).logLikelihood()).isCloseTo(expected, within(1e-5));
  }

  @Test
  void theCurveBetweenHeightsIsTheSamePosterior() {
    Random r = new Random(77);
    List<Measurement> all = GrownUp.drawn(r).measured(r).subList(0, 9);
    double[] t = all.stream().mapToDouble(m -> GrowthTrend.years(all.get(0).date(), m.date())).toArray();
    double[] y = all.stream().mapToDouble(m -> 100 * m.height_m()).toArray();
    List<GrowthTrend.Point> curve = GrowthTrend.curve(all, 14);
    assertThat(curve).hasSizeGreaterThan(all.size());
    for (GrowthTrend.Point p : curve) {
      double[] d = dense(t, y, GrowthTrend.years(all.get(0).date(), p.date()));
      assertThat(p.height_cm().p50()).isCloseTo(d[0], within(1e-5));
      assertThat(p.height_cm().halfWidth()).isCloseTo(Estimate.Z95 * Math.sqrt(d[1]), within(1e-5));
    }
  }

  @Test
  void aStraightLineIsFoundWithoutError() {
    List<Measurement> line = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      LocalDate day = GrownUp.BORN.plusYears(11).plusDays(40L * i);
      line.add(new Measurement(0, day, (140 + 6 * GrowthTrend.years(GrownUp.BORN.plusYears(11), day)) / 100, null, null, ""));
    }
    assertThat(GrowthTrend.of(line).on(line.get(20).date()).speed_cm_y().p50()).as("6 cm a year, definition").isCloseTo(6, within(0.01));
  }
}
