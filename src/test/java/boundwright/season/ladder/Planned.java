package boundwright.season.ladder;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.season.Block;
import boundwright.season.Climb;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Plans by the day for the tests. */
final class Planned {
  private Planned() {}

  static Sequence drill(DrillFamily family) {
    return Sequence.parse(
        switch (family) {
          case ALTERNATE -> "RL x5";
          case SINGLE_LEG -> "R x6";
          case COMBINATION -> "RRL x2";
        });
  }

  /** The climbs' families on these days, from the steps of the climb. */
  static SeasonPlan.Year year(Member m, List<Climb> climbs, List<LocalDate> days) {
    Map<LocalDate, List<DrillFamily>> families = new TreeMap<>();
    for (LocalDate d : days) {
      families.put(d, climbs.stream().map(Climb::family).toList());
    }
    return year(m, climbs, families);
  }

  /** Families on days, from the steps of their climb. */
  static SeasonPlan.Year year(Member m, List<Climb> climbs, Map<LocalDate, List<DrillFamily>> days) {
    List<PlannedDay> out = new ArrayList<>();
    days.forEach(
        (day, families) -> {
          List<Block> blocks = new ArrayList<>();
          for (DrillFamily f : families) {
            int steps = climbs.stream().filter(c -> c.family() == f).findFirst().map(c -> c.stepsOn(day)).orElse(m.steps(f));
            blocks.add(new Block(new Work(drill(f), 6, steps, Surface.GRASS), 1, false));
          }
          out.add(new PlannedDay(day, new Session(SessionKind.BOUNDS, "meadow", blocks)));
        });
    return new SeasonPlan.Year(m.id(), m.name(), out, climbs, List.of());
  }
}
