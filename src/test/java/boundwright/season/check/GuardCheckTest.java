package boundwright.season.check;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Foot;
import boundwright.load.Finding.Rule;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import boundwright.season.MadeUpSeason;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.solve.LinesForTests;
import boundwright.season.year.Level;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  /** Everybody's right leg is on its way back from a former week of 60 to 100, from the season's first day or a month into it. */
  private static SeasonInput onTheirWayBack(SeasonInput input) {
    Map<Long, List<LegBack>> backs = new HashMap<>();
    for (Member m : input.squad()) {
      LocalDate begun = input.day(m.id() % 2 == 0 ? 0 : 28);
      backs.put(m.id(), List.of(new LegBack(Foot.RIGHT, begun, null, Stages.USUAL, 60 + 10 * (m.id() % 5), 0, begun, begun, null)));
    }
    return input.withBacks(backs);
  }

  @Test
  void aPlanSeesALegOnItsWayBackAsTheGuardDoes() {
    int refusedByGuard = 0;
    for (long seed = 1; seed <= 3; seed++) {
      SeasonInput input = onTheirWayBack(MadeUpSeason.of(5, 16, seed));
      LinesForTests kept = LinesForTests.drawn(input, MadeUpSeason.climbs(input, 6), seed, true);
      assertThat(kept.total()[Level.REFUSED.at()]).isZero();
      assertThat(kept.plan().years().stream().mapToInt(y -> y.days().size()).sum()).as("days with work").isGreaterThan(60);
      assertThat(new GuardCheck(input).refused(kept.plan())).as("seed %d", seed).isEmpty();
      LinesForTests drawn = LinesForTests.drawn(input, MadeUpSeason.climbs(input, 6), seed, false);
      for (GuardCheck.Judged j : new GuardCheck(input).refused(drawn.plan())) {
        assertThat(drawn.refused(j.athleteId(), j.date())).as("seed %d, %s: %s", seed, j.date(), j.finding().said()).isTrue();
        refusedByGuard += j.finding().rule() == Rule.WAY_BACK ? 1 : 0;
      }
    }
    assertThat(refusedByGuard).as("days that both refuse for it").isGreaterThan(20);
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
