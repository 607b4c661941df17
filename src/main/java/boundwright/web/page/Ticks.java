package boundwright.web.page;

import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.readiness.JudgedReps;
import boundwright.technique.FaultTick;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads the tick list of a rep: a box for each fault, and below a ticked one a row of the contacts. A contact counts only while
 * its fault is ticked, because the row is out of sight otherwise; a fault without a contact is kept as such.
 */
public final class Ticks {
  private Ticks() {}

  /** What was ticked. */
  public static List<FaultTick> read(List<String> sent, Sequence sequence) {
    List<FaultTick> all = FaultTick.parseAll(sent);
    List<FaultTick> out = new ArrayList<>();
    for (FaultTick fault : all) {
      if (fault.contact() == null) {
        List<FaultTick> on = all.stream().filter(t -> t.contact() != null && t.key().equals(fault.key())).map(t -> t.within(sequence)).toList();
        out.addAll(on.isEmpty() ? List.of(fault) : on);
      }
    }
    return List.copyOf(out);
  }

  /** What a rep keeps, or empty where it cannot be read (a file may have brought anything). */
  public static Optional<List<FaultTick>> kept(Rep rep) {
    try {
      return Optional.of(JudgedReps.of(rep).ticks());
    } catch (RefusedException e) {
      return Optional.empty();
    }
  }

  /** As a rep keeps them. */
  public static List<String> written(List<FaultTick> ticks) {
    return ticks.stream().map(FaultTick::written).toList();
  }
}
