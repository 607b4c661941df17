package boundwright.technique;

import boundwright.footfall.Sequence;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A rep whose technique was looked at. No ticks means clean; a rep that nobody judged is not one of these.
 *
 * @param id of the rep
 * @param athleteId whose
 * @param date day of the session
 * @param sequence what was run through
 * @param approachSteps from how many steps
 * @param ticks what was seen wrong
 */
public record JudgedRep(long id, long athleteId, LocalDate date, Sequence sequence, int approachSteps, List<FaultTick> ticks) {
  /** Refuses ticks on contacts that the sequence does not have. */
  public JudgedRep {
    ticks = List.copyOf(ticks);
    for (FaultTick tick : ticks) {
      tick.within(sequence);
    }
  }

  /** Whether nothing was seen wrong. */
  public boolean clean() {
    return ticks.isEmpty();
  }

  /** Whether this fault was seen. */
  public boolean has(String key) {
    return ticks.stream().anyMatch(t -> t.key().equals(key));
  }

  /** The faults that were seen, each once. */
  public Set<String> keys() {
    Set<String> keys = new HashSet<>();
    ticks.forEach(t -> keys.add(t.key()));
    return Set.copyOf(keys);
  }

  /** The first contact on which this fault was seen; empty if it was not, or the coach did not say where. */
  public Optional<Integer> firstContact(String key) {
    Integer first = null;
    for (FaultTick tick : ticks) {
      Integer contact = tick.contact();
      if (contact != null && tick.key().equals(key) && (first == null || contact < first)) {
        first = contact;
      }
    }
    return Optional.ofNullable(first);
  }
}
