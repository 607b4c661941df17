package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.Verdict;
import boundwright.load.Work;
import boundwright.quantity.RefusedException;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import boundwright.web.page.Form;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Asks the guard about a day: what was logged, what of the plan is still to come, and one rep of what the screen shows. */
public final class GuardDesk {
  private static final int KEPT = 50;

  private final Workbench bench;

  public GuardDesk(Workbench bench) {
    this.bench = bench;
  }

  /** The steps of a drill for this athlete: the drill's own, or their rung in its family. */
  public static int steps(Workbench bench, Athlete athlete, Drill drill) {
    return bench.advisor().rungs().stepsFor(athlete, drill);
  }

  /** The guard's answer for the screen. */
  GuardView look(Athlete athlete, Asked asked, String token) {
    Verdict verdict = bench.loadDesk().today(athlete, planned(athlete, asked));
    List<Finding> open = bench.loadDesk().open(athlete, verdict);
    LocalDate today = LocalDate.now(bench.clock());
    List<GuardOverride> kept =
        bench.care().overrides(athlete.id(), KEPT).stream().filter(o -> o.date().equals(today)).toList();
    int done = bench.loadDesk().done(athlete).stream().mapToInt(Work::contacts).sum();
    return new GuardView(verdict, open, done, kept, token, "", "", "");
  }

  /** What is still to come today: the rest of the plan, and the rep that the screen shows if the plan does not hold it. */
  List<Work> planned(Athlete athlete, Asked asked) {
    List<Work> rest = new ArrayList<>(restOfPlan(athlete));
    Work shown = shown(asked);
    if (shown != null && rest.stream().noneMatch(w -> w.surface() == shown.surface() && Work.rest(List.of(shown), List.of(w)).isEmpty())) {
      rest.add(shown);
    }
    return List.copyOf(rest);
  }

  /** What of the plan was not logged yet today. */
  public List<Work> restOfPlan(Athlete athlete) {
    Surface surface = bench.settings().settings().facility().surface();
    List<Work> plan = new ArrayList<>();
    for (Drill d : bench.settings().plan().drills()) {
      plan.add(new Work(d.sequence(), d.sets() * d.reps(), steps(bench, athlete, d), surface));
    }
    return Work.rest(plan, bench.loadDesk().done(athlete));
  }

  private static @Nullable Work shown(Asked asked) {
    try {
      return new Work(Sequence.parse(asked.sequence()), 1, Form.whole("number of approach steps", asked.steps()), asked.surface());
    } catch (RefusedException e) {
      // The screen says beside the field what cannot be read; the rest of the day is judged all the same.
      return null;
    }
  }
}
