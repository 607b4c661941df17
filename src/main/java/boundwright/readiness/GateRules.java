package boundwright.readiness;

import boundwright.quantity.RefusedException;

/**
 * What the gate asks; settings (standing of the defaults: judgement; their operating characteristic is simulated, see
 * {@code docs/gate.md}).
 *
 * @param days how far back judged reps count
 * @param reps judged reps needed in those days
 * @param shareAbove the true clean share that must be likely ...
 * @param shareChance ... with at least this chance
 * @param passDays days on which the share must have been reached
 * @param passDayReps judged reps that make such a day
 * @param passDayShare clean share of such a day
 * @param longerChance chance that flights are longer than at the rung below
 * @param fade most that the landing may shrink over ten reps of a day, as a share
 * @param lateShare clean share of the later half of each day's reps, where lengths are few
 * @param goBackReps judged reps before the gate may send an athlete back
 */
public record GateRules(
    int days,
    int reps,
    double shareAbove,
    double shareChance,
    int passDays,
    int passDayReps,
    double passDayShare,
    double longerChance,
    double fade,
    double lateShare,
    int goBackReps) {
  /** The defaults. */
  public static final GateRules DEFAULT = new GateRules(21, 12, 0.75, 0.80, 2, 4, 0.75, 0.90, 0.03, 0.70, 8);

  /** Refuses rules that ask for nothing. */
  public GateRules {
    if (days < 1 || reps < 1 || passDays < 1 || passDayReps < 1 || goBackReps < 1) {
      throw new RefusedException("The gate's days and reps are at least 1 each; one of them was less. The defaults are 21 days and 12 reps.");
    }
    for (double share : new double[] {shareAbove, shareChance, passDayShare, longerChance, lateShare}) {
      BetaShare.checkShare(share);
    }
  }
}
