package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.GuardOverride;
import boundwright.load.LoadDesk;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lays the one verdict of the day out for the main screen. */
public final class GuardDesk {
  private final Workbench bench;

  GuardDesk(Workbench bench) {
    this.bench = bench;
  }

  /** The steps of a drill for this athlete: the drill's own, or their rung in its family. */
  public static int steps(Workbench bench, Athlete athlete, Drill drill) {
    return bench.advisor().rungs().stepsFor(athlete, drill);
  }

  /** The verdict, and what the rep that the screen shows would add to it. */
  GuardView look(Athlete athlete, Asked asked, String token) {
    LoadDesk.DayLook look = bench.loadDesk().look(athlete, shown(asked));
    DayVerdict day = look.verdict();
    List<GuardOverride> kept = bench.loadDesk().overrides(athlete);
    return new GuardView(day, LoadDesk.open(day.withPlan(), kept), look.beside(), kept, day.held() ? List.of() : bench.backDesk().today(athlete), token, "", "", "");
  }

  private static @Nullable Work shown(Asked asked) {
    try {
      return new Work(Sequence.parse(asked.sequence()), 1, Form.whole("number of approach steps", asked.steps()), asked.surface());
    } catch (RefusedException e) {
      // The screen says beside the field what cannot be read; the day is judged all the same.
      return null;
    }
  }
}
