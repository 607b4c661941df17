package boundwright.athlete.growth;

import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What could be told at best: of somebody of whom it is known that they grow by {@link GrownUp}, that they are a boy or a girl, when they were born
 * and how such people differ. The five numbers have the law by which they were drawn; the likeliest by Gauss and Newton with damping, and the
 * speed's interval from the curvature there (Laplace; textbook). No model without that knowledge can be surer for long and hold.
 */
final class KnowsTheKind {
  private final boolean girl;

  KnowsTheKind(boolean girl) {
    this.girl = girl;
  }

  private GrownUp who(double[] z) {
    return GrownUp.of(girl, z);
  }

  private static double sq(double x) {
    return x * x;
  }

  private double loss(double[] z, double[] ages, double[] cm) {
    GrownUp who = who(z);
    double sum = 0;
    for (double x : z) {
      sum += x * x;
    }
    for (int i = 0; i < cm.length; i++) {
      sum += sq((cm[i] - who.height_cm(ages[i])) / GrowthTrend.READING_SD_CM);
    }
    return sum;
  }

  private static double[] moved(double[] z, int by, double step) {
    double[] out = z.clone();
    out[by] += step;
    return out;
  }

  /** The speed on a day by these heights. */
  Estimate speed(List<Measurement> measured, LocalDate on) {
    double[] ages = measured.stream().mapToDouble(m -> Growing.age(m.date())).toArray();
    double[] cm = measured.stream().mapToDouble(m -> 100 * m.height_m()).toArray();
    double[] z = best(ages, cm);
    RealMatrix precision = new Array2DRowRealMatrix(5, 5);
    slopes(z, ages, cm, precision, new ArrayRealVector(5));
    RealVector slope = new ArrayRealVector(5);
    double age = Growing.age(on);
    for (int k = 0; k < 5; k++) {
      slope.setEntry(k, (who(moved(z, k, 1e-4)).speed_cm_y(age) - who(moved(z, k, -1e-4)).speed_cm_y(age)) / 2e-4);
    }
    double half = Estimate.Z95 * Math.sqrt(slope.dotProduct(MatrixUtils.inverse(precision).operate(slope)));
    double v = who(z).speed_cm_y(age);
    return new Estimate(Math.max(0, v - half), v, v + half);
  }

  /** From several ages of the spurt: whoever has not begun it may be early or late. */
  private double[] best(double[] ages, double[] cm) {
    double[] best = new double[5];
    double least = Double.POSITIVE_INFINITY;
    for (double start : new double[] {-1.5, 0, 1.5}) {
      double[] z = {0, 0, 0, 0, start};
      double now = loss(z, ages, cm);
      double damp = 1;
      for (int round = 0; round < 60 && damp < 1e9; round++) {
        RealMatrix a = new Array2DRowRealMatrix(5, 5);
        RealVector b = new ArrayRealVector(5);
        slopes(z, ages, cm, a, b);
        RealVector step = new CholeskyDecomposition(a.add(MatrixUtils.createRealIdentityMatrix(5).scalarMultiply(damp))).getSolver().solve(b);
        double[] next = new ArrayRealVector(z).add(step).toArray();
        double then = loss(next, ages, cm);
        if (then < now) {
          z = next;
          damp /= 5;
          round += now - then < 1e-9 ? 60 : 0;
          now = then;
        } else {
          damp *= 4;
        }
      }
      if (now < least) {
        least = now;
        best = z;
      }
    }
    return best;
  }

  private void slopes(double[] z, double[] ages, double[] cm, RealMatrix a, RealVector b) {
    GrownUp who = who(z);
    GrownUp[] up = new GrownUp[5];
    for (int k = 0; k < 5; k++) {
      up[k] = who(moved(z, k, 1e-5));
      a.addToEntry(k, k, 1);
      b.addToEntry(k, -z[k]);
    }
    for (int i = 0; i < cm.length; i++) {
      double at = who.height_cm(ages[i]);
      double[] j = new double[5];
      for (int k = 0; k < 5; k++) {
        j[k] = (up[k].height_cm(ages[i]) - at) / 1e-5 / GrowthTrend.READING_SD_CM;
      }
      for (int k = 0; k < 5; k++) {
        b.addToEntry(k, j[k] * (cm[i] - at) / GrowthTrend.READING_SD_CM);
        for (int l = 0; l < 5; l++) {
          a.addToEntry(k, l, j[k] * j[l]);
        }
      }
    }
  }
}
