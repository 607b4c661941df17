package boundwright.clip.reading;

import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the sequence begins among the contacts of a clip.
 *
 * @param first number of the contact from the mark, from 0; contacts before it belong to the run-up
 * @param sequence what was done, from there on
 * @param wrongFeet how many contacts differ from the asked sequence; 0 when none was asked
 * @param complete whether as many contacts were seen as were asked, or none was asked
 * @param sure whether another beginning would have fitted clearly worse
 */
public record SequenceMatch(int first, Sequence sequence, int wrongFeet, boolean complete, boolean sure) {
  /** A wrong foot costs as much as this much doubt about run-up steps. */
  private static final double WRONG_FOOT = 3;
  /** Flights of running steps and of bounds part near here [s] (judgement: sprint flights are about 0.10 to 0.14 s). */
  private static final double STEP_OR_BOUND_S = 0.17;

  /**
   * Finds the beginning.
   *
   * @param feet of the contacts on one foot, in order; at least one
   * @param flight_s time of the flight after each; NaN where unknown
   * @param landed whether the landing follows the last
   * @param asked the sequence of the card, or null
   */
  public static SequenceMatch of(List<Foot> feet, double[] flight_s, boolean landed, @Nullable Sequence asked) {
    int n = feet.size();
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    double second = Double.POSITIVE_INFINITY;
    for (int first = 0; first < n; first++) {
      double cost = cost(feet, flight_s, landed, asked, first);
      if (cost < least) {
        second = least;
        least = cost;
        best = first;
      } else {
        second = Math.min(second, cost);
      }
    }
    int end = asked == null ? n : Math.min(n, best + asked.size());
    List<Foot> done = feet.subList(best, end);
    int wrong = 0;
    for (int i = 0; asked != null && i < done.size(); i++) {
      wrong += done.get(i) == asked.contacts().get(i) ? 0 : 1;
    }
    boolean complete = asked == null || done.size() == asked.size();
    return new SequenceMatch(best, Sequence.of(done), wrong, complete, second - least > 1);
  }

  private static double cost(List<Foot> feet, double[] flight_s, boolean landed, @Nullable Sequence asked, int first) {
    int n = feet.size();
    double cost = 0;
    if (asked != null) {
      for (int i = first; i < Math.min(n, first + asked.size()); i++) {
        cost += feet.get(i) == asked.contacts().get(i - first) ? 0 : WRONG_FOOT;
      }
      int over = n - first - asked.size();
      // with the landing in sight the last contact is known, so none may be left over; a missing one is a wrong foot
      cost += over > 0 ? (landed ? 2.0 * WRONG_FOOT * over : 0.5 * over) : -WRONG_FOOT * over;
    }
    for (int i = 0; i < n; i++) {
      if (!Double.isNaN(flight_s[i])) {
        double long_ = Math.max(-1.5, Math.min(1.5, (flight_s[i] - STEP_OR_BOUND_S) / 0.03));
        cost += i < first ? Math.max(0, long_) : Math.max(0, -long_);
      }
    }
    for (int i = 1; i <= first && i < n; i++) {
      // running steps change the foot
      cost += feet.get(i) == feet.get(i - 1) ? WRONG_FOOT : 0;
    }
    return cost;
  }
}
