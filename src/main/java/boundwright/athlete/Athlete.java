package boundwright.athlete;

import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;

/**
 * An athlete as the coach keeps them.
 *
 * @param id number in the store, 0 before it is stored
 * @param name as called at the track, 1 to 80 characters, unique in the squad whatever the case
 * @param level how far they have come
 * @param takeOffFoot the foot they like to start from
 * @param rung approach steps they are working from now, 0 to {@value #MAX_STEPS}
 */
public record Athlete(long id, String name, Level level, Foot takeOffFoot, int rung) {
  /** Most approach steps that are taken (sanity limit; judgement). */
  public static final int MAX_STEPS = 26;

  /** Checks the name and the rung. */
  public Athlete {
    name = name.strip().replaceAll("\\s+", " ");
    if (name.isEmpty() || name.length() > 80) {
      throw new RefusedException(
          "An athlete's name has 1 to 80 characters; this one has " + name.length() + ". Use the name called at the track.");
    }
    rung = checkSteps(rung);
  }

  /**
   * Refuses approach steps outside 0 to {@value #MAX_STEPS}.
   *
   * @return the steps unchanged
   */
  public static int checkSteps(int steps) {
    if (steps < 0 || steps > MAX_STEPS) {
      throw new RefusedException(
          "Approach steps of " + steps + " are out of range: 0 (standing) to " + MAX_STEPS
              + ". The progression is 0, 2, 4, 6, 8, 10, 12.");
    }
    return steps;
  }

  /** Approach steps in words: {@code from standing}, {@code from 1 step}, {@code from 4 steps}. */
  public static String fromSteps(int steps) {
    return steps == 0 ? "from standing" : "from " + steps + (steps == 1 ? " step" : " steps");
  }

  /** The same athlete on another rung. */
  public Athlete onRung(int steps) {
    return new Athlete(id, name, level, takeOffFoot, steps);
  }

  /** The same athlete with the number the store gave. */
  public Athlete withId(long stored) {
    return new Athlete(stored, name, level, takeOffFoot, rung);
  }
}
