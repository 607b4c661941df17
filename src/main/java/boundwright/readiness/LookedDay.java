package boundwright.readiness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The reps of one day that were looked at.
 *
 * @param reps in the order done
 * @param clean how many of them were clean
 */
record LookedDay(List<GateRep> reps, int clean) {
  /** The days of {@code reps}, which are in the order done. */
  static List<LookedDay> of(List<GateRep> reps) {
    Map<LocalDate, List<GateRep>> days = new LinkedHashMap<>();
    reps.forEach(r -> days.computeIfAbsent(r.date(), d -> new ArrayList<>()).add(r));
    return days.values().stream().map(LookedDay::new).toList();
  }

  private LookedDay(List<GateRep> reps) {
    this(reps, (int) reps.stream().filter(GateRep::clean).count());
  }

  /** The newest {@code most} of {@code days}, which are in order. */
  static List<LookedDay> newest(List<LookedDay> days, int most) {
    return days.subList(Math.max(0, days.size() - most), days.size());
  }

  int size() {
    return reps.size();
  }

  /** Whether there were enough reps, enough of them clean. */
  boolean good(GateRules.Clean rules) {
    return size() >= rules.passDayReps() && clean >= rules.passDayShare() * size();
  }
}
