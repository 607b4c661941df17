package boundwright.jump.takeoff;

import java.util.List;
import java.util.Optional;

/**
 * What the long jump needs kept of each athlete. Every write is on disk when the method returns, and each add can be taken back by its
 * number.
 */
public interface LongJumpLog {
  /** Stores a long jump and returns it with its number. */
  LongJump add(LongJump jump);

  /** An athlete's long jumps, oldest day first. */
  List<LongJump> longJumps(long athleteId);

  /** Takes a long jump out and returns it; empty if it is not there. */
  Optional<LongJump> removeLongJump(long athleteId, long id);
}
