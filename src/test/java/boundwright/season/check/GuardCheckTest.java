package boundwright.season.check;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.load.Finding.Rule;
import boundwright.season.MadeUpSeason;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.LinesForTests;
import boundwright.season.year.Level;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The planner's rules and the guard are two programs that have to agree: what the rules keep, the guard does not refuse. */
class GuardCheckTest {
  @Test
  void whatTheRulesKeepTheGuardDoesNotRefuse() {
    for (long seed = 1; seed <= 3; seed++) {
      SeasonInput input = MadeUpSeason.of(5, 30, seed);
      LinesForTests lines = LinesForTests.drawn(input, MadeUpSeason.climbs(input, 6), seed, true);
      assertThat(lines.total()[Level.REFUSED.at()]).isZero();
      SeasonPlan plan = lines.plan();
      assertThat(plan.years().stream().mapToInt(y -> y.days().size()).sum()).as("days with work").isGreaterThan(150);
      assertThat(new GuardCheck(input).refused(plan)).as("seed %d", seed).isEmpty();
    }
  }

  @Test
  void whatTheGuardRefusesTheRulesDoNotKeep() {
    int refusedByGuard = 0;
    for (long seed = 4; seed <= 6; seed++) {
      SeasonInput input = MadeUpSeason.of(5, 12, seed);
      LinesForTests lines = LinesForTests.drawn(input, MadeUpSeason.climbs(input, 6), seed, false);
      for (GuardCheck.Judged j : new GuardCheck(input).refused(lines.plan())) {
        assertThat(j.finding().rule()).isIn(Rule.OWN_WEEKS, Rule.SPACING);
        assertThat(lines.refused(j.athleteId(), j.date())).as("seed %d, %s: %s", seed, j.date(), j.finding().said()).isTrue();
        refusedByGuard++;
      }
    }
    assertThat(refusedByGuard).as("days that both refuse").isGreaterThan(20);
  }

  @Test
  void aSessionPutOnTopOfAPlanIsRefused() {
    SeasonInput input = MadeUpSeason.of(3, 12, 7);
    LinesForTests lines = LinesForTests.drawn(input, MadeUpSeason.climbs(input, 6), 7, true);
    SeasonPlan plan = lines.plan();
    SeasonPlan.Year year = plan.years().get(0);
    PlannedDay largest = year.days().stream().filter(d -> d.session().contacts() >= 60).findFirst().orElseThrow();
    List<PlannedDay> more = new ArrayList<>(year.days().stream().filter(d -> !d.date().equals(largest.date().plusDays(1))).toList());
    more.add(new PlannedDay(largest.date().plusDays(1), largest.session()));
    SeasonPlan changed =
        new SeasonPlan(plan.name(), 0, List.of(new SeasonPlan.Year(year.athleteId(), year.athlete(), more, year.climbs(), year.wanted())));
    assertThat(new GuardCheck(input).refused(changed)).extracting(j -> j.finding().rule()).contains(Rule.SPACING);
  }
}
