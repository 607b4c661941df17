package boundwright.jump;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What this room needs kept of each athlete: measured jumps. Every write is on disk when the method returns, and each add can be
 * taken back by its number.
 */
public interface JumpLog {
  /** Stores a measured jump and returns it with its number. */
  JumpEntry add(JumpEntry jump);

  /** An athlete's measured jumps, oldest day first. */
  List<JumpEntry> jumps(long athleteId);

  /** The measured jumps that have speeds, of everybody who has any, by athlete. */
  Map<Long, List<JumpEntry>> jumpsWithSpeeds();

  /** Takes a measured jump out and returns it; empty if it is not there. */
  Optional<JumpEntry> removeJump(long athleteId, long id);

  /** The settings of the jump; the defaults if none were kept. */
  JumpSettings settings();
}
