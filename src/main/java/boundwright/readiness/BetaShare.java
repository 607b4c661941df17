package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import org.hipparchus.distribution.continuous.BetaDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.util.CombinatoricsUtils;

/**
 * What is believed of a true share p, such as that of clean reps, after {@code good} and {@code bad} were seen: an even
 * start, Beta(1,1), brought forward by Bayes' rule to Beta(1 + good, 1 + bad). Reps are taken as exchangeable: a share
 * that improves from day to day is lagged by it, on the safe side.
 *
 * @param good reps that were good, at least 0
 * @param bad reps that were not, at least 0
 */
public record BetaShare(int good, int bad) {
  /** Where the arithmetic comes from. */
  public static final Source SOURCE = Sources.BETA_SHARE;

  /** Refuses negative counts. */
  public BetaShare {
    if (good < 0 || bad < 0) {
      throw new RefusedException("Counts of reps are 0 or more; these were " + good + " good and " + bad + " bad. Count again.");
    }
  }

  /** {@code good} out of {@code of} reps. */
  public static BetaShare seen(int good, int of) {
    return new BetaShare(good, of - good);
  }

  /** The same share after one more rep. */
  public BetaShare and(boolean wasGood) {
    return wasGood ? new BetaShare(good + 1, bad) : new BetaShare(good, bad + 1);
  }

  /** Reps seen. */
  public int reps() {
    return good + bad;
  }

  /** Expected share, 0 to 1. */
  public double mean() {
    return (good + 1.0) / (good + bad + 2.0);
  }

  /** The chance that the true share lies above {@code share} (0 to 1). */
  public double chanceAbove(double share) {
    checkShare(share);
    return 1 - Beta.regularizedBeta(share, good + 1.0, bad + 1.0);
  }

  /** The share with its 5, 50 and 95 % points. */
  public Estimate estimate() {
    BetaDistribution d = new BetaDistribution(good + 1.0, bad + 1.0);
    return new Estimate(d.inverseCumulativeProbability(0.05), d.inverseCumulativeProbability(0.5), d.inverseCumulativeProbability(0.95));
  }

  /**
   * The chance that at least {@code atLeast} of the next {@code of} reps will be good (beta-binomial).
   *
   * @param atLeast 0 or fewer is certain; more than {@code of} is impossible
   * @param of 0 to 10 000 reps
   */
  public double chanceOfNext(int atLeast, int of) {
    if (of < 0 || of > 10_000) {
      throw new RefusedException("A look ahead over " + of + " reps is out of range: 0 to 10000. Ask for fewer.");
    }
    double sum = 0;
    double log = Beta.logBeta(good + 1.0, bad + 1.0);
    for (int k = Math.max(0, atLeast); k <= of; k++) {
      sum += Math.exp(CombinatoricsUtils.binomialCoefficientLog(of, k) + Beta.logBeta(good + 1.0 + k, bad + 1.0 + of - k) - log);
    }
    return Math.min(1, sum);
  }

  static void checkShare(double share) {
    if (!(share >= 0 && share <= 1)) {
      throw new RefusedException("A share of " + share + " is out of range: 0 to 1. 80 % is written 0.8.");
    }
  }
}
