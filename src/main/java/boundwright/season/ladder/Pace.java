package boundwright.season.ladder;

import boundwright.inference.Normal;
import org.hipparchus.special.Gamma;

/**
 * How many sessions one athlete needs at one approach, as far as it is known. The logarithm has a part that lasts (the squad's and the
 * athlete's own pace, not known exactly; normal) and a part of this stay alone (gamma of shape k). Both together are written as one
 * gamma distribution with the same mean and variance of the logarithm, of shape at least 1: so the chance of being ready within the next
 * sessions never falls because more were spent.
 *
 * @param logMean of the part that lasts [log sessions]
 * @param lastingSd of the part that lasts
 * @param stayShape shape of one stay about it
 * @param shape of both together, at least 1
 * @param logScale logarithm of the mean of both together
 * @param stays of this squad that were learned from
 * @param ownStays those of the athlete among them
 */
public record Pace(double logMean, double lastingSd, double stayShape, double shape, double logScale, int stays, int ownStays) {
  private static final double LEAST_CHANCE = 1e-9;
  private static final double NONE_LEFT = 1e-7;

  /** From the lasting part (mean of the logarithm of the mean, its variance) and the shape of a stay about it. */
  static Pace of(double logMean, double variance, double stayShape, int stays, int ownStays) {
    double expected = logMean + Gamma.digamma(stayShape) - Math.log(stayShape);
    double shape = shapeOf(variance + GammaStay.logVariance(stayShape));
    return new Pace(logMean, Math.sqrt(variance), stayShape, shape, expected - Gamma.digamma(shape) + Math.log(shape), stays, ownStays);
  }

  /** The shape whose logarithm has this variance, 1 to 200: it falls with the shape, so by halving. */
  static double shapeOf(double variance) {
    double low = 1;
    double high = 200;
    if (variance >= GammaStay.logVariance(low)) {
      return low;
    }
    for (int i = 0; i < 50; i++) {
      double mid = Math.sqrt(low * high);
      if (GammaStay.logVariance(mid) > variance) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.sqrt(low * high);
  }

  /** Chance that more sessions than this are needed in all. */
  double over(double sessions) {
    return GammaStay.over(sessions, shape, logScale);
  }

  /**
   * The chance of being ready.
   *
   * @param spent sessions spent there without, at least 0
   * @param by sessions spent by then, not fewer
   * @return 0 to 1
   */
  public double chance(double spent, double by) {
    double there = over(spent);
    if (by <= spent || there < Double.MIN_NORMAL) {
      return by <= spent ? 0 : 1;
    }
    return Math.max(0, 1 - over(by) / there);
  }

  /** The chance of being ready within 0, 1, 2 ... {@code most} more sessions. */
  double[] chances(double spent, int most) {
    double[] out = new double[most + 1];
    double there = over(spent);
    double left = 1;
    for (int n = 1; n <= most; n++) {
      left = left < NONE_LEFT || there < Double.MIN_NORMAL ? 0 : Math.min(left, over(spent + n) / there);
      out[n] = 1 - left;
    }
    return out;
  }

  /** Sessions in all within which a share {@code p} of such athletes is ready, given those spent without. */
  public double sessions(double spent, double p) {
    double there = Math.max(over(spent), LEAST_CHANCE);
    return Math.max(spent, GammaStay.quantile(Math.min(1 - LEAST_CHANCE, 1 - (1 - p) * there), shape, logScale));
  }

  /**
   * For simulated seasons: the sessions that one such athlete needs. The same {@code lasting} at all their approaches makes a slow
   * learner slow everywhere; the same numbers in two runs make them comparable.
   *
   * @param spent sessions spent without
   * @param lasting uniform on 0 to 1, one for each athlete and season
   * @param stay uniform on 0 to 1, one for each stay
   */
  public double drawn(double spent, double lasting, double stay) {
    double eta = logMean + lastingSd * Normal.quantile(inside(lasting));
    double there = Math.max(GammaStay.over(spent, stayShape, eta), LEAST_CHANCE);
    return Math.max(spent, GammaStay.quantile(inside(1 - (1 - stay) * there), stayShape, eta));
  }

  private static double inside(double p) {
    return Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, p));
  }
}
