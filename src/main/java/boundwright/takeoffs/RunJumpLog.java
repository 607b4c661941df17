package boundwright.takeoffs;

import java.util.List;
import java.util.Optional;

/** What is kept of repeated take-offs. Every write is on disk when the method returns, and each add can be taken back by its number. */
public interface RunJumpLog {
  /** Stores a rep and returns it with its number. */
  RunJumpRep add(RunJumpRep rep);

  /** An athlete's reps, oldest day first. */
  List<RunJumpRep> runJumps(long athleteId);

  /** Takes a rep out and returns it; empty if it is not there. */
  Optional<RunJumpRep> removeRunJump(long athleteId, long id);
}
