package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hipparchus.special.Erf;

/**
 * Whether landings shrink over the reps of a day, as a trend with its error: Kendall's count of longer less shorter later
 * landings, within each day and summed over days, whose variance without a trend is known whatever the scatter (the
 * seasonal form: Hirsch, Slack and Smith 1982, Water Resources Research 18:107-121; memory), and the middle of all slopes
 * between two landings of a day as its size (Sen 1968; memory). A shorter last landing can only move both down: an error
 * that was estimated from the lengths would grow with it and could hide the shrinking.
 *
 * @param overTenReps relative change of the landing over ten reps, negative when it shrinks
 * @param z the count over its standard deviation, a whole step nearer to 0 (continuity)
 * @param landings how many measured landings stand behind it
 * @param days over how many days
 */
record Fade(double overTenReps, double z, int landings, int days) {
  static final Source SOURCE =
      new Source("fade", "Whether landings shrink within a day: Kendall's count summed over days",
          "Hirsch, Slack and Smith 1982; Sen 1968", Standing.MEMORY);

  private static final int FEWEST = 6;
  private static final int FEWEST_A_DAY = 3;

  /** Whether enough landings were measured to speak of it. */
  boolean known() {
    return landings >= FEWEST;
  }

  /** Whether they shrink, surely, and by more than is allowed. */
  boolean shrinks(GateRules.Fading rules) {
    return known() && chanceByLuck() <= 1 - rules.sure() && overTenReps < -rules.most();
  }

  /** The chance of as much shrinking if there were none (one-sided, normal). */
  double chanceByLuck() {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  static Fade of(List<LookedDay> looked) {
    List<Double> slopes = new ArrayList<>();
    double count = 0;
    double variance = 0;
    int landings = 0;
    int days = 0;
    for (LookedDay d : looked) {
      List<GateRep> day = d.reps();
      List<Integer> measured = new ArrayList<>();
      for (int i = 0; i < day.size(); i++) {
        if (!Double.isNaN(day.get(i).length())) {
          measured.add(i);
        }
      }
      int n = measured.size();
      if (n < FEWEST_A_DAY) {
        continue;
      }
      landings += n;
      days++;
      variance += n * (n - 1.0) * (2 * n + 5) / 18;
      for (int a = 0; a < n; a++) {
        for (int b = a + 1; b < n; b++) {
          double change = day.get(measured.get(b)).length() - day.get(measured.get(a)).length();
          count += Math.signum(change);
          slopes.add(change / (measured.get(b) - measured.get(a)));
        }
      }
    }
    double z = variance == 0 ? 0 : Math.signum(count) * Math.max(0, Math.abs(count) - 1) / Math.sqrt(variance);
    return new Fade(10 * middle(slopes), z, landings, days);
  }

  private static double middle(List<Double> values) {
    if (values.isEmpty()) {
      return 0;
    }
    Collections.sort(values);
    int n = values.size();
    return (values.get((n - 1) / 2) + values.get(n / 2)) / 2;
  }
}
