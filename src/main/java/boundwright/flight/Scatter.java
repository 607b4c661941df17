package boundwright.flight;

import java.util.Arrays;
import org.hipparchus.util.FastMath;
import org.jspecify.annotations.Nullable;

/**
 * How much wider or narrower than usual an athlete scatters: a factor on the usual variance of the day, of the rep and of
 * the single flight. Each factor takes one of {@value #STEPS} values, {@value #STEP} apart in the logarithm, and the chance
 * of every combination is kept and weighed by Bayes' rule with what is seen. So few reps move it as far as they should
 * (a step along the slope of the likelihood was tried first: it needed some sixty reps to believe a steady athlete), and no
 * single rep moves it farther than it should. Immutable.
 */
final class Scatter {
  /** The day's deviation, shared by the reps of a day. */
  static final int DAY = 0;
  /** The rep's deviation, shared by its flights. */
  static final int REP = 1;
  /** Each flight's own. */
  static final int FLIGHT = 2;

  static final int KINDS = 3;
  static final int STEPS = 11;
  static final double STEP = 0.5;
  /** Logarithm of the smallest factor. */
  static final double LEAST = -3.75;

  /** Usual logarithm of a factor, how far an athlete may be from it, and how the three go together (judgement). */
  private static final double PRIOR_MEAN = -0.8;
  private static final double PRIOR_SD = 0.9;
  private static final double PRIOR_TIE = 0.7;

  private static final double[] FACTORS = new double[STEPS];

  static {
    for (int i = 0; i < STEPS; i++) {
      FACTORS[i] = FastMath.exp(log(i));
    }
  }

  private final double[] chance;
  private final double[] mean = new double[KINDS];
  private final double[] likely = new double[KINDS];

  private Scatter(double[] chance) {
    this.chance = chance;
    for (int i = 0; i < chance.length; i++) {
      for (int k = 0; k < KINDS; k++) {
        int step = place(i, k);
        mean[k] += chance[i] * FACTORS[step];
        likely[k] += chance[i] * log(step);
      }
    }
    for (int k = 0; k < KINDS; k++) {
      likely[k] = FastMath.exp(likely[k]);
    }
  }

  /** Before any rep and without a squad. */
  static Scatter prior() {
    double[][] covariance = new double[KINDS][KINDS];
    for (int i = 0; i < KINDS; i++) {
      for (int j = 0; j < KINDS; j++) {
        covariance[i][j] = PRIOR_SD * PRIOR_SD * (i == j ? 1 : PRIOR_TIE);
      }
    }
    return around(new double[] {PRIOR_MEAN, PRIOR_MEAN, PRIOR_MEAN}, covariance);
  }

  /** Normal in the logarithms of the three factors, cut off where the values end. */
  static Scatter around(double[] mean, double[][] covariance) {
    double[][] inverse = org.hipparchus.linear.MatrixUtils.inverse(org.hipparchus.linear.MatrixUtils.createRealMatrix(covariance)).getData();
    double[] log = new double[STEPS * STEPS * STEPS];
    for (int i = 0; i < log.length; i++) {
      for (int j = 0; j < KINDS; j++) {
        for (int k = 0; k < KINDS; k++) {
          log[i] -= (log(place(i, j)) - mean[j]) * inverse[j][k] * (log(place(i, k)) - mean[k]) / 2;
        }
      }
    }
    return new Scatter(normed(log));
  }

  private static double[] normed(double[] log) {
    double most = Double.NEGATIVE_INFINITY;
    for (double l : log) {
      most = Math.max(most, l);
    }
    double sum = 0;
    double[] out = new double[log.length];
    for (int i = 0; i < log.length; i++) {
      out[i] = FastMath.exp(log[i] - most);
      sum += out[i];
    }
    for (int i = 0; i < log.length; i++) {
      out[i] /= sum;
    }
    return out;
  }

  private static int place(int i, int kind) {
    return kind == DAY ? i / (STEPS * STEPS) : kind == REP ? i / STEPS % STEPS : i % STEPS;
  }

  private static double log(int step) {
    return LEAST + STEP * step;
  }

  /** The factor at a step. */
  static double factor(int step) {
    return FACTORS[step];
  }

  /** From {@link #figures}. */
  static Scatter of(double[] figures) {
    return new Scatter(figures.clone());
  }

  /** How many figures {@link #figures} has. */
  static int size() {
    return STEPS * STEPS * STEPS;
  }

  /** All that is kept. */
  double[] figures() {
    return chance.clone();
  }

  /** The middle factor, used while learning. */
  double likely(int kind) {
    return likely[kind];
  }

  /** The mean factor, wider while little is known; used when forecasting. */
  double mean(int kind) {
    return mean[kind];
  }

  /** Mean logarithms of the three factors. */
  double[] logs() {
    double[] out = new double[KINDS];
    for (int k = 0; k < KINDS; k++) {
      out[k] = FastMath.log(likely[k]);
    }
    return out;
  }

  /** Covariances of the logarithms of the three factors. */
  double[][] logCovariance() {
    double[] m = logs();
    double[][] out = new double[KINDS][KINDS];
    for (int i = 0; i < chance.length; i++) {
      for (int j = 0; j < KINDS; j++) {
        for (int k = 0; k < KINDS; k++) {
          out[j][k] += chance[i] * (log(place(i, j)) - m[j]) * (log(place(i, k)) - m[k]);
        }
      }
    }
    return out;
  }

  /** Chance of every pair of a rep's and a flight's factor, {@code [rep step][flight step]}. */
  double[][] pairs() {
    double[][] out = new double[STEPS][STEPS];
    for (int i = 0; i < chance.length; i++) {
      out[place(i, REP)][place(i, FLIGHT)] += chance[i];
    }
    return out;
  }

  /**
   * After something was seen of a rep.
   *
   * @param likelihood of what was seen for each pair, {@code [rep step][flight step]}, on any common scale
   */
  Scatter seen(double[][] likelihood) {
    double[] out = new double[chance.length];
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      out[i] = chance[i] * likelihood[place(i, REP)][place(i, FLIGHT)];
      sum += out[i];
    }
    return scaled(out, sum);
  }

  /**
   * After a day is over.
   *
   * @param form the day's deviation as its reps showed it, relative
   * @param error variance of that
   * @param usual variance of the day at factor 1
   */
  Scatter dayOver(double form, double error, double usual) {
    double[] likelihood = new double[STEPS];
    for (int i = 0; i < STEPS; i++) {
      double variance = usual * factor(i) + error;
      likelihood[i] = FastMath.exp(-form * form / (2 * variance)) / Math.sqrt(variance);
    }
    double[] out = new double[chance.length];
    double sum = 0;
    for (int i = 0; i < chance.length; i++) {
      out[i] = chance[i] * likelihood[place(i, DAY)];
      sum += out[i];
    }
    return scaled(out, sum);
  }

  private Scatter scaled(double[] out, double sum) {
    if (!(sum > 1e-200)) {
      return this;
    }
    for (int i = 0; i < out.length; i++) {
      out[i] /= sum;
    }
    return new Scatter(out);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Scatter s && Arrays.equals(chance, s.chance);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(chance);
  }
}
