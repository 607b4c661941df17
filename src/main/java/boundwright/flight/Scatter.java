package boundwright.flight;

import java.util.Arrays;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * How much wider or narrower than the prior says an athlete scatters: a factor on the prior variance of the day, of the rep
 * and of the single flight. What is believed of the logarithms of the three factors is normal, with its mean and
 * information; each measured rep moves it by one step of recursive maximum likelihood (Fisher scoring on the rep's own
 * innovations; general theory: Ljung and Söderström 1983, from memory). Nothing is kept of the reps. Immutable.
 */
final class Scatter {
  /** The day's deviation, shared by the reps of a day. */
  static final int DAY = 0;
  /** The rep's deviation, shared by its flights. */
  static final int REP = 1;
  /** Each flight's own. */
  static final int FLIGHT = 2;

  private static final int KINDS = 3;
  /** How far the logarithm of a factor may be from 0 before anything is measured (judgement: scatter x or / 1.6). */
  private static final double PRIOR_SD = 0.9;
  /** Who scatters much in one way mostly does in the others: correlation of the three logarithms (judgement). */
  private static final double PRIOR_TIE = 0.7;
  /** Longest step of a logarithm at one rep: a freak rep must not undo a season. */
  private static final double LONGEST_STEP = 0.7;
  private static final double LEAST = Math.log(0.05);
  private static final double MOST = Math.log(20);

  private final double[] log;
  private final double[] information;

  private Scatter(double[] log, double[] information) {
    this.log = log;
    this.information = information;
  }

  /** Before any rep: as wide as the prior says. */
  static Scatter prior() {
    double[] covariance = new double[KINDS * KINDS];
    for (int i = 0; i < KINDS; i++) {
      for (int j = 0; j < KINDS; j++) {
        covariance[i * KINDS + j] = PRIOR_SD * PRIOR_SD * (i == j ? 1 : PRIOR_TIE);
      }
    }
    RealMatrix inverse = MatrixUtils.inverse(square(covariance));
    double[] information = new double[KINDS * KINDS];
    for (int i = 0; i < KINDS; i++) {
      System.arraycopy(inverse.getRow(i), 0, information, i * KINDS, KINDS);
    }
    return new Scatter(new double[KINDS], information);
  }

  /** From {@link #figures}. */
  static Scatter of(double[] figures) {
    return new Scatter(Arrays.copyOf(figures, KINDS), Arrays.copyOfRange(figures, KINDS, KINDS + KINDS * KINDS));
  }

  /** How many figures {@link #figures} has. */
  static int size() {
    return KINDS + KINDS * KINDS;
  }

  /** All that is kept. */
  double[] figures() {
    double[] out = Arrays.copyOf(log, size());
    System.arraycopy(information, 0, out, KINDS, KINDS * KINDS);
    return out;
  }

  /** The factor used while learning: the most likely one. */
  double likely(int kind) {
    return Math.exp(log[kind]);
  }

  /** The mean factor, wider while little is known; used when forecasting. */
  double mean(int kind) {
    double variance = MatrixUtils.inverse(square(information)).getEntry(kind, kind);
    return Math.exp(log[kind] + variance / 2);
  }

  /**
   * After one more measured rep.
   *
   * @param innovation measured less expected, one per measured position [m]
   * @param covariance of the innovation with the factors as they are [m2]
   * @param parts how much of it each factor makes, in the order of the constants [m2]; null where it makes none
   */
  Scatter after(double[] innovation, double[][] covariance, @Nullable RealMatrix[] parts) {
    RealMatrix inverse = new CholeskyDecomposition(MatrixUtils.createRealMatrix(covariance), 1e-9, 0).getSolver().getInverse();
    RealVector weighted = inverse.operate(MatrixUtils.createRealVector(innovation));
    double[] slope = new double[KINDS];
    double[] more = information.clone();
    @Nullable RealMatrix[] scaled = new RealMatrix[KINDS];
    for (int k = 0; k < KINDS; k++) {
      RealMatrix part = parts[k];
      if (part != null) {
        scaled[k] = inverse.multiply(part);
        slope[k] = (weighted.dotProduct(part.operate(weighted)) - trace(scaled[k], null)) / 2;
      }
    }
    for (int j = 0; j < KINDS; j++) {
      for (int k = 0; k < KINDS; k++) {
        if (scaled[j] != null && scaled[k] != null) {
          more[j * KINDS + k] += trace(scaled[j], scaled[k]) / 2;
        }
      }
    }
    double[] step = MatrixUtils.inverse(square(more)).operate(slope);
    double[] moved = log.clone();
    for (int k = 0; k < KINDS; k++) {
      double by = Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step[k]));
      moved[k] = Math.max(LEAST, Math.min(MOST, log[k] + by));
    }
    return new Scatter(moved, more);
  }

  /** Trace of a, or of a b. */
  private static double trace(@Nullable RealMatrix a, @Nullable RealMatrix b) {
    double sum = 0;
    if (a != null) {
      int n = a.getRowDimension();
      for (int i = 0; i < n; i++) {
        if (b == null) {
          sum += a.getEntry(i, i);
        } else {
          for (int j = 0; j < n; j++) {
            sum += a.getEntry(i, j) * b.getEntry(j, i);
          }
        }
      }
    }
    return sum;
  }

  private static RealMatrix square(double[] flat) {
    RealMatrix m = MatrixUtils.createRealMatrix(KINDS, KINDS);
    for (int i = 0; i < KINDS; i++) {
      for (int j = 0; j < KINDS; j++) {
        m.setEntry(i, j, (flat[i * KINDS + j] + flat[j * KINDS + i]) / 2);
      }
    }
    return m;
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Scatter s && Arrays.equals(log, s.log) && Arrays.equals(information, s.information);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(log);
  }
}
