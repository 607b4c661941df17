package boundwright.season.chance;

import boundwright.readiness.DrillFamily;
import boundwright.season.ladder.SquadPace;

/** How many sessions athletes need until they are ready for two steps more. */
@FunctionalInterface
public interface Learning {
  /** Sessions needed at one approach, drawn. */
  @FunctionalInterface
  interface Needed {
    /**
     * As {@link boundwright.season.ladder.Pace#drawn}.
     *
     * @param spent sessions spent without
     * @param lasting uniform on 0 to 1, one for each athlete and season
     * @param stay uniform on 0 to 1, one for each stay
     */
    double drawn(double spent, double lasting, double stay);
  }

  /** Of an athlete at an approach. */
  Needed at(long athlete, DrillFamily family, int steps);

  /** As the squad's stays tell it. */
  static Learning learned(SquadPace pace) {
    return (athlete, family, steps) -> pace.of(athlete, family, steps)::drawn;
  }

  /** Known: everybody is ready on every day on which the plan decides, if the least stay is over. */
  static Learning asPlanned() {
    return (athlete, family, steps) -> (spent, lasting, stay) -> 0;
  }
}
