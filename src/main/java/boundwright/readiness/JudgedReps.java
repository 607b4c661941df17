package boundwright.readiness;

import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import boundwright.technique.FaultTick;
import boundwright.technique.JudgedRep;
import java.util.ArrayList;
import java.util.List;

/** Logged reps as the technique room sees them, so that it need not know how reps are logged. */
public final class JudgedReps {
  private JudgedReps() {}

  /**
   * Those of some reps whose technique was judged.
   *
   * @param judged in the order of the reps
   * @param unread how many were judged by a look of before that cannot be read any more
   */
  public record WellRead(List<JudgedRep> judged, int unread) {
    /** Takes a copy. */
    public WellRead {
      judged = List.copyOf(judged);
    }
  }

  /** Reads the looks of these reps. */
  public static WellRead readable(List<Rep> reps) {
    List<JudgedRep> judged = new ArrayList<>();
    int unread = 0;
    for (Rep r : reps) {
      if (r.judged()) {
        try {
          judged.add(of(r));
        } catch (RefusedException e) {
          unread++;
        }
      }
    }
    return new WellRead(judged, unread);
  }

  /**
   * A logged rep whose technique was judged; the caller leaves out those that nobody judged.
   *
   * @throws RefusedException if a fault of the rep cannot be read or lies on a contact that it does not have
   */
  public static JudgedRep of(Rep rep) {
    return new JudgedRep(rep.id(), rep.athleteId(), rep.date(), rep.sequence(), rep.approachSteps(), FaultTick.parseAll(rep.faults()));
  }
}
