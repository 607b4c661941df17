package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * One line of a session: a sequence done in sets of reps.
 *
 * @param sequence what is run through in one rep
 * @param steps approach steps for everybody, or null: each athlete's own rung
 * @param sets 1 to 20
 * @param reps per set, 1 to 20
 * @param inSand whether the last flight ends in sand; otherwise it is done on the flat
 */
public record Drill(Sequence sequence, @Nullable Integer steps, int sets, int reps, boolean inSand) {
  /** Refuses counts out of range. */
  public Drill {
    if (steps != null) {
      Athlete.checkSteps(steps);
    }
    count("sets", sets);
    count("reps", reps);
  }

  private static void count(String what, int value) {
    if (value < 1 || value > 20) {
      throw new RefusedException("A drill of " + value + " " + what + " is out of range: 1 to 20. Split it into two drills.");
    }
  }

  /** Contacts of one leg over all sets and reps, as the sequence is written. */
  public int contacts(Foot foot) {
    return sequence.count(foot) * sets * reps;
  }

  /** The approach steps that an athlete on {@code rung} does this drill from. */
  public int stepsFor(int rung) {
    return steps == null ? rung : steps;
  }
}
