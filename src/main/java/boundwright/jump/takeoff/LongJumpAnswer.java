package boundwright.jump.takeoff;

import boundwright.quantity.Notes;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete's long jumps say.
 *
 * @param jumps as kept, oldest first; may be empty
 * @param takeOffs of them with speeds
 * @param best the best angle, or null without a take-off
 * @param touchdown what the foot's place does, or null without a take-off
 * @param worth what small changes are worth; empty with too few take-offs
 */
public record LongJumpAnswer(
    List<LongJump> jumps, int takeOffs, @Nullable BestAngle best, @Nullable Touchdown touchdown, List<LongWorth> worth) {
  /** Takes copies. */
  public LongJumpAnswer {
    jumps = List.copyOf(jumps);
    worth = List.copyOf(worth);
  }

  /** The newest jump, or null without any. */
  public @Nullable LongJump newest() {
    return jumps.isEmpty() ? null : jumps.get(jumps.size() - 1);
  }

  /** The sentence for the coach about the angle. */
  public String words() {
    BestAngle b = best;
    return b == null ? "The data cannot tell. A best angle needs at least " + BestAngle.FEWEST + " measured take-offs; there are none." : b.words();
  }

  /** What it rests on. */
  public String from() {
    return "From " + Notes.counted(jumps.size(), "long jump") + ", " + Notes.counted(takeOffs, "take-off") + " with speeds, whatever the run-up.";
  }
}
