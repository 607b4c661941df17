package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;

/**
 * The same sequence done a number of times, planned or logged.
 *
 * @param sequence contacts of one rep
 * @param reps how many, 1 to 400
 * @param approachSteps 0 to 26
 * @param surface what is bounded on
 */
public record Work(Sequence sequence, int reps, int approachSteps, Surface surface) {
  /** Refuses counts out of range. */
  public Work {
    Athlete.checkSteps(approachSteps);
    if (reps < 1 || reps > 400) {
      throw new RefusedException("Work of " + reps + " reps is out of range: 1 to 400. Split it into sessions.");
    }
  }

  /** A logged rep as work. */
  public static Work of(Rep rep) {
    return new Work(rep.sequence(), 1, rep.approachSteps(), rep.surface());
  }

  /** Contacts of both legs. */
  public int contacts() {
    return sequence.size() * reps;
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return sequence.count(foot) * reps;
  }

  /** The most contacts in a row on one foot in one rep. */
  public int longestSeries() {
    int longest = 1;
    int run = 1;
    for (int i = 1; i < sequence.size(); i++) {
      run = sequence.contacts().get(i) == sequence.contacts().get(i - 1) ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    return longest;
  }
}
