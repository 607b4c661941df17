package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.technique.FaultTick;
import boundwright.technique.TeachingPoint;
import java.util.List;
import java.util.Set;

/** Which faults load a leg rather than cost length: the foot far ahead, the toe that stabs, the hips that drop and pop up. */
public final class LegLoading {
  /** Where the choice comes from. */
  public static final Source SOURCE =
      new Source("leg-loading", "Foot too far ahead, stabs with the toe and pops up load the leg", "choice of the makers", Standing.JUDGEMENT);

  private static final Set<String> KEYS = Set.of(TeachingPoint.FOOT_UNDER.key(), TeachingPoint.HEEL_ROLLS.key(), TeachingPoint.HIPS_TALL.key());

  private LegLoading() {}

  /** Whether one of a rep's faults, written {@code key} or {@code key@contact}, loads a leg. */
  public static boolean any(List<String> faults) {
    return !faults.isEmpty() && faults.stream().anyMatch(f -> KEYS.contains(FaultTick.parse(f).key()));
  }
}
