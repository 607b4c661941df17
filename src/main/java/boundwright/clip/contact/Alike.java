package boundwright.clip.contact;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * The toe-offs of one rep, judged together. How a foot leaves, and how far the hips are then
 * ahead of it, is alike in the contacts of a rep but unknown before: each contact's values scatter about a mean of the rep,
 * the mean has a wide prior. Mean and scatter are found by expectation and maximisation (EM) over what each contact's
 * {@link Corner} says at every time, so a contact that tells little weighs little and nothing is counted twice. The error
 * of the mean is common to all contacts and is carried into the error of every time (Laplace).
 */
final class Alike {
  /** So many contacts' worth is believed of the scatter given beforehand (judgement). */
  private static final double BELIEF = 4;
  /** The event is at most so far from the coarse course, standard deviation [s]; wide, as the same samples gave both. */
  private static final double GUESS_SD_S = 0.02;
  /** Enough for the means to settle. */
  private static final int ROUNDS = 40;

  private final List<Case> cases;
  private final double[] priorMean;
  private final double[] priorSd;
  private final double[] scatterBefore;
  private final double leadScatterBefore;
  private final int size;
  /** Means of the rep; the last is the lead. */
  private double[] mean;
  private double[] scatter;
  private double[][] covariance = new double[0][0];

  /**
   * One contact's toe-off.
   *
   * @param corner what its samples say
   * @param guess where the coarse course saw it [s]
   * @param lead how far the hips are ahead of the foot if it was at a time [m], NaN if unknown
   */
  record Case(Corner corner, double guess, DoubleUnaryOperator lead) {}

  private Alike(List<Case> cases, double[][] means, double[] scatter, double leadScatter) {
    this.cases = cases;
    size = means.length;
    priorMean = Arrays.stream(means).mapToDouble(p -> p[0]).toArray();
    priorSd = Arrays.stream(means).mapToDouble(p -> p[1]).toArray();
    scatterBefore = scatter;
    leadScatterBefore = leadScatter;
    mean = Arrays.copyOf(priorMean, size + 1);
    this.scatter = Arrays.copyOf(scatter, size + 1);
    this.scatter[size] = leadScatter;
    mean[size] = Double.NaN;
  }

  /**
   * Learns what the cases have in common.
   *
   * @param cases at least one
   * @param means for every coefficient the mean of a rep and its standard deviation before anything was seen
   * @param scatter how much the contacts of a rep differ, standard deviation
   * @param leadScatter the same of the lead [m]
   */
  static Alike of(List<Case> cases, double[][] means, double[] scatter, double leadScatter) {
    Alike out = new Alike(List.copyOf(cases), means, scatter, leadScatter);
    out.learn();
    return out;
  }

  /** A contact's posterior over the grid and the expected values under it. */
  @SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
  private record Expected(EventFit time, double[] value, double[] square, double lead, double leadSquare) {}

  private Expected expect(Case c, double[] m, double[] s) {
    int n = c.corner.size();
    double[] cost = new double[n];
    Corner.At[] at = new Corner.At[n];
    double[] lead = new double[n];
    double[] differ = Arrays.copyOf(s, size);
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < n; k++) {
      at[k] = c.corner.at(k, m, differ);
      double t = c.corner.time(k);
      double off = (t - c.guess) / GUESS_SD_S;
      lead[k] = c.lead.applyAsDouble(t);
      double by = !Double.isNaN(m[size]) && !Double.isNaN(lead[k]) ? (lead[k] - m[size]) / s[size] : 0;
      cost[k] = at[k].cost() + 0.5 * off * off + 0.5 * by * by;
      least = Math.min(least, cost[k]);
    }
    double sum = 0;
    double one = 0;
    double two = 0;
    double leadOne = 0;
    double leadTwo = 0;
    double[] value = new double[size];
    double[] square = new double[size];
    for (int k = 0; k < n; k++) {
      double p = Math.exp(least - cost[k]);
      double t = c.corner.time(k) - c.guess;
      sum += p;
      one += p * t;
      two += p * t * t;
      leadOne += p * lead[k];
      leadTwo += p * lead[k] * lead[k];
      for (int i = 0; i < size; i++) {
        double v = at[k].mean()[i];
        value[i] += p * v;
        square[i] += p * (v * v + at[k].variance()[i]);
      }
    }
    double total = sum;
    double t = one / sum;
    double variance = Math.max(Corner.GRID_S * Corner.GRID_S / 12, two / sum - t * t);
    return new Expected(
        new EventFit(c.guess + t, Math.sqrt(variance)), Arrays.stream(value).map(v -> v / total).toArray(),
        Arrays.stream(square).map(v -> v / total).toArray(), leadOne / sum, leadTwo / sum);
  }

  private void learn() {
    for (int round = 0; round < ROUNDS; round++) {
      List<Expected> all = new ArrayList<>();
      for (Case c : cases) {
        all.add(expect(c, mean, scatter));
      }
      for (int i = 0; i < size; i++) {
        int col = i;
        double w = 1 / (scatter[i] * scatter[i]);
        double w0 = 1 / (priorSd[i] * priorSd[i]);
        double sum = all.stream().mapToDouble(e -> e.value[col]).sum();
        mean[i] = (w0 * priorMean[i] + w * sum) / (w0 + w * all.size());
        double about = all.stream().mapToDouble(e -> e.square[col] - 2 * mean[col] * e.value[col] + mean[col] * mean[col]).sum();
        scatter[i] = Math.sqrt((BELIEF * scatterBefore[i] * scatterBefore[i] + about) / (BELIEF + all.size()));
      }
      double[] known = all.stream().mapToDouble(Expected::lead).filter(v -> !Double.isNaN(v)).toArray();
      if (known.length > 0) {
        double m = Arrays.stream(known).average().orElseThrow();
        mean[size] = m;
        double about =
            all.stream().filter(e -> !Double.isNaN(e.lead)).mapToDouble(e -> e.leadSquare - 2 * m * e.lead + m * m).sum();
        scatter[size] = Math.sqrt((BELIEF * leadScatterBefore * leadScatterBefore + about) / (BELIEF + known.length));
      }
    }
    covariance = covariance();
  }

  /** Slope of the log-likelihood of all cases over the means of the rep (Fisher's identity). */
  private double[] slope(double[] m) {
    double[] out = new double[m.length];
    for (int i = 0; i < size; i++) {
      out[i] = (priorMean[i] - m[i]) / (priorSd[i] * priorSd[i]);
    }
    for (Case c : cases) {
      Expected e = expect(c, m, scatter);
      for (int i = 0; i < size; i++) {
        out[i] += (e.value[i] - m[i]) / (scatter[i] * scatter[i]);
      }
      if (!Double.isNaN(e.lead)) {
        out[size] += (e.lead - m[size]) / (scatter[size] * scatter[size]);
      }
    }
    return out;
  }

  private double[][] covariance() {
    int n = Double.isNaN(mean[size]) ? size : size + 1;
    double[][] curve = new double[n][n];
    for (int i = 0; i < n; i++) {
      double h = 0.2 * scatter[i];
      double[] up = slope(moved(i, h));
      double[] down = slope(moved(i, -h));
      for (int j = 0; j < n; j++) {
        curve[i][j] = (down[j] - up[j]) / (2 * h);
      }
    }
    RealMatrix m = new Array2DRowRealMatrix(curve, false);
    RealMatrix even = m.add(m.transpose()).scalarMultiply(0.5);
    return new LUDecomposition(even).getSolver().getInverse().getData();
  }

  private double[] moved(int i, double by) {
    double[] out = mean.clone();
    out[i] += by;
    return out;
  }

  /** When a case was, knowing what the rep's contacts have in common, the lead among it. */
  EventFit time(Case c) {
    EventFit t = expect(c, mean, scatter).time;
    double[] by = new double[covariance.length];
    for (int i = 0; i < by.length; i++) {
      double h = 0.2 * scatter[i];
      EventFit up = expect(c, moved(i, h), scatter).time;
      EventFit down = expect(c, moved(i, -h), scatter).time;
      by[i] = (up.time() - down.time()) / (2 * h);
    }
    double common = 0;
    for (int i = 0; i < by.length; i++) {
      for (int j = 0; j < by.length; j++) {
        common += by[i] * covariance[i][j] * by[j];
      }
    }
    return new EventFit(t.time(), Math.hypot(t.sd(), Math.sqrt(Math.max(0, common))));
  }

  /** Where the point of a corner stands, forward [m], before anything was learned. */
  static double stands(Corner corner, double[][] means, double[] scatter) {
    double[] m = Arrays.stream(means).mapToDouble(p -> p[0]).toArray();
    return corner.at(corner.size() / 2, m, scatter).place();
  }
}
