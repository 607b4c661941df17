package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.special.Beta;

/**
 * Clean reps of the newest sessions against how many are needed. An athlete whose true clean share is one that must not
 * pass gets as many as needed, or more, at one look with at most the error of a whole stay divided by its sessions
 * (exact binomial tail), and so at any of the looks after its sessions with at most the error of the stay (Boole's
 * inequality, however the reps are spread). Sessions before the newest ones do not count: old faults fade.
 *
 * @param clean clean reps
 * @param reps reps looked at
 * @param sessions days they were done on
 * @param needed fewest clean ones of as many reps that pass; more than {@code reps} where none do
 */
record CleanCount(int clean, int reps, int sessions, int needed) {
  static final Source SOURCE =
      new Source("clean-count", "Fewest clean reps that a share which must not pass reaches by luck in one stay of twenty",
          "exact binomial tail over all looks of a stay; worked, seasons simulated", Standing.WORKED);

  /** Counts {@code reps}, which are in the order done. */
  static CleanCount of(List<GateRep> reps, GateRules.Clean rules) {
    List<List<GateRep>> days = new ArrayList<>(byDay(reps).values());
    List<GateRep> newest =
        days.subList(Math.max(0, days.size() - rules.sessions()), days.size()).stream().flatMap(List::stream).toList();
    int clean = (int) newest.stream().filter(GateRep::clean).count();
    return new CleanCount(clean, newest.size(), Math.min(days.size(), rules.sessions()), needed(newest.size(), rules));
  }

  static Map<LocalDate, List<GateRep>> byDay(List<GateRep> reps) {
    Map<LocalDate, List<GateRep>> days = new LinkedHashMap<>();
    reps.forEach(r -> days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(r));
    return days;
  }

  boolean met() {
    return clean >= needed;
  }

  /** Fewest clean ones of {@code reps} that pass; {@code reps + 1} where not even all would do. */
  static int needed(int reps, GateRules.Clean rules) {
    double look = rules.stayError() / GateRules.STAY_SESSIONS;
    int low = 0;
    int high = reps + 1;
    // more clean ones never turn enough into too few, so halving finds the fewest
    while (low < high) {
      int k = (low + high) / 2;
      if (tail(reps, k, rules.notShare()) <= look && BetaShare.seen(k, reps).chanceAbove(rules.shareAbove()) >= rules.shareChance()) {
        high = k;
      } else {
        low = k + 1;
      }
    }
    return low;
  }

  /** The chance of {@code k} clean reps or more among {@code n} at a true share {@code p}. */
  private static double tail(int n, int k, double p) {
    return k <= 0 ? 1 : Beta.regularizedBeta(p, k, n - k + 1.0);
  }
}
