package boundwright.readiness;

import java.util.List;

/**
 * Clean reps of the newest sessions against how many are needed. Sessions before the newest ones do not count: old faults
 * of a learner fade.
 *
 * @param clean clean reps
 * @param reps reps looked at
 * @param sessions days they were done on
 * @param needed fewest clean ones of as many reps that pass; more than {@code reps} where none do
 */
record CleanCount(int clean, int reps, int sessions, int needed) {
  /** Counts the newest of {@code days}, which are in order. */
  static CleanCount of(List<LookedDay> days, CleanNeed need) {
    List<LookedDay> newest = LookedDay.newest(days, need.rules().sessions());
    int reps = newest.stream().mapToInt(LookedDay::size).sum();
    return new CleanCount(newest.stream().mapToInt(LookedDay::clean).sum(), reps, newest.size(), need.of(reps));
  }

  boolean met() {
    return clean >= needed;
  }
}
