package boundwright.season.solve;

import static org.assertj.core.api.Assertions.assertThat;

import ai.timefold.solver.core.api.solver.SolverFactory;
import ai.timefold.solver.core.config.solver.EnvironmentMode;
import boundwright.season.Away;
import boundwright.season.MadeUpSeason;
import boundwright.season.Session;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.year.Level;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeasonSolverTest {
  @Test
  void theFirstPlanRefusesNobodyAndTheSearchOnlyBetters() {
    SeasonInput input = MadeUpSeason.of(6, 16, 3);
    SeasonPlanner planner = new SeasonPlanner(input, MadeUpSeason.climbs(input, 5), null, 3);
    List<long[]> told = new ArrayList<>();
    SeasonPlanner.Planned planned = planner.plan(Duration.ofMillis(3200), t -> told.add(t.clone()));
    assertThat(told.get(0)[Level.REFUSED.at()]).as("first plan").isZero();
    for (int i = 1; i < told.size(); i++) {
      assertThat(Joint.compare(told.get(i), told.get(i - 1))).as("told %d", i).isLessThanOrEqualTo(0);
    }
    assertThat(planned.refused()).isEmpty();
    assertThat(planned.joint().refusals()).isZero();
    assertThat(Joint.compare(planned.joint().total(), told.get(0))).isNegative();
    nobodyIsWhereTheyCannotBe(input, planned.plan());
  }

  private static void nobodyIsWhereTheyCannotBe(SeasonInput input, SeasonPlan plan) {
    for (int t = 0; t < input.days(); t++) {
      int day = t;
      for (Venue v : input.venues()) {
        long there = plan.years().stream().flatMap(y -> y.on(input.day(day)).stream()).filter(s -> v.key().equals(s.venue())).count();
        assertThat(there).as("%s on %s", v.name(), input.day(t)).isLessThanOrEqualTo(v.athletes());
        assertThat(there == 0 || v.open(input.day(t))).as("%s is open on %s", v.name(), input.day(t)).isTrue();
      }
    }
    input.squad().forEach(m -> {
      SeasonPlan.Year y = plan.of(m.id()).orElseThrow();
      y.days().forEach(d -> {
        Session s = d.session();
        if (s.kind() != SessionKind.MEET) {
          assertThat(m.days()).contains(d.date().getDayOfWeek());
          assertThat(m.away(d.date()).filter(w -> w != Away.Why.SOFT)).isEmpty();
        }
      });
      input.meets().stream().filter(x -> m.entry(x).isPresent() && m.away(x.date()).filter(w -> w != Away.Why.SOFT).isEmpty())
          .forEach(x -> assertThat(y.on(x.date()).map(Session::kind)).as("%s at %s", m.name(), x.name()).contains(SessionKind.MEET));
    });
  }

  @Test
  void theSolversOwnCheckFindsNoScoreThatIsNotThatOfTheDays() {
    SeasonInput input = MadeUpSeason.of(3, 8, 5);
    SeasonPlanner planner = new SeasonPlanner(input, MadeUpSeason.climbs(input, 4), null, 5);
    Joint first = new SeasonSolver(planner.problems(), input.venues(), 5).first();
    Sheet sheet = Sheet.of(first, input.venues());
    SeasonSolver solver = new SeasonSolver(planner.problems(), input.venues(), 5);
    Sheet out =
        SolverFactory.<Sheet>create(solver.config(Duration.ofMillis(3200)).withEnvironmentMode(EnvironmentMode.FULL_ASSERT)).buildSolver().solve(sheet);
    assertThat(SheetScore.score(out.joint().total())).isEqualTo(out.getScore());
  }

  @Test
  void aSearchCanBeStopped() throws InterruptedException {
    SeasonInput input = MadeUpSeason.of(4, 12, 9);
    SeasonPlanner planner = new SeasonPlanner(input, MadeUpSeason.climbs(input, 5), null, 9);
    List<SeasonPlanner.Planned> out = new ArrayList<>();
    Thread thread = new Thread(() -> out.add(planner.plan(Duration.ofHours(1), t -> planner.stop())));
    thread.start();
    thread.join(60_000);
    assertThat(thread.isAlive()).as("goes on although it was stopped").isFalse();
    assertThat(out.get(0).refused()).isEmpty();
  }
}
