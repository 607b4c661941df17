package boundwright.athlete.growth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.inference.Mixture;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * Filters and smoothers beside the same posterior worked without steps in time: on each course all heights and speeds are jointly normal, with
 * covariances integrated by quadrature over the noise that they share, and are conditioned on the readings by one dense linear system of an outside
 * library (Hipparchus). The courses are weighed by the dense densities of the readings (Bayes).
 */
class GrowthTrendTest {
  private static final double K = GrowthCourse.RETURN;
  private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(12, -1, 1);

  /** Weight, mean and variance of height and speed on one course. */
  private record Dense(double log, double h, double hh, double v, double vv) {}

  private static double sq(double x) {
    return x * x;
  }

  /** What a push of the speed brings the height after t years; 0 before it. */
  private static double height(double t) {
    return t < 0 ? 0 : (1 - Math.exp(-K * t)) / K;
  }

  private static double speed(double t) {
    return t < 0 ? 0 : Math.exp(-K * t);
  }

  /** Covariance by the noise between 0 and the earlier of two times, where {@code f} and {@code g} are the answers to a push at u. */
  private static double shared(double peak, double until, DoubleUnaryOperator f, DoubleUnaryOperator g) {
    double sum = 0;
    double from = 0;
    for (int i = 0; i < GrowthCourse.WANDER.length; i++) {
      double to = i < GrowthCourse.BORDERS.length ? Math.min(GrowthCourse.BORDERS[i] + peak, until) : until;
      if (to > from) {
        double middle = (from + to) / 2;
        double half = (to - from) / 2;
        sum += GrowthCourse.WANDER[i] * half * GAUSS.integrate(x -> f.applyAsDouble(middle + half * x) * g.applyAsDouble(middle + half * x));
        from = to;
      }
    }
    return sum;
  }

  private static double hh(double peak, double s, double t) {
    return sq(GrowthTrend.HEIGHT_SD) + sq(GrowthTrend.SPEED_SD) * height(s) * height(t) + shared(peak, Math.min(s, t), u -> height(s - u), u -> height(t - u));
  }

  /** Covariance of the height at s and the speed at t. */
  private static double hv(double peak, double s, double t) {
    return sq(GrowthTrend.SPEED_SD) * height(s) * speed(t) + shared(peak, Math.min(s, t), u -> height(s - u), u -> speed(t - u));
  }

  private static double vv(double peak, double s) {
    return sq(GrowthTrend.SPEED_SD * speed(s)) + shared(peak, s, u -> speed(s - u), u -> speed(s - u));
  }

  /** Height that the mean course gains from the first day on, by quadrature of its speed between the knots. */
  private static double gained(GrowthCourse course, double peak, double t) {
    double sum = 0;
    for (double from = 0; from < t; from = Math.min(t, next(from, peak))) {
      double to = Math.min(t, next(from, peak));
      double middle = (from + to) / 2;
      double half = (to - from) / 2;
      sum += half * GAUSS.integrate(x -> course.speed(middle + half * x - peak));
    }
    return sum;
  }

  /** The next time at which the mean speed may bend, every half year from the peak. */
  private static double next(double from, double peak) {
    return peak + (Math.floor((from - peak) * 2 + 1e-9) + 1) / 2;
  }

  private static Dense dense(GrowthCourse course, double peak, double[] t, double[] y, double at) {
    int n = t.length;
    RealMatrix s = new Array2DRowRealMatrix(n, n);
    RealVector off = new ArrayRealVector(n);
    RealVector h = new ArrayRealVector(n);
    RealVector v = new ArrayRealVector(n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        s.setEntry(i, j, hh(peak, t[i], t[j]) + (i == j ? sq(GrowthTrend.READING_SD_CM) : 0));
        s.setEntry(j, i, s.getEntry(i, j));
      }
      off.setEntry(i, y[i] - GrowthTrend.HEIGHT_MEAN - gained(course, peak, t[i]));
      h.setEntry(i, hh(peak, t[i], at));
      v.setEntry(i, hv(peak, t[i], at));
    }
    RealMatrix inverse = MatrixUtils.inverse(s);
    LUDecomposition lu = new LUDecomposition(s);
    RealVector w = lu.getSolver().solve(off);
    return new Dense(
        -0.5 * (n * Math.log(2 * Math.PI) + Math.log(lu.getDeterminant()) + off.dotProduct(w)),
        GrowthTrend.HEIGHT_MEAN + gained(course, peak, at) + h.dotProduct(w),
        hh(peak, at, at) - h.dotProduct(inverse.operate(h)),
        course.speed(at - peak) + v.dotProduct(w),
        vv(peak, at) - v.dotProduct(inverse.operate(v)));
  }

  private static List<Dense> dense(double[] t, double[] y, double at) {
    List<Dense> out = new ArrayList<>();
    for (GrowthCourse course : GrowthCourse.ALL) {
      for (double peak = GrowthTrend.PEAK_FROM; peak <= GrowthTrend.PEAK_TO; peak += GrowthTrend.PEAK_STEP) {
        out.add(dense(course, peak, t, y, at));
      }
    }
    return out;
  }

  private static double[] weights(List<Dense> all) {
    double most = all.stream().mapToDouble(Dense::log).max().orElseThrow();
    double sum = all.stream().mapToDouble(d -> Math.exp(d.log - most)).sum();
    return all.stream().mapToDouble(d -> Math.exp(d.log - most) / sum).toArray();
  }

  /** Mean, variance of the height, then of the speed, over all courses. */
  private static double[] moments(double[] w, List<Dense> all) {
    double[] out = new double[4];
    for (int i = 0; i < w.length; i++) {
      out[0] += w[i] * all.get(i).h;
      out[2] += w[i] * all.get(i).v;
    }
    for (int i = 0; i < w.length; i++) {
      out[1] += w[i] * (all.get(i).hh + sq(all.get(i).h - out[0]));
      out[3] += w[i] * (all.get(i).vv + sq(all.get(i).v - out[2]));
    }
    return out;
  }

  private static void same(List<GrowthTrend.Weighed> told, List<Dense> dense, String what) {
    double[] w = told.stream().mapToDouble(GrowthTrend.Weighed::weight).toArray();
    List<Dense> as = told.stream().map(s -> new Dense(0, s.state().h(), s.state().hh(), s.state().v(), s.state().vv())).toList();
    assertThat(moments(w, as)).as(what).containsExactly(moments(weights(dense), dense), within(1e-5));
  }

  private static double[] years(List<Measurement> all) {
    return all.stream().mapToDouble(m -> GrowthTrend.years(all.get(0).date(), m.date())).toArray();
  }

  private static double[] heights(List<Measurement> all) {
    return all.stream().mapToDouble(m -> 100 * m.height_m()).toArray();
  }

  @Test
  void filtersAndSmoothersAreThePosteriorOfOneDenseSystem() {
    for (long seed = 1; seed <= 12; seed++) {
      Random r = new Random(seed);
      int from = (int) (seed % 4) * 8;
      List<Measurement> all = new ArrayList<>(GrownUp.drawn(r).measured(r).subList(from, from + 10));
      if (seed % 2 == 0) { // a second reading of the same day
        Measurement m = all.get(4);
        all.add(5, new Measurement(0, m.date(), m.height_m() + 0.003, null, null, ""));
      }
      double[] t = years(all);
      double[] y = heights(all);
      List<LocalDate> days = all.stream().map(Measurement::date).distinct().toList();
      GrowthTrend trend = GrowthTrend.of(all);
      List<List<GrowthTrend.Weighed>> smooth = trend.smoothed();
      assertThat(smooth).hasSameSizeAs(days);
      for (int i = 0; i < days.size(); i += 3) {
        LocalDate day = days.get(i);
        double at = GrowthTrend.years(days.get(0), day);
        same(smooth.get(i), dense(t, y, at), "smoothed, seed " + seed + ", day " + i);
        int upTo = (int) all.stream().filter(m -> !m.date().isAfter(day)).count();
        same(trend.filtered(i), dense(Arrays.copyOf(t, upTo), Arrays.copyOf(y, upTo), at), "filtered, seed " + seed + ", day " + i);
      }
    }
  }

  /** The points that are told, six weeks ahead and looked back on, are those of the dense mixture. */
  @Test
  void whatIsToldIsThatOfTheDenseSystem() {
    for (long seed = 31; seed <= 34; seed++) {
      Random r = new Random(seed);
      List<Measurement> all = GrownUp.drawn(r).measured(r).subList(10, 20);
      double[] t = years(all);
      double[] y = heights(all);
      LocalDate later = all.get(9).date().plusDays(42);
      GrowthTrend.Point ahead = GrowthTrend.of(all).on(later);
      same(ahead, dense(t, y, GrowthTrend.years(all.get(0).date(), later)), seed);
      assertThat(GrowthTrend.of(all).unsure_cm_y(later)).isGreaterThanOrEqualTo(ahead.speed_cm_y().halfWidth());
      List<GrowthTrend.Point> curve = GrowthTrend.curve(all, 14);
      assertThat(curve).hasSizeGreaterThan(all.size());
      for (int i = 0; i < curve.size(); i += 7) {
        same(curve.get(i), dense(t, y, GrowthTrend.years(all.get(0).date(), curve.get(i).date())), seed);
      }
    }
  }

  private static void same(GrowthTrend.Point told, List<Dense> dense, long seed) {
    double[] w = weights(dense);
    double[] moments = moments(w, dense);
    assertThat(told.height_cm().p50()).as("seed %d", seed).isCloseTo(moments[0], within(1e-5));
    assertThat(told.height_cm().halfWidth()).isCloseTo(Estimate.Z95 * Math.sqrt(moments[1]), within(1e-5));
    List<Mixture.Part> parts = new ArrayList<>();
    for (int i = 0; i < w.length; i++) {
      parts.add(new Mixture.Part(dense.get(i).v, Math.sqrt(dense.get(i).vv), w[i]));
    }
    Mixture speed = new Mixture(parts);
    assertThat(told.speed_cm_y().p50()).isCloseTo(Math.max(0, speed.quantile(0.5)), within(1e-4));
    assertThat(told.speed_cm_y().p05()).isCloseTo(Math.max(0, speed.quantile(0.05)), within(1e-4));
    assertThat(told.speed_cm_y().p95()).isCloseTo(Math.max(0, speed.quantile(0.95)), within(1e-4));
  }

  /** What a course has gained is the integral of its speed, and goes on where its knots end (definition). */
  @Test
  void aCourseIsTheSlopeOfItsHeight() {
    for (GrowthCourse course : GrowthCourse.ALL) {
      for (double s = -6; s < 8; s += 0.173) {
        assertThat((course.height(s + 1e-5) - course.height(s - 1e-5)) / 2e-5).isCloseTo(course.speed(s), within(1e-4));
      }
    }
  }

  /** Growth of 6 cm a year without an end is on no course; what is told still comes near it. */
  @Test
  void aStraightLineIsFound() {
    List<Measurement> line = new ArrayList<>();
    for (int i = 0; i <= 20; i++) {
      LocalDate day = Growing.BORN.plusYears(11).plusDays(40L * i);
      line.add(new Measurement(0, day, (140 + 6 * GrowthTrend.years(Growing.BORN.plusYears(11), day)) / 100, null, null, ""));
    }
    Estimate speed = GrowthTrend.of(line).on(line.get(20).date()).speed_cm_y();
    assertThat(speed.p50()).as("6 cm a year, definition").isCloseTo(6, within(0.5));
    assertThat(6.0).isBetween(speed.p05(), speed.p95());
  }
}
