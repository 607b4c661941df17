package boundwright.readiness;

import boundwright.flight.Rep;
import boundwright.technique.FaultTick;
import boundwright.technique.JudgedRep;

/** Logged reps as the technique room sees them, so that it need not know how reps are logged. */
public final class JudgedReps {
  private JudgedReps() {}

  /**
   * A logged rep whose technique was judged; the caller leaves out those that nobody judged.
   *
   * @throws boundwright.quantity.RefusedException if a fault of the rep cannot be read or lies on a contact that it does not have
   */
  public static JudgedRep of(Rep rep) {
    return new JudgedRep(rep.id(), rep.athleteId(), rep.date(), rep.sequence(), rep.approachSteps(), FaultTick.parseAll(rep.faults()));
  }
}
