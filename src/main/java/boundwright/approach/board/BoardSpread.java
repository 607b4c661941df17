package boundwright.approach.board;

import boundwright.inference.Normal;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Estimate;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Where an athlete's foot falls at the board and how widely, with the fouls counted in: a foul of unknown size is a gap
 * somewhere below 0 (censored normal). Bayesian, on a grid over mean and spread, so nothing is random; the weak prior is
 * judgement: mean gap 8 +- 20 cm, spread 10 cm within a factor of about 2.3 either way (nine in ten).
 *
 * @param mean_m mean gap, the bias against the line [m]
 * @param sd_m standard deviation of the gap [m]
 * @param foulChance chance that the next attempt at this start mark fouls
 * @param attempts it was learned from
 */
public record BoardSpread(Estimate mean_m, Estimate sd_m, Estimate foulChance, int attempts) {
  private static final double PRIOR_MEAN = 0.08;
  private static final double PRIOR_MEAN_SD = 0.20;
  private static final double PRIOR_LOG_SD = 0.5;
  private static final double PRIOR_SD = 0.10;
  private static final int MEANS = 241;
  private static final int SDS = 121;
  private static final double LEAST_SD = 0.008;
  private static final double MOST_SD = 0.60;

  /**
   * The two numbers of a normal distribution.
   *
   * @param mean_m [m]
   * @param sd_m [m]
   */
  public record Fit(double mean_m, double sd_m) {}

  /** What the log and the weak prior say together; with an empty log it is the prior. */
  public static BoardSpread of(BoardGaps log) {
    double[] s = sums(log);
    double n = s[0];
    double mean = n > 0 ? s[1] / n : 0;
    double square = n > 0 ? s[2] - n * mean * mean : 0;
    double low = -0.6;
    double high = 1.2;
    if (n > 0) {
      low = Math.min(low, mean - 0.3);
      high = Math.max(high, mean + 0.3);
    }
    // a second look on the part that carries the weight, so that a long log is not lost between the grid's lines
    Grid wide = new Grid(log, n, mean, square, low, high, LEAST_SD, MOST_SD);
    Estimate m = wide.mean();
    Estimate sd = wide.sd();
    double by = 3 * (m.p95() - m.p05()) + 2 * wide.meanStep();
    double times = Math.pow(sd.p95() / sd.p05(), 1.5) * Math.exp(2 * wide.logStep());
    Grid near =
        new Grid(log, n, mean, square, m.p50() - by, m.p50() + by, Math.max(LEAST_SD / 2, sd.p50() / times), sd.p50() * times);
    return new BoardSpread(near.mean(), near.sd(), near.foul(), log.attempts());
  }

  /** Posterior weights over mean and log spread. */
  private static final class Grid {
    private final double[] means = new double[MEANS];
    private final double[] sds = new double[SDS];
    private final double[] weight = new double[MEANS * SDS];

    Grid(BoardGaps log, double n, double mean, double square, double low, double high, double leastSd, double mostSd) {
      double most = Double.NEGATIVE_INFINITY;
      Map<Double, Integer> limits = new TreeMap<>();
      log.foulsBelow_m().forEach(f -> limits.merge(f, 1, Integer::sum));
      for (int j = 0; j < SDS; j++) {
        sds[j] = leastSd * Math.pow(mostSd / leastSd, j / (SDS - 1.0));
      }
      for (int i = 0; i < MEANS; i++) {
        means[i] = low + (high - low) * i / (MEANS - 1);
        double zm = (means[i] - PRIOR_MEAN) / PRIOR_MEAN_SD;
        for (int j = 0; j < SDS; j++) {
          double sd = sds[j];
          double zs = Math.log(sd / PRIOR_SD) / PRIOR_LOG_SD;
          double l = -zm * zm / 2 - zs * zs / 2;
          l -= n * Math.log(sd) + (square + n * (means[i] - mean) * (means[i] - mean)) / (2 * sd * sd);
          for (Map.Entry<Double, Integer> f : limits.entrySet()) {
            l += f.getValue() * Math.log(Math.max(Normal.below((f.getKey() - means[i]) / sd), 1e-300));
          }
          weight[i * SDS + j] = l;
          most = Math.max(most, l);
        }
      }
      double sum = 0;
      for (int k = 0; k < weight.length; k++) {
        weight[k] = Math.exp(weight[k] - most);
        sum += weight[k];
      }
      for (int k = 0; k < weight.length; k++) {
        weight[k] /= sum;
      }
    }

    double meanStep() {
      return means[1] - means[0];
    }

    double logStep() {
      return Math.log(sds[1] / sds[0]);
    }

    Estimate mean() {
      double[] w = new double[MEANS];
      for (int k = 0; k < weight.length; k++) {
        w[k / SDS] += weight[k];
      }
      return quantiles(means, w);
    }

    Estimate sd() {
      double[] w = new double[SDS];
      for (int k = 0; k < weight.length; k++) {
        w[k % SDS] += weight[k];
      }
      return quantiles(sds, w);
    }

    Estimate foul() {
      int bins = 2000;
      double[] p = new double[bins];
      double[] w = new double[bins];
      for (int b = 0; b < bins; b++) {
        p[b] = (b + 0.5) / bins;
      }
      for (int k = 0; k < weight.length; k++) {
        if (weight[k] > 1e-12) {
          double f = Normal.below(-means[k / SDS] / sds[k % SDS]);
          w[Math.min(bins - 1, (int) (f * bins))] += weight[k];
        }
      }
      return quantiles(p, w);
    }

    /** Points at which the weight of cells around {@code at} passes 5, 50 and 95 %, straight within a cell. */
    private static Estimate quantiles(double[] at, double[] w) {
      return new Estimate(quantile(at, w, 0.05), quantile(at, w, 0.5), quantile(at, w, 0.95));
    }

    private static double quantile(double[] at, double[] w, double p) {
      double sum = 0;
      for (int i = 0; i < at.length; i++) {
        if (sum + w[i] >= p) {
          double left = i == 0 ? at[0] : (at[i - 1] + at[i]) / 2;
          double right = i == at.length - 1 ? at[i] : (at[i] + at[i + 1]) / 2;
          return left + (right - left) * (p - sum) / w[i];
        }
        sum += w[i];
      }
      return at[at.length - 1];
    }
  }

  /**
   * The likeliest mean and spread, no prior: Newton's method in the parameters of Olsen 1978 (memory), in which the
   * likelihood has one top.
   *
   * @throws RefusedException with fewer than two different measured gaps
   */
  public static Fit likeliest(BoardGaps log) {
    double[] s = sums(log);
    double n = s[0];
    double mean = n > 0 ? s[1] / n : 0;
    double sd = n > 0 ? Math.sqrt(Math.max(s[2] / n - mean * mean, 0)) : 0;
    if (n < 2 || sd < 1e-9) {
      throw new RefusedException(
          "A likeliest spread needs at least 2 different measured gaps; this log has " + (int) n + ". Log more attempts.");
    }
    double theta = 1 / sd;
    double delta = mean / sd;
    for (int i = 0; i < 200; i++) {
      // log likelihood: n ln theta - sum (theta g - delta)^2 / 2 + sum over fouls ln Phi(theta limit - delta)
      double gTheta = n / theta - theta * s[2] + delta * s[1];
      double gDelta = theta * s[1] - n * delta;
      double tt = n / (theta * theta) + s[2];
      double td = -s[1];
      double dd = n;
      for (double limit : log.foulsBelow_m()) {
        double u = theta * limit - delta;
        double h = hazard(-u);
        gTheta += limit * h;
        gDelta -= h;
        tt += limit * limit * h * (h + u);
        td -= limit * h * (h + u);
        dd += h * (h + u);
      }
      double det = tt * dd - td * td;
      double stepT = (dd * gTheta - td * gDelta) / det;
      double stepD = (tt * gDelta - td * gTheta) / det;
      double cut = Math.min(1, 0.5 * theta / Math.max(Math.abs(stepT), 1e-300));
      theta += cut * stepT;
      delta += cut * stepD;
      if (Math.abs(stepT) < 1e-12 * theta && Math.abs(stepD) < 1e-12) {
        break;
      }
    }
    return new Fit(delta / theta, 1 / theta);
  }

  /** phi(d) / Phi(-d), safe far out. */
  private static double hazard(double d) {
    return d > 30 ? d + 1 / d : Normal.density(d) / Normal.below(-d);
  }

  /**
   * From a share of fouls and the mean of the legal gaps only: k = -Phi^-1(f), spread = mean legal gap / (k + phi(k) /
   * Phi(k)), mean = k spread (worked: moments of a truncated normal).
   *
   * @param foulShare 0.01 to 0.95
   * @param meanLegalGap_m [m], above 0
   */
  public static Fit ofShare(double foulShare, double meanLegalGap_m) {
    Limits.within("share of fouls", foulShare, 0.01, 0.95, "", "It is fouls over attempts.");
    Limits.within("mean legal gap", meanLegalGap_m, 0.001, JumpLimits.MAX_GAP_M, "m", "It is the mean of the legal attempts.");
    double k = -Normal.quantile(foulShare);
    double sd = meanLegalGap_m / Normal.meanAbove0(k, 1);
    return new Fit(k * sd, sd);
  }

  private static double[] sums(BoardGaps log) {
    List<Double> g = log.measured_m();
    double sum = 0;
    double squares = 0;
    for (double x : g) {
      sum += x;
      squares += x * x;
    }
    return new double[] {g.size(), sum, squares};
  }
}
