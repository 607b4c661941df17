package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.RefusedException;
import org.hipparchus.distribution.discrete.BinomialDistribution;

/**
 * The rule of thumb '{@code k} good ones of {@code n}', kept to show what it lets through: '8 of 10' passes an athlete
 * whose true share is .7 in 38 sessions of 100 (worked). Three sessions running bring that to 6.
 *
 * @param k good reps asked for, 0 to {@code n}
 * @param n reps in a session, 1 to 1000
 */
public record NaiveRule(int k, int n) {
  /** Where the arithmetic comes from. */
  public static final Source SOURCE = Sources.BETA_SHARE;

  /** Refuses counts that make no rule. */
  public NaiveRule {
    if (n < 1 || n > 1000 || k < 0 || k > n) {
      throw new RefusedException("A rule '" + k + " of " + n + "' cannot be: 1 to 1000 reps, and no more good ones than reps. Try 8 of 10.");
    }
  }

  /** The chance that an athlete whose true share is {@code p} (0 to 1) passes in one session. */
  public double passChance(double p) {
    BetaShare.checkShare(p);
    return k == 0 ? 1 : 1 - new BinomialDistribution(n, p).cumulativeProbability(k - 1);
  }

  /** The same for {@code sessions} (1 or more) sessions running, each on its own. */
  public double passChance(double p, int sessions) {
    if (sessions < 1) {
      throw new RefusedException("Sessions running are 1 or more; this was " + sessions + ".");
    }
    return Math.pow(passChance(p), sessions);
  }
}
