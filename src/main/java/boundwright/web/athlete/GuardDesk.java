package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import java.time.LocalDate;
import java.util.List;

/** Lays the one verdict of the day out for the main screen. */
public final class GuardDesk {
  private static final int KEPT = 50;

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
    DayVerdict day = bench.loadDesk().day(athlete);
    List<Finding> open = bench.loadDesk().open(athlete, day.withPlan());
    LocalDate today = LocalDate.now(bench.clock());
    List<GuardOverride> kept =
        bench.care().overrides(athlete.id(), KEPT).stream().filter(o -> o.date().equals(today)).toList();
    return new GuardView(day, open, day.held() ? List.of() : beside(athlete, asked), kept, token, "", "", "");
  }

  private List<Finding> beside(Athlete athlete, Asked asked) {
    try {
      Work shown = new Work(Sequence.parse(asked.sequence()), 1, Form.whole("number of approach steps", asked.steps()), asked.surface());
      return bench.loadDesk().beside(athlete, shown);
    } catch (RefusedException e) {
      // The screen says beside the field what cannot be read; the day is judged all the same.
      return List.of();
    }
  }
}
