package boundwright.flight;

import boundwright.flight.RepStore.Writer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Changes of the log that belong together, alive inside {@link Logbook#together}; who was touched is learned once, at its end. */
public final class RepChanges {
  private final RepStore store;
  private Writer writer;
  private Map<Long, List<Rep>> added = new LinkedHashMap<>();
  /** By athlete, the earliest day of a rep that left or came in between. */
  private Map<Long, LocalDate> disturbed = new LinkedHashMap<>();

  RepChanges(RepStore store, Writer writer) {
    this.store = store;
    this.writer = writer;
  }

  /** Adds a rep and returns it with its number. */
  public Rep add(Rep rep) {
    Rep kept = writer.add(rep);
    added.computeIfAbsent(kept.athleteId(), id -> new ArrayList<>()).add(kept);
    return kept;
  }

  /** The rep with this number. */
  public Optional<Rep> find(long repId) {
    return writer.find(repId);
  }

  /** Takes a rep out as if it had never been logged. */
  public void remove(Rep rep) {
    writer.remove(rep.id());
    disturb(rep.athleteId(), rep.date());
  }

  /** Gives a rep to the athlete who did it; it keeps its number and with it its place in the order of the day. */
  public void hand(Rep rep, long to) {
    writer.hand(rep.id(), to);
    disturb(rep.athleteId(), rep.date());
    disturb(to, rep.date());
  }

  /** Keeps the lengths of a rep that is there already, in place of what was measured of it before. */
  public void measure(Rep rep) {
    writer.measure(rep);
    disturb(rep.athleteId(), rep.date());
  }

  /** Keeps what was seen of a rep's technique. No length is learned from that. */
  public void look(Rep rep, boolean judged, List<String> faults) {
    writer.look(rep.id(), judged, faults);
  }

  /** Does a step wholly or not at all; one that fails undoes only itself. */
  public <T> T step(Supplier<T> step) {
    Map<Long, List<Rep>> addedBefore = new LinkedHashMap<>();
    added.forEach((id, reps) -> addedBefore.put(id, new ArrayList<>(reps)));
    Map<Long, LocalDate> disturbedBefore = new LinkedHashMap<>(disturbed);
    Writer outer = writer;
    try {
      return store.write(
          inner -> {
            writer = inner;
            return step.get();
          });
    } catch (RuntimeException e) {
      added = addedBefore;
      disturbed = disturbedBefore;
      throw e;
    } finally {
      writer = outer;
    }
  }

  private void disturb(long athleteId, LocalDate day) {
    disturbed.merge(athleteId, day, (a, b) -> a.isBefore(b) ? a : b);
  }

  /** Whom these changes touched: the reps added, or null where others of theirs changed too, and from which day. */
  Map<Long, Touched> touched() {
    Map<Long, Touched> out = new HashMap<>();
    added.forEach((id, reps) -> out.put(id, new Touched(reps, disturbed.get(id))));
    disturbed.forEach((id, day) -> out.computeIfAbsent(id, i -> new Touched(List.of(), day)));
    return out;
  }

  /**
   * What changed of one athlete.
   *
   * @param added in the order in which they were added
   * @param disturbed the earliest day on which a rep left or came in between, or null
   */
  record Touched(List<Rep> added, @Nullable LocalDate disturbed) {}
}
