package boundwright.flight;

import boundwright.quantity.Rows;
import org.hipparchus.util.FastMath;
import org.jspecify.annotations.Nullable;

/**
 * What the measured positions of one rep say before they are learned: how likely they are for each scatter, and whether
 * the rep was one at all. A rep that was abandoned (the athlete ran through or broke off) has short flights from some
 * contact on; nobody need say so: both explanations are weighed, and a rep is learned as far as it is believed.
 */
final class RepEvidence {
  /** How many reps are abandoned, unmarked (judgement). */
  static final double ABANDONED = 0.03;
  /** An abandoned flight is shorter by about this share, give or take (judgement). */
  private static final double SHORTER = 0.45;
  private static final double SHORTER_SD = 0.20;
  /** The break comes in one of so many last flights. */
  private static final int LAST_FLIGHTS = 4;
  /** More positions than this add nothing to what is known of the scatter and cost time. */
  private static final int MOST = 12;

  private final int[] at;
  private final double[] innovation;
  private final double[] fixed;
  private final double[] rep;
  private final double[] flight;
  private final RepShape shape;

  /**
   * Looks at a rep.
   *
   * @param positions of contacts 2 to n and of the landing [m], NaN where not seen
   * @param tape error variance of a measure [m2]
   */
  RepEvidence(RepShape shape, Belief today, double[] positions, double tape) {
    this.shape = shape;
    int seen = 0;
    for (double p : positions) {
      seen += Double.isNaN(p) ? 0 : 1;
    }
    int[] all = new int[seen];
    int k = 0;
    for (int c = 1; c <= shape.n; c++) {
      if (!Double.isNaN(positions[c - 1])) {
        all[k++] = c;
      }
    }
    int most = Math.min(seen, MOST);
    at = new int[most];
    innovation = new double[most];
    fixed = new double[most * most];
    rep = new double[most * most];
    flight = new double[most * most];
    for (int i = 0; i < most; i++) {
      int c = all[(i + 1) * seen / most - 1];
      at[i] = c;
      innovation[i] = positions[c - 1] - shape.base[c] - today.meanOf(shape.where[c]);
      double[] spread = today.times(shape.where[c]);
      for (int j = 0; j <= i; j++) {
        double known = Rows.dot(shape.where[at[j]], spread);
        fixed[i * most + j] = known + shape.placement + (i == j ? tape : 0);
        rep[i * most + j] = shape.repPart(c, at[j]);
        flight[i * most + j] = shape.flightPart(c, at[j]);
      }
    }
  }

  /**
   * Weighs.
   *
   * @param scatter what was believed of the scatter before
   */
  Weighed weigh(Scatter scatter) {
    double[][] log = new double[Scatter.STEPS][Scatter.STEPS];
    double[][] pairs = scatter.pairs();
    double most = Double.NEGATIVE_INFINITY;
    int n = innovation.length;
    double[] work = new double[n * n];
    double[] row = new double[n];
    for (int a = 0; a < Scatter.STEPS; a++) {
      double repFactor = Scatter.factor(a);
      for (int b = 0; b < Scatter.STEPS; b++) {
        if (pairs[a][b] > 1e-9) {
          log[a][b] = density(repFactor, Scatter.factor(b), null, 0, work, row);
          most = Math.max(most, log[a][b]);
        } else {
          log[a][b] = Double.NEGATIVE_INFINITY;
        }
      }
    }
    double other = abandoned(scatter, work, row);
    most = Math.max(most, other);
    double abandoned = ABANDONED * FastMath.exp(other - most);
    double whole = 0;
    for (int a = 0; a < Scatter.STEPS; a++) {
      for (int b = 0; b < Scatter.STEPS; b++) {
        double likelihood = (1 - ABANDONED) * FastMath.exp(log[a][b] - most);
        whole += pairs[a][b] * likelihood;
        log[a][b] = likelihood + abandoned;
      }
    }
    return new Weighed(whole / (whole + abandoned), log);
  }

  /**
   * What came out.
   *
   * @param whole chance that the rep was not abandoned
   * @param likelihood for each pair of factors, {@code [rep step][flight step]}
   */
  @SuppressWarnings("ArrayRecordComponent") // on its way to the scatter, never compared
  record Weighed(double whole, double[][] likelihood) {}

  private double abandoned(Scatter scatter, double[] work, double[] row) {
    int n = innovation.length;
    int breaks = Math.min(LAST_FLIGHTS, shape.n);
    double[] shorter = new double[n];
    double best = Double.NEGATIVE_INFINITY;
    double[] logs = new double[breaks];
    for (int k = 0; k < breaks; k++) {
      int from = shape.n - 1 - k;
      for (int i = 0; i < n; i++) {
        shorter[i] = at[i] <= from ? 0 : shape.base[at[i]] - shape.base[from];
      }
      logs[k] = density(scatter.mean(Scatter.REP), scatter.mean(Scatter.FLIGHT), shorter, SHORTER_SD * SHORTER_SD, work, row);
      best = Math.max(best, logs[k]);
    }
    double sum = 0;
    for (double l : logs) {
      sum += FastMath.exp(l - best) / breaks;
    }
    return best + FastMath.log(sum);
  }

  /** Logarithm of the normal density of what was seen, by Cholesky's factor; less the constant. */
  private double density(double repFactor, double flightFactor, double @Nullable [] shorter, double shorterVariance, double[] l, double[] z) {
    int n = innovation.length;
    double log = 0;
    for (int i = 0; i < n; i++) {
      double away = innovation[i] + (shorter == null ? 0 : SHORTER * shorter[i]);
      for (int j = 0; j <= i; j++) {
        int ij = i * n + j;
        double sum = fixed[ij] + repFactor * rep[ij] + flightFactor * flight[ij];
        if (shorter != null) {
          sum += shorterVariance * shorter[i] * shorter[j];
        }
        for (int k = 0; k < j; k++) {
          sum -= l[i * n + k] * l[j * n + k];
        }
        if (i == j) {
          double d = Math.sqrt(Math.max(sum, 1e-10));
          l[ij] = d;
          z[i] = away / d;
          log -= FastMath.log(d) + z[i] * z[i] / 2;
        } else {
          l[ij] = sum / l[j * n + j];
          away -= l[ij] * z[j];
        }
      }
    }
    return log;
  }
}
