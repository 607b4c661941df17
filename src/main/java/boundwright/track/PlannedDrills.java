package boundwright.track;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.load.PlannedWork;
import boundwright.load.account.Work;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.Rungs;
import boundwright.runway.SettingsRepository;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** The plan of a day as work of each athlete, from their own rungs and at its place, or that of the settings. */
public final class PlannedDrills implements PlannedWork {
  private final SettingsRepository settings;
  private final Supplier<Rungs> rungs;

  /** Reads the plan from {@code settings} and the rungs as they are when asked. */
  public PlannedDrills(SettingsRepository settings, Supplier<Rungs> rungs) {
    this.settings = settings;
    this.rungs = rungs;
  }

  @Override
  public Map<Long, List<Work>> of(List<Athlete> athletes, LocalDate day) {
    DayPlan plan = settings.plan(day);
    DayPlan.Place place = plan.place();
    Surface surface = place == null ? settings.kept().facility().surface() : place.surface();
    List<Drill> drills = plan.drills();
    Rungs now = rungs.get();
    Map<Long, List<Work>> out = new HashMap<>();
    for (Athlete a : athletes) {
      List<Work> work = new ArrayList<>();
      for (Drill d : drills) {
        work.add(new Work(d.sequence(), d.sets() * d.reps(), now.stepsFor(a, d), surface));
      }
      out.put(a.id(), work);
    }
    return out;
  }
}
