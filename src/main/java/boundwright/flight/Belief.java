package boundwright.flight;

import boundwright.quantity.Rows;
import java.util.Arrays;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.special.Erf;
import org.hipparchus.util.FastMath;
import org.jspecify.annotations.Nullable;

/**
 * A joint normal distribution over some unknowns that is told one fact at a time: an exact or noisy linear
 * measurement (Kalman's update, closed form), or that a linear combination lies on one side of a limit (moments
 * matched). Mutable and not shared between threads; copy first.
 */
final class Belief {
  private final int n;
  private final double[] mean;
  private final double[] cov;

  Belief(int n) {
    this.n = n;
    this.mean = new double[n];
    this.cov = new double[n * n];
  }

  private Belief(int n, double[] mean, double[] cov) {
    this.n = n;
    this.mean = mean;
    this.cov = cov;
  }

  Belief copy() {
    return new Belief(n, mean.clone(), cov.clone());
  }

  /** The same belief with {@code extra} more unknowns at the end, each known to be 0 until {@link #reset} says else. */
  Belief widened(int extra) {
    Belief wide = new Belief(n + extra);
    System.arraycopy(mean, 0, wide.mean, 0, n);
    for (int i = 0; i < n; i++) {
      System.arraycopy(cov, i * n, wide.cov, i * wide.n, n);
    }
    return wide;
  }

  /** What is believed of the first {@code k} unknowns. */
  Belief narrowed(int k) {
    Belief narrow = new Belief(k);
    System.arraycopy(mean, 0, narrow.mean, 0, k);
    for (int i = 0; i < k; i++) {
      System.arraycopy(cov, i * n, narrow.cov, i * k, k);
    }
    return narrow;
  }

  int size() {
    return n;
  }

  double mean(int i) {
    return mean[i];
  }

  double variance(int i) {
    return cov[i * n + i];
  }

  double covariance(int i, int j) {
    return cov[i * n + j];
  }

  /** Mean of the square of one unknown. */
  double meanSquare(int i) {
    return mean[i] * mean[i] + cov[i * n + i];
  }

  void setMean(int i, double value) {
    mean[i] = value;
  }

  void setCovariance(int i, int j, double value) {
    cov[i * n + j] = value;
    cov[j * n + i] = value;
  }

  /** Means of some unknowns. */
  double[] means(int[] which) {
    double[] out = new double[which.length];
    for (int i = 0; i < which.length; i++) {
      out[i] = mean[which[i]];
    }
    return out;
  }

  /** Covariances of some unknowns. */
  double[][] covariances(int[] which) {
    double[][] out = new double[which.length][which.length];
    for (int i = 0; i < which.length; i++) {
      for (int j = 0; j < which.length; j++) {
        out[i][j] = cov[which[i] * n + which[j]];
      }
    }
    return out;
  }

  /** Puts another mean and covariance in the place of those of some unknowns; what is tied to them follows. */
  void believe(int[] which, double[] mean, double[][] covariance) {
    int k = which.length;
    RealMatrix before = MatrixUtils.createRealMatrix(covariances(which));
    RealMatrix tied = MatrixUtils.createRealMatrix(n, k);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < k; j++) {
        tied.setEntry(i, j, cov[i * n + which[j]]);
      }
    }
    RealMatrix follow = tied.multiply(MatrixUtils.inverse(before));
    double[] shift = mean.clone();
    for (int j = 0; j < k; j++) {
      shift[j] -= this.mean[which[j]];
    }
    double[] by = follow.operate(shift);
    RealMatrix change = follow.multiply(MatrixUtils.createRealMatrix(covariance).subtract(before)).multiply(follow.transpose());
    for (int i = 0; i < n; i++) {
      this.mean[i] += by[i];
      for (int j = 0; j < n; j++) {
        cov[i * n + j] += (change.getEntry(i, j) + change.getEntry(j, i)) / 2;
      }
    }
  }

  /** Forgets one unknown: mean 0, this variance, tied to nothing. */
  void reset(int i, double variance) {
    mean[i] = 0;
    for (int j = 0; j < n; j++) {
      cov[i * n + j] = 0;
      cov[j * n + i] = 0;
    }
    cov[i * n + i] = variance;
  }

  /** Makes one unknown {@code kept} times another and an independent part of this variance. */
  void inherit(int i, int other, double kept, double variance) {
    mean[i] = kept * mean[other];
    for (int j = 0; j < n; j++) {
      if (j != i) {
        double with = kept * cov[other * n + j];
        cov[i * n + j] = with;
        cov[j * n + i] = with;
      }
    }
    cov[i * n + i] = kept * kept * cov[other * n + other] + variance;
  }

  /** Makes one unknown less sure by an independent change of this variance. */
  void diffuse(int i, double variance) {
    cov[i * n + i] += variance;
  }

  /** Unknown {@code i} moves by {@code gain} times unknown {@code speed}, which then shrinks to {@code kept} of itself. */
  void flow(int i, int speed, double gain, double kept) {
    mean[i] += gain * mean[speed];
    mean[speed] *= kept;
    for (int j = 0; j < n; j++) {
      cov[i * n + j] += gain * cov[speed * n + j];
    }
    for (int j = 0; j < n; j++) {
      cov[j * n + i] += gain * cov[j * n + speed];
    }
    for (int j = 0; j < n; j++) {
      cov[speed * n + j] *= kept;
    }
    for (int j = 0; j < n; j++) {
      cov[j * n + speed] *= kept;
    }
  }

  /** The normal with mean and covariance of: this with chance {@code weight}, {@code other} with the rest; sizes alike. */
  Belief mixed(Belief other, double weight) {
    Belief out = new Belief(n);
    double rest = 1 - weight;
    for (int i = 0; i < n; i++) {
      out.mean[i] = weight * mean[i] + rest * other.mean[i];
    }
    for (int i = 0; i < n; i++) {
      double apart = weight * rest * (mean[i] - other.mean[i]);
      for (int j = 0; j <= i; j++) {
        int ij = i * n + j;
        out.setCovariance(i, j, weight * cov[ij] + rest * other.cov[ij] + apart * (mean[j] - other.mean[j]));
      }
    }
    return out;
  }

  double meanOf(double[] h) {
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += h[i] * mean[i];
    }
    return sum;
  }

  double varianceOf(double[] h) {
    double[] ph = times(h);
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += h[i] * ph[i];
    }
    return Math.max(sum, 0);
  }

  /** Chance that {@code h . x} lies above {@code limit}. */
  double chanceAbove(double[] h, double limit) {
    double sd = Math.sqrt(varianceOf(h));
    double away = limit - meanOf(h);
    return sd > 0 ? 0.5 * Erf.erfc(away / (sd * Math.sqrt(2))) : away < 0 ? 1 : 0;
  }

  /** Told that {@code h . x} was measured as {@code y} with noise variance {@code r}, above 0. */
  void measure(double[] h, double y, double r) {
    double[] ph = times(h);
    double s = Rows.dot(h, ph) + r;
    shift(ph, (y - meanOf(h)) / s, -1 / s);
  }

  /**
   * Told by an observer that {@code h . x} lies above (or below) {@code limit}. The posterior is replaced by the normal with
   * its mean and covariance (moments of a truncated normal mixed with the untruncated one).
   *
   * @param hit chance that the observer says so where it is true
   * @param miss chance that the observer says so where it is not
   */
  void side(double[] h, double limit, boolean above, double hit, double miss) {
    double[] ph = times(h);
    double variance = Rows.dot(h, ph);
    if (variance < 1e-12) {
      return;
    }
    double sd = Math.sqrt(variance);
    double sign = above ? 1 : -1;
    double alpha = sign * (limit - meanOf(h)) / sd;
    double weight = hit - miss;
    double z = miss + weight * 0.5 * Erf.erfc(alpha / Math.sqrt(2));
    double lambda = weight * FastMath.exp(-alpha * alpha / 2) / Math.sqrt(2 * Math.PI) / z;
    double shrink = lambda * (lambda - alpha);
    shift(ph, sign * lambda / sd, -shrink / variance);
  }

  private void shift(double[] ph, double byMean, double byCov) {
    for (int i = 0; i < n; i++) {
      mean[i] += ph[i] * byMean;
      double row = ph[i] * byCov;
      if (row != 0) {
        for (int j = 0; j <= i; j++) {
          double now = cov[i * n + j] + row * ph[j];
          cov[i * n + j] = now;
          cov[j * n + i] = now;
        }
      }
    }
  }

  /** Covariance of every unknown with {@code h . x}. */
  double[] times(double[] h) {
    double[] out = new double[n];
    for (int j = 0; j < n; j++) {
      double hj = h[j];
      if (hj != 0) {
        int row = j * n;
        for (int i = 0; i < n; i++) {
          out[i] += hj * cov[row + i];
        }
      }
    }
    return out;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Belief b && n == b.n && Arrays.equals(mean, b.mean) && Arrays.equals(cov, b.cov);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(mean);
  }
}
