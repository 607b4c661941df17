package boundwright.flight;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What several athletes, each known so far, say of one more: their common middle and how far they lie apart. An athlete is
 * normal around the squad's middle; half of the neutral prior's variance is taken to be that middle's (how far athletes
 * at all lie from the nominal), half the distance between athletes, and both are learned from the others (empirical Bayes,
 * closed form: Gauss's for the middle, {@value #ROUNDS} rounds of expectation and maximisation for the distance, which starts as if
 * {@value #WORTH} athletes had shown it).
 */
final class Pooled {
  private static final double COMMON = 0.5;
  private static final double WORTH = 8;
  private static final int ROUNDS = 3;
  /** Nobody is known better than to a thousandth of the neutral prior's spread: after thousands of reps a variance is 0 in numbers. */
  private static final double FLOOR = 1e-6;
  /** Part of the neutral prior that keeps a covariance from being singular. */
  private static final double RIDGE = 1e-7;

  private final RealMatrix apart;
  private final RealMatrix commonInformation;
  private final List<RealMatrix> information;
  private final List<RealVector> pull;
  private final RealVector middle;

  /**
   * Pools.
   *
   * @param mean of the neutral prior
   * @param covariance of the neutral prior
   * @param means what is known of each athlete from the neutral prior and their own reps
   * @param covariances likewise
   */
  Pooled(double[] mean, double[][] covariance, List<double[]> means, List<double[][]> covariances) {
    middle = MatrixUtils.createRealVector(mean);
    RealMatrix prior = MatrixUtils.createRealMatrix(covariance);
    commonInformation = MatrixUtils.inverse(prior.scalarMultiply(COMMON));
    RealMatrix priorInformation = MatrixUtils.inverse(prior);
    List<RealMatrix> own = new ArrayList<>();
    List<RealVector> at = new ArrayList<>();
    for (int i = 0; i < means.size(); i++) {
      RealMatrix known = MatrixUtils.inverse(floored(covariances.get(i), prior));
      own.add(notNegative(known.subtract(priorInformation)));
      at.add(known.operate(MatrixUtils.createRealVector(means.get(i)).subtract(middle)));
    }
    RealMatrix between = prior.scalarMultiply(1 - COMMON);
    RealMatrix first = between;
    information = new ArrayList<>();
    pull = new ArrayList<>();
    for (int round = 0; round <= ROUNDS; round++) {
      information.clear();
      pull.clear();
      RealMatrix one = MatrixUtils.createRealIdentityMatrix(mean.length);
      for (int i = 0; i < own.size(); i++) {
        RealMatrix seen = MatrixUtils.inverse(one.add(own.get(i).multiply(between)));
        information.add(symmetric(seen.multiply(own.get(i))));
        pull.add(seen.operate(at.get(i)));
      }
      if (round < ROUNDS) {
        between = spreadAgain(first, between, own, at, shift(-1));
      }
    }
    apart = between;
  }

  private static RealMatrix floored(double[][] covariance, RealMatrix prior) {
    RealMatrix out = MatrixUtils.createRealMatrix(covariance).add(prior.scalarMultiply(RIDGE));
    for (int i = 0; i < covariance.length; i++) {
      out.setEntry(i, i, Math.max(out.getEntry(i, i), FLOOR * prior.getEntry(i, i)));
    }
    return out;
  }

  /** Distance between athletes once more, given the squad's middle. */
  private static RealMatrix spreadAgain(
      RealMatrix first, RealMatrix between, List<RealMatrix> own, List<RealVector> at, RealVector shift) {
    RealMatrix sum = first.scalarMultiply(WORTH);
    RealMatrix inverse = MatrixUtils.inverse(between);
    for (int i = 0; i < own.size(); i++) {
      RealMatrix left = MatrixUtils.inverse(inverse.add(own.get(i)));
      RealVector off = left.operate(at.get(i).subtract(own.get(i).operate(shift)));
      sum = sum.add(left).add(off.outerProduct(off));
    }
    return symmetric(sum.scalarMultiply(1 / (WORTH + own.size())));
  }

  private RealMatrix total(int without) {
    RealMatrix sum = commonInformation;
    for (int i = 0; i < information.size(); i++) {
      if (i != without) {
        sum = sum.add(information.get(i));
      }
    }
    return sum;
  }

  private RealVector shift(int without) {
    RealVector sum = MatrixUtils.createRealVector(new double[middle.getDimension()]);
    for (int i = 0; i < pull.size(); i++) {
      if (i != without) {
        sum = sum.add(pull.get(i));
      }
    }
    return MatrixUtils.inverse(total(without)).operate(sum);
  }

  /** Middle for one more athlete; {@code without} is left out of the pool, -1 for none. */
  double[] mean(int without) {
    return middle.add(shift(without)).toArray();
  }

  /** Covariance for one more athlete: the distance between athletes, and how well the middle is known. */
  double[][] covariance(int without) {
    return symmetric(apart.add(MatrixUtils.inverse(total(without)))).getData();
  }

  /** Time that passes can make an athlete less known than the prior in some direction: that is no evidence. */
  private static RealMatrix notNegative(RealMatrix m) {
    EigenDecompositionSymmetric e = new EigenDecompositionSymmetric(symmetric(m));
    double[] values = e.getEigenvalues();
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(0, values[i]);
    }
    return symmetric(e.getV().multiply(MatrixUtils.createRealDiagonalMatrix(values)).multiply(e.getVT()));
  }

  private static RealMatrix symmetric(RealMatrix m) {
    return m.add(m.transpose()).scalarMultiply(0.5);
  }
}
