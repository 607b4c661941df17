package boundwright.approach.full;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is kept of distances by approach steps. Every write is on disk when the method returns, and each add can be taken back by its number. */
public interface FullRunLog {
  /** Stores a distance and returns it with its number. */
  DistanceEntry add(DistanceEntry distance);

  /** An athlete's distances that were logged with their steps, oldest day first. */
  List<DistanceEntry> distances(long athleteId);

  /** Takes a distance out and returns it; empty if it is not there. */
  Optional<DistanceEntry> removeDistance(long athleteId, long id);

  /** Every valid distance of everybody, from whichever log, by athlete and then oldest first. */
  List<FoundDistance> everybody();

  /** From how many steps each athlete runs the full run: those of most of their run-throughs, of two alike the more. */
  Map<Long, Integer> fullRuns();
}
