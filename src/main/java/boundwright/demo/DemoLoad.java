package boundwright.demo;

import boundwright.athlete.Athlete;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegLoad;
import boundwright.load.account.OtherWork;
import boundwright.store.Workbench;
import java.time.LocalDate;
import java.util.List;

/**
 * What the legs of the invented squad did beside the reps that were logged one by one: bounds that nobody wrote down, sprints and
 * weights, and the part of the year. So much that the plan of the day fits the weeks before it; see {@link DemoSquad}.
 */
final class DemoLoad {
  /** Days before today, and how many times the plan of the day was done on each. */
  private static final int[] DAYS = {23, 20, 16, 13, 9};

  private static final double[] TIMES = {1.0, 1.1, 1.2, 1.5, 1.6};
  private static final int DAYS_READ = 40;

  private DemoLoad() {}

  /** Adds it to a store that {@link DemoSquad} has just filled. */
  static void fill(Workbench workbench) {
    LocalDate today = LocalDate.now(workbench.clock());
    workbench.load().keep(new SeasonStart(null, today.minusDays(60), Season.OFF_SEASON));
    for (Athlete athlete : workbench.athletes().all()) {
      ContactWeights weights = workbench.loadDesk().weights(athlete, today);
      History history = workbench.loadDesk().history(athlete, DAYS_READ);
      double plan = weights.of(new DayLoad(today, workbench.loadDesk().rest(athlete))).units();
      for (int i = 0; i < DAYS.length; i++) {
        LocalDate day = today.minusDays(DAYS[i]);
        double done = history.days().stream().filter(d -> d.date().equals(day)).map(weights::of).reduce(LegLoad.NONE, LegLoad::plus).units();
        int rung = Math.max(0, athlete.rung() - 2);
        long contacts = Math.min(200, Math.round((TIMES[i] * plan - done) / weights.bound(rung, weights.scale().power())));
        if (contacts >= 2) {
          workbench.load().add(new OtherWork(0, athlete.id(), day, OtherWork.Kind.BOUNDS, contacts, rung));
        }
      }
      for (int ago : List.of(18, 11, 4)) {
        workbench.load().add(new OtherWork(0, athlete.id(), today.minusDays(ago), OtherWork.Kind.SPRINT, 240, 0));
        workbench.load().add(new OtherWork(0, athlete.id(), today.minusDays(ago), OtherWork.Kind.WEIGHTS, 6, 0));
      }
    }
  }
}
