package boundwright.season.ladder;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * How long an athlete of the squad worked from one approach in one family of drills.
 *
 * @param athleteId whose
 * @param family of drills
 * @param steps of the approach, 0 to 26
 * @param sessions days with a rep of the family from there, in order, each once
 * @param to the day of the decision that ended it, or null: still there
 * @param beginning whether it is known when it began
 * @param end how it ended
 */
public record SquadStay(
    long athleteId, DrillFamily family, int steps, List<LocalDate> sessions, @Nullable LocalDate to, Beginning beginning, End end) {
  /** How a stay began. */
  public enum Beginning {
    /** It was new, and began with the first of the sessions. */
    NEW,
    /** They had been there, or farther, before. */
    AGAIN,
    /** The log begins in the middle of it. */
    UNKNOWN
  }

  /** How a stay ended. */
  public enum End {
    /** The gate answered <em>add two steps</em>. */
    READY,
    /** They are still there. */
    STILL_THERE,
    /** The coach decided before the gate did, or sent them back. */
    LEFT
  }

  /** Puts the sessions in order; refuses an end that nobody decided. */
  public SquadStay {
    Athlete.checkSteps(steps);
    sessions = List.copyOf(new TreeSet<>(sessions));
    if ((to == null) != (end == End.STILL_THERE)) {
      throw new RefusedException(
          "A stay at " + steps + " steps ends with a day and a decision, or with neither. Give both, or none.");
    }
  }

  /** Days attended there so far. */
  public int attended() {
    return sessions.size();
  }

  /**
   * Whether the model may learn from it: it was new, somebody was there, and the gate could have answered. Stays of which only the end is
   * known would shorten it.
   */
  boolean tells() {
    return beginning == Beginning.NEW && !sessions.isEmpty() && steps < ClimbRules.TOP;
  }

  /**
   * What it tells of the sessions that were needed: more than the session before the last, at most the last, where the gate was passed;
   * at most the last, if the gate was passed in the first session after the least stay; more than all of them, where it was not passed.
   */
  SessionsNeeded needed(GateRules.Stay rules) {
    int n = Math.min(attended(), SessionsNeeded.MOST);
    if (end != End.READY) {
      return new SessionsNeeded(n, Double.POSITIVE_INFINITY);
    }
    LocalDate over = sessions.get(0).plusDays(rules.days(steps));
    long before = sessions.stream().filter(d -> d.isBefore(over)).count();
    return new SessionsNeeded(before >= n - 1 ? 0 : n - 1, n);
  }
}
