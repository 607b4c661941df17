package boundwright.inference;

import boundwright.quantity.Rows;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A normal model of groups that share the coefficients of a straight-line part: in each group {@code y = X beta + e}, e normal with a covariance
 * of the group's own, groups independent given beta; beta normal before, or flat. Closed form (generalised least squares): how likely the data
 * are with beta integrated out, which with a flat beta is the restricted likelihood whose maximum is REML, what is then believed of beta, and what
 * a new value of a group will be. Mutable while groups are added; not shared between threads.
 *
 * <p>Standing: worked (textbook algebra; Harville 1977, J Am Stat Assoc 72:320-338, for the restricted likelihood; memory); the tests hold it
 * against the reference data of mixed models and against full matrices.
 */
public final class GroupedNormal {
  private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

  private final int p;
  /** What is on and below the diagonal; above it nothing is asked. */
  private final double[][] a;
  private final double[] b;
  private double squares;
  private double logDeterminants;
  private int count;
  private final List<Group> groups = new ArrayList<>();
  private double[] beta = new double[0];
  private double[][] root = new double[0][];

  /** One group with its own covariance taken out. */
  private static final class Group {
    private final double[][] root;
    private final double[][] x;
    private final double[] y;

    Group(double[][] root, double[][] x, double[] y) {
      this.root = root;
      this.x = x;
      this.y = y;
    }
  }

  /** What is believed of one number: normal, with this mean and variance. */
  public record Told(double mean, double variance) {}

  /**
   * @param priorMean of beta
   * @param priorPrecision inverse of its covariance, positive definite; all 0 for a flat beta
   */
  public GroupedNormal(double[] priorMean, double[][] priorPrecision) {
    p = priorMean.length;
    a = new double[p][];
    b = new double[p];
    for (int i = 0; i < p; i++) {
      a[i] = priorPrecision[i].clone();
      b[i] = Rows.dot(priorPrecision[i], priorMean);
      squares += priorMean[i] * b[i];
    }
    boolean flat = Arrays.stream(priorPrecision).flatMapToDouble(Arrays::stream).allMatch(d -> d == 0);
    if (!flat) {
      double[][] l = cholesky(priorPrecision);
      for (int i = 0; i < p; i++) {
        logDeterminants -= 2 * Math.log(l[i][i]);
      }
    }
  }

  /**
   * Adds a group; an empty one tells nothing but may be asked about.
   *
   * @param y the values
   * @param x their rows
   * @param covariance of the values, positive definite
   * @throws IllegalArgumentException if it is not
   */
  public void add(double[] y, double[][] x, double[][] covariance) {
    double[][] l = cholesky(covariance);
    double[] wy = forward(l, y);
    double[][] wx = new double[y.length][p];
    double[] column = new double[y.length];
    for (int j = 0; j < p; j++) {
      for (int i = 0; i < y.length; i++) {
        column[i] = x[i][j];
      }
      double[] w = forward(l, column);
      for (int i = 0; i < y.length; i++) {
        wx[i][j] = w[i];
      }
    }
    for (int i = 0; i < y.length; i++) {
      for (int j = 0; j < p; j++) {
        double w = wx[i][j];
        b[j] += w * wy[i];
        // most columns of days begin with zeros
        for (int k = 0; w != 0 && k <= j; k++) {
          a[j][k] += w * wx[i][k];
        }
      }
      squares += wy[i] * wy[i];
      logDeterminants += 2 * Math.log(l[i][i]);
    }
    count += y.length;
    groups.add(new Group(l, wx, wy));
    beta = new double[0];
  }

  private void solve() {
    if (beta.length == 0) {
      root = cholesky(a);
      beta = solve(root, b);
    }
  }

  /** Log density of all values with beta integrated out; with a flat beta, less a constant. */
  public double logLikelihood() {
    solve();
    double out = -logDeterminants - squares + Rows.dot(b, beta) - count * LOG_TWO_PI;
    for (int i = 0; i < p; i++) {
      out -= 2 * Math.log(root[i][i]);
    }
    return out / 2;
  }

  /** Coefficient {@code x . beta}: what is believed of it. */
  public Told coefficient(double[] x) {
    solve();
    double[] w = forward(root, x);
    return new Told(Rows.dot(x, beta), Rows.dot(w, w));
  }

  /**
   * A new value of a group.
   *
   * @param group by the order in which they were added
   * @param x row of the new value
   * @param with covariance of the new value with each value of the group
   * @param variance of the new value itself, beta known
   */
  public Told value(int group, double[] x, double[] with, double variance) {
    solve();
    Group g = groups.get(group);
    double[] c = forward(g.root, with);
    double[] d = x.clone();
    for (int i = 0; i < c.length; i++) {
      for (int j = 0; j < p; j++) {
        d[j] -= g.x[i][j] * c[i];
      }
    }
    double[] w = forward(root, d);
    return new Told(Rows.dot(d, beta) + Rows.dot(c, g.y), variance - Rows.dot(c, c) + Rows.dot(w, w));
  }

  /** Lower triangular root; refuses what is not positive definite. */
  static double[][] cholesky(double[][] m) {
    int n = m.length;
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = m[i][j];
        for (int k = 0; k < j; k++) {
          sum -= l[i][k] * l[j][k];
        }
        if (i != j) {
          l[i][j] = sum / l[j][j];
        } else if (sum > 0) {
          l[i][i] = Math.sqrt(sum);
        } else {
          throw new IllegalArgumentException("A covariance is not positive definite in row " + i + ": " + sum);
        }
      }
    }
    return l;
  }

  /** {@code (l l')^-1 v}. */
  static double[] solve(double[][] l, double[] v) {
    return backward(l, forward(l, v));
  }

  private static double[] forward(double[][] l, double[] v) {
    double[] out = v.clone();
    int first = 0;
    while (first < out.length && out[first] == 0) {
      first++;
    }
    for (int i = first; i < out.length; i++) {
      for (int k = first; k < i; k++) {
        out[i] -= l[i][k] * out[k];
      }
      out[i] /= l[i][i];
    }
    return out;
  }

  private static double[] backward(double[][] l, double[] v) {
    double[] out = v.clone();
    for (int i = out.length - 1; i >= 0; i--) {
      for (int k = i + 1; k < out.length; k++) {
        out[i] -= l[k][i] * out[k];
      }
      out[i] /= l[i][i];
    }
    return out;
  }
}
