package boundwright.approach.run;

import java.util.List;
import java.util.Optional;

/**
 * What the run-up needs kept of each athlete. Every write is on disk when the method returns, and each add can be taken back by
 * its number.
 */
public interface RunThroughLog {
  /** Stores a run-through and returns it with its number. */
  RunThroughEntry add(RunThroughEntry run);

  /** An athlete's run-throughs for both events, oldest day first. */
  List<RunThroughEntry> runThroughs(long athleteId);

  /** Takes a run-through out and returns it; empty if it is not there. */
  Optional<RunThroughEntry> removeRunThrough(long athleteId, long id);

  /** The settings of the run-up; the defaults if none were kept. */
  RunUpSettings settings();
}
