package boundwright.inference;

import boundwright.quantity.Estimate;
import boundwright.quantity.Rows;
import java.util.random.RandomGenerator;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Gamma;

/**
 * What is believed of a straight-line model {@code y = x . beta + noise}: {@code beta} normal given the noise variance,
 * the noise variance inverse gamma (the conjugate prior of linear regression), so every answer is closed form: the
 * posterior after each point, the chance of a new point (Student t), and what would have been believed without one
 * point, which makes leave-one-out cross-validation exact. Mutable and not shared between threads; copy first.
 *
 * <p>Standing: worked (textbook algebra); the tests hold it against least squares and against leaving points out.
 */
public final class LinearBelief {
  private final int n;
  private final double[] mean;
  private final double[][] v;
  private double a;
  private double b;

  /**
   * @param mean prior means
   * @param sd prior standard deviations, absolute, as if the noise were {@code noiseSd}
   * @param noiseSd first guess of the noise's standard deviation
   * @param noiseWorth how many points that guess is worth, at least 2
   */
  public LinearBelief(double[] mean, double[] sd, double noiseSd, double noiseWorth) {
    this(mean, diagonal(sd), noiseSd, noiseWorth);
  }

  public LinearBelief(double[] mean, double[][] covariance, double noiseSd, double noiseWorth) {
    n = mean.length;
    this.mean = mean.clone();
    v = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        v[i][j] = covariance[i][j] / (noiseSd * noiseSd);
      }
    }
    a = noiseWorth / 2;
    b = a * noiseSd * noiseSd;
  }

  private LinearBelief(LinearBelief o) {
    n = o.n;
    mean = o.mean.clone();
    v = new double[n][];
    for (int i = 0; i < n; i++) {
      v[i] = o.v[i].clone();
    }
    a = o.a;
    b = o.b;
  }

  private static double[][] diagonal(double[] sd) {
    double[][] out = new double[sd.length][sd.length];
    for (int i = 0; i < sd.length; i++) {
      out[i][i] = sd[i] * sd[i];
    }
    return out;
  }

  public LinearBelief copy() {
    return new LinearBelief(this);
  }

  /** Told one point whose noise variance is {@code relative} times the common one. */
  public void tell(double[] x, double y, double relative) {
    change(x, y, relative, 1);
  }

  /** Takes back a point that was told. */
  public void untell(double[] x, double y, double relative) {
    change(x, y, relative, -1);
  }

  private void change(double[] x, double y, double relative, int sign) {
    double[] vx = times(x);
    double s = Rows.dot(x, vx) + sign * relative;
    double r = y - Rows.dot(x, mean);
    for (int i = 0; i < n; i++) {
      mean[i] += vx[i] * r / s;
      for (int j = 0; j < n; j++) {
        v[i][j] -= vx[i] * vx[j] / s;
      }
    }
    a += sign * 0.5;
    b += r * r / (2 * s);
  }

  public double mean(int i) {
    return mean[i];
  }

  double meanOf(double[] x) {
    return Rows.dot(x, mean);
  }

  /** Scale of the t distribution of {@code x . beta} (not its standard deviation). */
  double scaleOf(double[] x) {
    return Math.sqrt(b / a * Math.max(Rows.dot(x, times(x)), 0));
  }

  /** Degrees of freedom of every t distribution here. */
  double freedom() {
    return 2 * a;
  }

  /** Middle guess of the noise's standard deviation. */
  public double noiseSd() {
    return Math.sqrt(b / a);
  }

  /** 5-50-95 % of the noise's standard deviation. */
  public Estimate noise() {
    return new Estimate(noiseAt(0.95), noiseAt(0.5), noiseAt(0.05));
  }

  private double noiseAt(double upper) {
    // 1/variance is gamma(a, rate b); by bisection on the regularised gamma function
    double low = 1e-6;
    double high = 1e6;
    for (int i = 0; i < 100; i++) {
      double mid = Math.sqrt(low * high);
      if (Gamma.regularizedGammaP(a, mid) < upper) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.sqrt(b / Math.sqrt(low * high));
  }

  /** 5-50-95 % of {@code x . beta}. */
  public Estimate estimate(double[] x) {
    double half = new TDistribution(freedom()).inverseCumulativeProbability(0.95) * scaleOf(x);
    double m = meanOf(x);
    return new Estimate(m - half, m, m + half);
  }

  /** Chance that {@code x . beta} lies above {@code limit}. */
  public double chanceAbove(double[] x, double limit) {
    double scale = scaleOf(x);
    double d = meanOf(x) - limit;
    return scale < 1e-12 ? (d > 0 ? 1 : d < 0 ? 0 : 0.5) : new TDistribution(freedom()).cumulativeProbability(d / scale);
  }

  /** Log density of the next point being {@code y}. */
  public double logPredictive(double[] x, double y, double relative) {
    double scale2 = b / a * (Rows.dot(x, times(x)) + relative);
    double nu = 2 * a;
    double z2 = (y - Rows.dot(x, mean)) * (y - Rows.dot(x, mean)) / scale2;
    return Gamma.logGamma((nu + 1) / 2) - Gamma.logGamma(nu / 2) - 0.5 * Math.log(nu * Math.PI * scale2)
        - (nu + 1) / 2 * Math.log1p(z2 / nu);
  }

  /** One draw of {@code beta}. */
  public double[] draw(RandomGenerator random) {
    double noise = Math.sqrt(b / gamma(a, random));
    double[][] l = cholesky();
    double[] z = new double[n];
    for (int i = 0; i < n; i++) {
      z[i] = random.nextGaussian();
    }
    double[] out = mean.clone();
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        out[i] += noise * l[i][j] * z[j];
      }
    }
    return out;
  }

  private double[][] cholesky() {
    double[][] l = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = v[i][j];
        for (int k = 0; k < j; k++) {
          sum -= l[i][k] * l[j][k];
        }
        l[i][j] = i == j ? Math.sqrt(Math.max(sum, 0)) : l[j][j] > 0 ? sum / l[j][j] : 0;
      }
    }
    return l;
  }

  /** Marsaglia and Tsang's gamma variate, rate 1; shape at least 1 (memory). */
  private static double gamma(double shape, RandomGenerator random) {
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double x = random.nextGaussian();
      double w = 1 + c * x;
      if (w > 0) {
        w = w * w * w;
        if (Math.log(1 - random.nextDouble()) < 0.5 * x * x + d - d * w + d * Math.log(w)) {
          return d * w;
        }
      }
    }
  }

  private double[] times(double[] x) {
    double[] out = new double[n];
    for (int i = 0; i < n; i++) {
      out[i] = Rows.dot(v[i], x);
    }
    return out;
  }
}
