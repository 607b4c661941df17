package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.special.Beta;

/**
 * How many clean reps are needed. An athlete whose true clean share is one that must not pass gets as many, or more, at
 * one look with at most the error of a whole stay divided by its sessions (exact binomial tail), and so at any of the looks
 * after its sessions with at most the error of the stay (Boole's inequality, however the reps are spread over them).
 */
final class CleanNeed {
  static final Source SOURCE =
      new Source("clean-count", "Fewest clean reps that a share which must not pass reaches by luck in one stay of twenty",
          "exact binomial tail over all looks of a stay; seasons simulated", Standing.WORKED);

  private final GateRules.Clean rules;
  private final ConcurrentHashMap<Integer, Integer> known = new ConcurrentHashMap<>();

  CleanNeed(GateRules.Clean rules) {
    this.rules = rules;
  }

  GateRules.Clean rules() {
    return rules;
  }

  /** Fewest clean ones of {@code reps} that pass; {@code reps + 1} where not even all would do. */
  int of(int reps) {
    return known.computeIfAbsent(reps, this::search);
  }

  /** Fewest reps that can pass, all clean. */
  int fewest() {
    int n = 1;
    while (of(n) > n) {
      n++;
    }
    return n;
  }

  private int search(int reps) {
    double look = rules.stayError() / GateRules.STAY_SESSIONS;
    int low = 0;
    int high = reps + 1;
    // more clean ones never turn enough into too few, so halving finds the fewest
    while (low < high) {
      int k = (low + high) / 2;
      if (tail(reps, k) <= look && BetaShare.seen(k, reps).chanceAbove(rules.shareAbove()) >= rules.shareChance()) {
        high = k;
      } else {
        low = k + 1;
      }
    }
    return low;
  }

  /** The chance of {@code k} clean reps or more among {@code n} at the share that must not pass. */
  private double tail(int n, int k) {
    return k <= 0 ? 1 : Beta.regularizedBeta(rules.notShare(), k, n - k + 1.0);
  }
}
