package boundwright.season.ladder;

import boundwright.footfall.Routine;
import boundwright.quantity.Limits;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import java.util.EnumMap;
import java.util.Map;

/**
 * What the coach wants of the climb. Standing of the defaults: judgement.
 *
 * @param stay the least stay, as the gate has it
 * @param top most approach steps by family of drills, 0 to 12, 12 where none is named; an athlete's full run-up is never passed
 * @param soonestLook days after a decision before it is asked again, 2 to 60
 * @param latestLook days after which it is asked again in any case, at least {@code soonestLook}, at most 90
 * @param prior what is believed of the pace before the squad has shown any
 */
public record ClimbRules(GateRules.Stay stay, Map<DrillFamily, Integer> top, int soonestLook, int latestLook, PacePrior prior) {
  /** The end of the progression (common practice): the gate adds nothing there, longer belongs to the full run-up. */
  public static final int TOP = Routine.RUNGS.get(Routine.RUNGS.size() - 1);

  /** Takes a copy; refuses rules out of range. */
  public ClimbRules {
    Map<DrillFamily, Integer> all = new EnumMap<>(DrillFamily.class);
    for (DrillFamily f : DrillFamily.values()) {
      all.put(f, Limits.count("The longest approach planned for " + f.label() + " drills", top.getOrDefault(f, TOP), 0, TOP, "Longer belongs to the full run-up."));
    }
    top = Map.copyOf(all);
    Limits.count("A next look after days", soonestLook, 2, 60, "Usual is 7.");
    Limits.count("A next look at the latest after days", latestLook, soonestLook, 90, "Usual is 28.");
  }

  /** The defaults, with this least stay. */
  public static ClimbRules usual(GateRules.Stay stay) {
    return new ClimbRules(stay, Map.of(), 7, 28, PacePrior.USUAL);
  }

  /** The longest approach that is planned for an athlete. */
  int top(DrillFamily family, int fullSteps) {
    return Math.min(top.getOrDefault(family, TOP), fullSteps);
  }
}
