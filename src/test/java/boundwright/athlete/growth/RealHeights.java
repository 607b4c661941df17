package boundwright.athlete.growth;

import boundwright.quantity.Decimals;
import boundwright.quantity.Estimate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * A real child, from heights half a year apart: a natural cubic smoothing spline (Green and Silverman 1994, ch. 2; memory) that leaves 0.1 cm of them
 * is taken as the truth, and readings with an error are made from it. Its speed still carries errors of the heights, so intervals seem to hold less
 * than they do. The heights are not among these files; whoever has them runs {@link #main}.
 */
record RealHeights(boolean girl, double first, double last, PolynomialSplineFunction height, PolynomialSplineFunction speed) implements Growing {
  private static final long SEED = 640_000;
  /** What the heights are believed to be off [cm]: they are written to a millimetre (judgement). */
  private static final double OFF_CM = 0.1;

  static RealHeights through(boolean girl, TreeMap<Double, Double> byAge) {
    double[] age = byAge.keySet().stream().mapToDouble(Double::doubleValue).toArray();
    double[] cm = byAge.values().stream().mapToDouble(Double::doubleValue).toArray();
    PolynomialSplineFunction height = new SplineInterpolator().interpolate(age, smooth(age, cm));
    return new RealHeights(girl, age[0], age[age.length - 1], height, height.polynomialSplineDerivative());
  }

  private static double[] smooth(double[] age, double[] cm) {
    int n = age.length;
    RealMatrix q = new Array2DRowRealMatrix(n, n - 2);
    RealMatrix r = new Array2DRowRealMatrix(n - 2, n - 2);
    for (int j = 0; j < n - 2; j++) {
      double before = age[j + 1] - age[j];
      double after = age[j + 2] - age[j + 1];
      q.setEntry(j, j, 1 / before);
      q.setEntry(j + 1, j, -1 / before - 1 / after);
      q.setEntry(j + 2, j, 1 / after);
      r.setEntry(j, j, (before + after) / 3);
      if (j + 1 < n - 2) {
        r.setEntry(j, j + 1, after / 6);
        r.setEntry(j + 1, j, after / 6);
      }
    }
    RealMatrix rough = q.multiply(MatrixUtils.inverse(r)).multiplyTransposed(q);
    double[] out = cm;
    double low = -20;
    double high = 5;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      out = MatrixUtils.inverse(MatrixUtils.createRealIdentityMatrix(n).add(rough.scalarMultiply(Math.exp(middle)))).operate(cm);
      double off = new ArrayRealVector(out).getDistance(new ArrayRealVector(cm)) / Math.sqrt(n);
      low = off < OFF_CM ? middle : low;
      high = off < OFF_CM ? high : middle;
    }
    return out;
  }

  private double inside(double age) {
    return Math.max(first, Math.min(last, age));
  }

  @Override
  public double height_cm(double age) {
    return height.value(inside(age));
  }

  @Override
  public double speed_cm_y(double age) {
    return Math.max(0, speed.value(inside(age)));
  }

  /** The greatest speed that is greater than those beside it, after 9.5 years in girls and 11 in boys: early childhood is fast too. */
  @Override
  public double peak() {
    double best = 0;
    for (double age = girl ? 9.5 : 11; age < 17; age += 0.01) {
      boolean top = speed_cm_y(age) >= speed_cm_y(age - 0.01) && speed_cm_y(age) >= speed_cm_y(age + 0.01);
      best = top && (best == 0 || speed_cm_y(age) > speed_cm_y(best)) ? age : best;
    }
    return best;
  }

  /**
   * Counts intervals on children that the courses were not learned from, and on those that they were.
   *
   * @param arguments a file with a line for each height, {@code child,m or f,age in years,height in cm}, at least from 8 to 18 years
   */
  public static void main(String[] arguments) throws IOException {
    Map<String, TreeMap<Double, Double>> heights = new TreeMap<>();
    Map<String, Boolean> girls = new TreeMap<>();
    for (String line : Files.readAllLines(Path.of(arguments[0]))) {
      String[] cell = line.split(",", -1);
      heights.computeIfAbsent(cell[0], c -> new TreeMap<>()).put(Double.parseDouble(cell[2]), Double.parseDouble(cell[3]));
      girls.put(cell[0], cell[1].equals("f"));
    }
    int[] seen = new int[2];
    List<RealHeights> learned = new ArrayList<>();
    List<RealHeights> others = new ArrayList<>();
    for (Map.Entry<String, TreeMap<Double, Double>> child : heights.entrySet()) {
      boolean girl = girls.getOrDefault(child.getKey(), false);
      int number = seen[girl ? 1 : 0]++;
      (number % 2 == 0 ? learned : others).add(through(girl, child.getValue()));
    }
    for (List<RealHeights> some : List.of(learned, others)) {
      System.out.println(some == learned ? "learned from" : "not learned from");
      for (int months : new int[] {1, 3, 6}) {
        for (boolean girl : new boolean[] {false, true}) {
          for (boolean gap : new boolean[] {false, true}) {
            List<RealHeights> of = some.stream().filter(c -> c.girl == girl).toList();
            String what = (girl ? "girls, " : "boys, ") + months + (gap ? ", gap" : "");
            System.out.println(row(what, told(of, months, gap, (a, on) -> GrowthTrend.of(a).on(on).speed_cm_y()), told(of, months, gap, PlainTrend::speed)));
          }
        }
      }
    }
  }

  private static List<Told> told(List<RealHeights> of, int months, boolean gap, BiFunction<List<Measurement>, LocalDate, Estimate> tells) {
    List<Told> out = new ArrayList<>();
    for (int i = 0; i < of.size(); i++) {
      Random r = new Random(SEED + i);
      out.addAll(Told.of(of.get(i), of.get(i).measured(r, months, gap).stream().filter(m -> Growing.age(m.date()) <= 18).toList(), 0, tells));
    }
    return out;
  }

  private static String row(String what, List<Told> now, List<Told> plain) {
    return "| " + what + " | "
        + Stream.of(Told.Phase.values()).map(p -> Decimals.fixed(Told.held(p.of(now)), 0) + " (" + Decimals.fixed(Told.held(p.of(plain)), 0) + ")").collect(Collectors.joining(" | "))
        + " | " + Decimals.fixed(Told.held(now), 0) + " (" + Decimals.fixed(Told.held(plain), 0) + ") | " + Decimals.fixed(Told.score(now), 2) + " | " + Decimals.fixed(Told.score(plain), 2) + " |";
  }
}
