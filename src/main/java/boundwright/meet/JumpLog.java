package boundwright.meet;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What this part needs kept of each athlete: measured jumps, run-throughs, gaps at the board. Every write is on disk when
 * the method returns, and each add can be taken back by its number.
 */
public interface JumpLog {
  /** Stores a measured jump and returns it with its number. */
  JumpEntry add(JumpEntry jump);

  /** Stores a run-through and returns it with its number. */
  RunThroughEntry add(RunThroughEntry run);

  /** Stores a take-off at the board and returns it with its number. */
  GapEntry add(GapEntry gap);

  /** An athlete's measured jumps, oldest day first. */
  List<JumpEntry> jumps(long athleteId);

  /** The measured jumps that have speeds, of everybody who has any, by athlete. */
  Map<Long, List<JumpEntry>> jumpsWithSpeeds();

  /** An athlete's run-throughs, oldest day first. */
  List<RunThroughEntry> runThroughs(long athleteId);

  /** An athlete's take-offs at the board in training, oldest day first. */
  List<GapEntry> gaps(long athleteId);

  /** Takes a measured jump out and returns it; empty if it is not there. */
  Optional<JumpEntry> removeJump(long athleteId, long id);

  /** Takes a run-through out and returns it; empty if it is not there. */
  Optional<RunThroughEntry> removeRunThrough(long athleteId, long id);

  /** Takes a take-off at the board out and returns it; empty if it is not there. */
  Optional<GapEntry> removeGap(long athleteId, long id);
}
