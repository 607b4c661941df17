package boundwright.readiness;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;

/**
 * A coach moved an athlete, or left them, on the ladder of a family.
 *
 * @param id number in the store, 0 before it is stored
 * @param athleteId whom
 * @param family of drills
 * @param date when
 * @param from rung before
 * @param to rung after
 * @param gate what the gate had answered
 * @param reason the coach's words; needed when the coach decides otherwise than the gate
 */
public record RungDecision(
    long id, long athleteId, DrillFamily family, LocalDate date, int from, int to, GateAnswer.Decision gate, String reason) {
  /** Refuses rungs out of range, and a decision against the gate without a reason. */
  public RungDecision {
    Athlete.checkSteps(from);
    Athlete.checkSteps(to);
    reason = reason.strip();
    boolean asAdvised =
        switch (gate) {
          case ADD_TWO_STEPS -> to == from + 2;
          case STAY -> to == from;
          case GO_BACK -> to == from - 2;
        };
    if (!asAdvised && (reason.length() < 8 || reason.length() > 300)) {
      throw new RefusedException(
          "The answer was " + gate.label() + "; to go from " + from + " to " + to
              + " steps instead takes a reason of 8 to 300 characters; this one has " + reason.length() + ".");
    }
  }
}
