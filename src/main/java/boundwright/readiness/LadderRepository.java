package boundwright.readiness;

import java.util.List;
import java.util.Map;

/** What the ladder needs kept. Every write is on disk when the method returns. */
public interface LadderRepository {
  /** The rung of each family that was set for an athlete; families not in it stand on the athlete's own rung. */
  Map<DrillFamily, Integer> rungs(long athleteId);

  /** The rungs of all athletes for whom one was set, by the athlete's number. */
  Map<Long, Map<DrillFamily, Integer>> rungs();

  /** Keeps a decision for good and moves the family to its rung. */
  void keep(RungDecision decision);

  /** Decisions for an athlete, newest first. */
  List<RungDecision> decisions(long athleteId, int most);

  /** What the gate asks; the defaults if nothing was kept. */
  GateRules rules();

  /** Keeps what the gate asks. */
  void keep(GateRules rules);
}
