package boundwright.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleValueChecker;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * A handful of weighted points that stand for what is believed of a few numbers, such as the logarithms of spreads: the top of the density is
 * found, a normal is laid on it (Laplace), and points drawn from a wider one are weighed by the density itself (importance sampling). So an
 * answer that is averaged over the points carries that the spreads are not known exactly.
 *
 * <p>Standing: worked (textbook method; the tests hold it against integrals by quadrature).
 */
public final class SpreadSearch {
  private static final double WIDER = 1.15;
  private static final double STEP = 0.05;

  private SpreadSearch() {}

  /** A point and its weight; the weights of all points add up to 1. */
  public static final class Weighed {
    private final double[] at;
    private final double weight;

    private Weighed(double[] at, double weight) {
      this.at = at;
      this.weight = weight;
    }

    /** The point; a copy. */
    public double[] at() {
      return at.clone();
    }

    /** Its weight, 0 to 1. */
    public double weight() {
      return weight;
    }
  }

  /**
   * The points of logarithms of spreads that are believed to lie near the usual ones, each apart from the others (log-normal).
   *
   * @param usual spreads, above 0
   * @param logSd how far the logarithm of one may lie from that of its usual one
   * @param logLikelihood of logarithms of spreads, up to a constant; smooth
   * @param points how many, at least 1
   * @param random seed it to get the same answer twice
   */
  public static List<Weighed> near(double[] usual, double logSd, ToDoubleFunction<double[]> logLikelihood, int points, RandomGenerator random) {
    double[] guess = Arrays.stream(usual).map(Math::log).toArray();
    return of(logs -> prior(logs, guess, logSd) + logLikelihood.applyAsDouble(logs), guess, logSd, points, random);
  }

  private static double prior(double[] logs, double[] guess, double logSd) {
    double out = 0;
    for (int i = 0; i < logs.length; i++) {
      double off = (logs[i] - guess[i]) / logSd;
      out -= off * off / 2;
    }
    return out;
  }

  /**
   * The points.
   *
   * @param logDensity up to a constant; smooth, with one top
   * @param from where the search begins
   * @param usualSd how far a point may lie from the top when the density tells nothing
   * @param points how many, at least 1
   * @param random seed it to get the same answer twice
   */
  public static List<Weighed> of(ToDoubleFunction<double[]> logDensity, double[] from, double usualSd, int points, RandomGenerator random) {
    int n = from.length;
    double[] top =
        new SimplexOptimizer(new SimpleValueChecker(-1, 1e-4))
            .optimize(
                new MaxEval(4000),
                new ObjectiveFunction(logDensity::applyAsDouble),
                GoalType.MAXIMIZE,
                new InitialGuess(from),
                new NelderMeadSimplex(n, 0.4))
            .getPoint();
    double[][] l = width(logDensity, top, usualSd);
    double[] logs = new double[points];
    double[][] at = new double[points][];
    double most = Double.NEGATIVE_INFINITY;
    for (int s = 0; s < points; s++) {
      double[] z = new double[n];
      double zz = 0;
      for (int i = 0; i < n; i++) {
        z[i] = random.nextGaussian();
        zz += z[i] * z[i];
      }
      at[s] = top.clone();
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          at[s][i] += WIDER * l[i][j] * z[j];
        }
      }
      logs[s] = logDensity.applyAsDouble(at[s]) + zz / 2;
      most = Math.max(most, logs[s]);
    }
    double sum = 0;
    for (int s = 0; s < points; s++) {
      logs[s] = Math.exp(logs[s] - most);
      sum += logs[s];
    }
    List<Weighed> out = new ArrayList<>();
    for (int s = 0; s < points; s++) {
      out.add(new Weighed(at[s], logs[s] / sum));
    }
    return List.copyOf(out);
  }

  /** Lower root of the inverse of the negative second derivatives at the top; where those make no normal, as wide as usual. */
  private static double[][] width(ToDoubleFunction<double[]> f, double[] top, double usualSd) {
    int n = top.length;
    double here = f.applyAsDouble(top);
    double[][] h = new double[n][n];
    double[] one = new double[n];
    for (int i = 0; i < n; i++) {
      one[i] = f.applyAsDouble(moved(top, i, STEP, i, 0));
    }
    for (int i = 0; i < n; i++) {
      h[i][i] = -(one[i] + f.applyAsDouble(moved(top, i, -STEP, i, 0)) - 2 * here) / (STEP * STEP);
      for (int j = 0; j < i; j++) {
        h[i][j] = -(f.applyAsDouble(moved(top, i, STEP, j, STEP)) - one[i] - one[j] + here) / (STEP * STEP);
        h[j][i] = h[i][j];
      }
    }
    double[][] out = new double[n][n];
    try {
      double[][] r = GroupedNormal.cholesky(h);
      // inverse of h = r'^-1 r^-1; any root will do, its columns one by one, then made lower again
      double[][] inverse = new double[n][n];
      for (int i = 0; i < n; i++) {
        double[] e = new double[n];
        e[i] = 1;
        inverse[i] = GroupedNormal.solve(r, e);
      }
      return GroupedNormal.cholesky(inverse);
    } catch (IllegalArgumentException notATop) {
      for (int i = 0; i < n; i++) {
        out[i][i] = usualSd;
      }
      return out;
    }
  }

  private static double[] moved(double[] from, int i, double byI, int j, double byJ) {
    double[] out = from.clone();
    out[i] += byI;
    out[j] += byJ;
    return out;
  }
}
