package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.footfall.Sequence;

/** The rung from which an athlete does a sequence: every family of drills may have a ladder of its own. */
@FunctionalInterface
public interface Rungs {
  /** The athlete's own rung for everything. */
  Rungs OWN = (athlete, sequence) -> athlete.rung();

  /** Approach steps, 0 from standing. */
  int of(Athlete athlete, Sequence sequence);

  /** The approach steps of a drill: those of the drill, or the rung of the athlete in it. */
  default int stepsFor(Athlete athlete, Drill drill) {
    return drill.stepsFor(of(athlete, drill.sequence()));
  }
}
