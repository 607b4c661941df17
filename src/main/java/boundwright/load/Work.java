package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;

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

  /** A logged rep as work: the contacts that were made, see {@link Rep#contactsDone()}. */
  public static Work of(Rep rep) {
    return new Work(rep.contactsDone(), 1, rep.approachSteps(), rep.surface());
  }

  /** Contacts of both legs. */
  public int contacts() {
    return sequence.size() * reps;
  }

  /** Contacts of one leg. */
  public int contacts(Foot foot) {
    return sequence.count(foot) * reps;
  }

  /**
   * What of {@code planned} is still to come once {@code done} was done. A rep counts for a drill when it has the same contacts, or
   * the same mirrored, from the same steps; the surface may differ.
   */
  public static List<Work> rest(List<Work> planned, List<Work> done) {
    int[] spare = done.stream().mapToInt(Work::reps).toArray();
    List<Work> rest = new ArrayList<>();
    for (Work drill : planned) {
      int left = drill.reps;
      for (int i = 0; i < spare.length && left > 0; i++) {
        if (drill.sameDrill(done.get(i))) {
          int taken = Math.min(left, spare[i]);
          spare[i] -= taken;
          left -= taken;
        }
      }
      if (left > 0) {
        rest.add(new Work(drill.sequence, left, drill.approachSteps, drill.surface));
      }
    }
    return List.copyOf(rest);
  }

  private boolean sameDrill(Work other) {
    return approachSteps == other.approachSteps
        && (sequence.contacts().equals(other.sequence.contacts()) || sequence.contacts().equals(other.sequence.mirrored().contacts()));
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
