package boundwright.jump.takeoff;

import boundwright.athlete.Athlete;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Reads an athlete's long jumps: the trade of speed for angle, the foot's place at touchdown, where the metres are. */
public final class LongJumpDesk {
  /** Fewest take-offs from which the worth of a change is told (judgement). */
  public static final int FEWEST_FOR_WORTH = 3;
  /** The same jumps give the same answer on every machine. */
  private static final long SEED = 20_261_130L;

  private final LongJumpLog log;

  /** Works on these jumps. */
  public LongJumpDesk(LongJumpLog log) {
    this.log = log;
  }

  /** What the kept jumps say; never refuses for too few, but says so. */
  public LongJumpAnswer answer(Athlete athlete) {
    List<LongJump> jumps = log.longJumps(athlete.id());
    List<TakeOff> all = new ArrayList<>();
    for (LongJump j : jumps) {
      TakeOff t = j.takeOff();
      if (t != null) {
        all.add(t);
      }
    }
    if (all.isEmpty()) {
      return new LongJumpAnswer(jumps, 0, null, null, List.of());
    }
    return new LongJumpAnswer(
        jumps,
        all.size(),
        BestAngle.of(all, new Random(SEED)),
        Touchdown.of(all),
        all.size() < FEWEST_FOR_WORTH ? List.of() : LongWorth.of(all, new Random(SEED)));
  }
}
