package boundwright.approach.aim;

import boundwright.approach.board.BoardSeen;
import boundwright.approach.board.GapEntry;
import boundwright.jump.Event;
import java.util.List;
import java.util.Optional;

/**
 * What the aim needs kept of each athlete's take-offs at the board. Every write is on disk when the method returns, and each add
 * can be taken back by its number.
 */
public interface BoardLog {
  /** Stores a take-off at the board in training and returns it with its number. */
  GapEntry add(GapEntry gap);

  /** An athlete's take-offs at the board in training, of both events, oldest day first. */
  List<GapEntry> gaps(long athleteId);

  /** Takes a take-off at the board out and returns it; empty if it is not there. */
  Optional<GapEntry> removeGap(long athleteId, long id);

  /** An athlete's attempts in meets of an event as the board saw them, oldest meet first; passes are left out. */
  List<BoardSeen> inMeets(long athleteId, Event event);

  /** Those of the triple jump, see {@link #inMeets(long, Event)}. */
  default List<BoardSeen> inMeets(long athleteId) {
    return inMeets(athleteId, Event.TRIPLE_JUMP);
  }

  /** The settings of the aim; the defaults if none were kept. */
  AimSettings settings();
}
