package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.List;
import org.hipparchus.distribution.discrete.HypergeometricDistribution;

/**
 * Whether an athlete has clearly lost what they could do from the same approach: the newest sessions against the earlier
 * ones, by Fisher's exact test (the chance of as few clean reps among the newest if nothing had changed) with half of
 * the chance of the very outcome (mid-p, since the count jumps in whole reps; Lancaster 1961, memory). An athlete who was
 * never better is not sent back by it, and a learner is not either.
 *
 * @param recentClean clean among the newest
 * @param recent reps of the newest sessions
 * @param earlierClean clean among the earlier
 * @param earlier reps of the earlier sessions
 * @param legReps reps of the newest two sessions
 * @param legFaulty those with a fault that loads a leg
 */
record CleanLoss(int recentClean, int recent, int earlierClean, int earlier, int legReps, int legFaulty) {
  static final Source SOURCE =
      new Source("clean-loss", "Newest reps against the athlete's own earlier ones from the same approach",
          "Fisher's exact test, mid-p; seasons simulated", Standing.MEMORY);

  private static final int LEG_SESSIONS = 2;
  private static final double LEG_SURE = 0.95;

  /** Counts {@code reps}, which are in the order done. */
  static CleanLoss of(List<GateRep> reps, GateRules.Loss rules) {
    List<LookedDay> days = LookedDay.of(reps);
    List<LookedDay> recent = LookedDay.newest(days, rules.sessions());
    List<LookedDay> earlier = days.subList(0, days.size() - recent.size());
    List<GateRep> legs = LookedDay.newest(days, LEG_SESSIONS).stream().flatMap(d -> d.reps().stream()).toList();
    return new CleanLoss(clean(recent), reps(recent), clean(earlier), reps(earlier), legs.size(),
        (int) legs.stream().filter(GateRep::loadsLeg).count());
  }

  private static int clean(List<LookedDay> days) {
    return days.stream().mapToInt(LookedDay::clean).sum();
  }

  private static int reps(List<LookedDay> days) {
    return days.stream().mapToInt(LookedDay::size).sum();
  }

  /** Whether fewer are clean than before, beyond what luck does in a whole stay, and fewer than a share that must not pass. */
  boolean clear(GateRules rules) {
    GateRules.Loss loss = rules.loss();
    return recent >= loss.reps() && earlier >= loss.reps() && recentClean <= rules.clean().notShare() * recent
        && byLuck() <= loss.error() / looks(loss);
  }

  /** Looks of a stay at which a loss can be told: there must be newest sessions and earlier ones. */
  private static int looks(GateRules.Loss rules) {
    return Math.max(1, GateRules.STAY_SESSIONS - rules.sessions() - 1);
  }

  /** Whether faults that load a leg are the rule rather than the exception. */
  boolean loadsLegs(GateRules.Loss rules) {
    return legReps >= rules.reps() && BetaShare.seen(legFaulty, legReps).chanceAbove(rules.legFaults()) >= LEG_SURE;
  }

  /** The chance of so few clean reps among the newest if nothing had changed (mid-p). */
  double byLuck() {
    HypergeometricDistribution d = new HypergeometricDistribution(recent + earlier, recentClean + earlierClean, recent);
    return d.cumulativeProbability(recentClean) - d.probability(recentClean) / 2;
  }
}
