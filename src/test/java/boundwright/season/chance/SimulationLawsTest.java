package boundwright.season.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.season.Away;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Unplanned;
import boundwright.season.Venue;
import boundwright.season.check.GuardCheck;
import boundwright.season.mend.Difference;
import boundwright.season.solve.SeasonWork;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Laws of simulated seasons, on made-up ones (own output). */
class SimulationLawsTest {
  private static final int SEASONS = 60;
  private static final SeasonInput INPUT = MadeUpSeason.of(6, 26, 3);
  private static final SeasonWork.Habits HABITS = SeasonWork.ofFile().habits(INPUT.first());
  private static SeasonPlan plan = new SeasonPlan("", 0, List.of());

  @BeforeAll
  static void planned() {
    plan = SeasonWork.ofFile().planner(INPUT, null, INPUT.first(), 3).plan(Duration.ofMillis(600), t -> {}).plan();
    assertThat(new GuardCheck(INPUT).refused(plan)).isEmpty();
  }

  private static SeasonInput with(Unplanned unplanned) {
    return new SeasonInput(INPUT.name(), INPUT.first(), INPUT.last(), INPUT.periods(), INPUT.meets(), INPUT.venues(), INPUT.squad(), INPUT.rules().with(unplanned));
  }

  private static SeasonSimulator simulator(SeasonInput input, Done done, double attendance, Learning learning, long seed, WhatIf... asked) {
    return new SeasonSimulator(input, plan, done, HABITS, Attendance.of(input.squad(), attendance), learning, List.of(asked), seed);
  }

  private static SeasonSimulator usual(double attendance, long seed, WhatIf... asked) {
    return simulator(INPUT, Done.nothing(INPUT), attendance, Learning.learned(HABITS.pace()), seed, asked);
  }

  @Test
  void withFullAttendanceAndKnownLearningItIsThePlanExactly() {
    SeasonInput input = with(Unplanned.NOTHING);
    for (int today : new int[] {0, 60, 121}) {
      Done done = Done.asPlanned(plan, input.day(today));
      SeasonSimulator s = simulator(input, done, 1, Learning.asPlanned(), 8);
      for (int season = 0; season < 3; season++) {
        assertThat(Difference.between(plan, s.written(season), done.today())).as("from day %d", today).isEmpty();
      }
      Chances c = s.run(20, 1, n -> {});
      assertThat(c.athletes()).allSatisfy(a -> {
        assertThat(a.missed() + a.mended()).isZero();
        assertThat(a.approaches()).allSatisfy(p -> assertThat(p.by()).isEqualTo(Map.of(p.planned(), 1.0)));
      });
      assertThat(c.squad()).allSatisfy(b -> {
        assertThat(b.low()).isCloseTo(b.planned(), within(1e-9));
        assertThat(b.high()).isCloseTo(b.planned(), within(1e-9));
      });
    }
  }

  @Test
  void noDayIsRefusedWhateverHappens() {
    SeasonInput hard = with(new Unplanned(List.of(.6, .6, .6, .6, .6, .6, .6, .6, .6, .6, .6, .6), 6, 12));
    for (SeasonInput input : List.of(INPUT, hard)) {
      SeasonSimulator s = simulator(input, Done.nothing(input), 0.7, Learning.learned(HABITS.pace()), 4);
      assertThat(s.run(40, 1, n -> {}).refusedDays()).isZero();
      for (int season = 0; season < 12; season++) {
        SeasonPlan written = s.written(season);
        assertThat(new GuardCheck(input).refused(written)).as("season %d", season).isEmpty();
        fits(input, written);
        assertThat(Difference.between(plan, written, input.first())).as("something happened").isNotEmpty();
      }
    }
  }

  private static void fits(SeasonInput input, SeasonPlan written) {
    for (int t = 0; t < input.days(); t++) {
      LocalDate day = input.day(t);
      for (Venue v : input.venues()) {
        long there = written.years().stream().flatMap(y -> y.on(day).stream()).filter(x -> v.key().equals(x.venue())).count();
        assertThat(there).as("%s on %s", v.name(), day).isLessThanOrEqualTo(v.open(day) ? v.athletes() : 0);
      }
    }
  }

  @Test
  void whereTheGrassIsClosedNobodyIsThere() {
    SeasonInput input = with(new Unplanned(List.of(1., 1., 1., 1., 1., 1., 1., 1., 1., 1., 1., 1.), 0, 1));
    SeasonPlan written = simulator(input, Done.nothing(input), 1, Learning.asPlanned(), 1).written(0);
    assertThat(plan.years()).anyMatch(y -> y.days().stream().anyMatch(d -> "grass".equals(d.session().venue())));
    assertThat(written.years()).noneMatch(y -> y.days().stream().anyMatch(d -> "grass".equals(d.session().venue())));
    assertThat(written.years()).as("some go elsewhere").anyMatch(y -> y.days().stream().anyMatch(d -> moved(y.athleteId(), d)));
  }

  private static boolean moved(long athlete, PlannedDay d) {
    return plan.of(athlete).flatMap(y -> y.on(d.date())).filter(s -> "grass".equals(s.venue())).isPresent();
  }

  @Test
  void theSameSeedGivesTheSameAnswerOnAnyNumberOfThreads() {
    WhatIf hour = new WhatIf.MoreHours("gym", "Mill gym", DayOfWeek.TUESDAY);
    Chances one = usual(0.85, 5, hour).run(SEASONS, 1, n -> {});
    assertThat(usual(0.85, 5, hour).run(SEASONS, 2, n -> {})).isEqualTo(one);
    assertThat(usual(0.85, 6, hour).run(SEASONS, 1, n -> {})).isNotEqualTo(one);
  }

  @Test
  void twoAnswersAboutTheSameSeasonsAreZeroApart() {
    Chances c = usual(0.8, 7, new WhatIf.Nothing()).run(SEASONS, 1, n -> {});
    assertThat(c.answers().get(0).squad()).allSatisfy(b -> {
      assertThat(b.mean()).isZero();
      assertThat(b.error()).isZero();
    });
    assertThat(c.answers().get(0).athletes()).hasSize(6).allMatch(b -> b.mean() == 0 && b.error() == 0);
  }

  /** Paired, season by season: the same numbers are drawn, so a difference has a small error. */
  @Test
  void theChanceIsMonotoneInAttendanceWithinItsError() {
    double[] shares = {0.4, 0.6, 0.8, 1};
    double before = -1;
    double beforeSessions = -1;
    for (double share : shares) {
      Chances c = usual(share, 9).run(150, 2, n -> {});
      double chance = c.athletes().stream().flatMap(a -> a.approaches().stream()).mapToDouble(p -> p.atLeast(p.planned())).average().orElseThrow();
      double sessions = c.athletes().stream().mapToDouble(Chances.Athlete::sessions).sum();
      assertThat(chance).as("attendance %s", share).isGreaterThan(before - 2 * c.error(0.5) / Math.sqrt(6));
      assertThat(sessions).as("attendance %s", share).isGreaterThan(beforeSessions);
      before = chance;
      beforeSessions = sessions;
    }
    assertThat(before).isGreaterThan(0.3);
  }

  @Test
  void anHourMoreBuysSessionsAndAMeetLessTakesOneAway() {
    Chances c = usual(0.7, 2, new WhatIf.MoreHours("gym", "Mill gym", DayOfWeek.SATURDAY), new WhatIf.OneMeetLess("m4", "Meet 5")).run(SEASONS, 2, n -> {});
    Chances.Buys hour = c.answers().get(0).squad().get(2);
    assertThat(hour.mean()).isGreaterThan(2 * hour.error()).isPositive();
    assertThat(hour.error()).isPositive();
    Chances.Buys meet = c.answers().get(1).squad().get(2);
    assertThat(meet.mean()).isLessThanOrEqualTo(0).isGreaterThan(-1);
    assertThat(c.refusedDays()).as("in all of them").isZero();
  }

  @Test
  void stoppedItSaysWhatIsKnown() {
    SeasonSimulator s = usual(0.9, 1);
    Chances c = s.run(5000, 1, n -> {
      if (n == 7) {
        s.stop();
      }
    });
    assertThat(c.seasons()).isBetween(7, 8);
    assertThat(c.asked()).isEqualTo(5000);
    assertThat(c.athletes()).allMatch(a -> a.approaches().stream().allMatch(p -> Math.abs(p.by().values().stream().mapToDouble(x -> x).sum() - 1) < 1e-9));
  }

  @Test
  void afterOneDisturbanceTheRestHasNoRefusalAndOthersStayAsTheyWere() {
    SeasonInput input = with(Unplanned.NOTHING);
    Random random = new Random(5);
    for (int i = 0; i < 25; i++) {
      SeasonPlan.Year y = plan.years().get(random.nextInt(6));
      PlannedDay missed = y.days().get(random.nextInt(y.days().size()));
      Done done = Done.asPlanned(plan, missed.date().plusDays(1)).without(y.athleteId(), missed.date());
      SeasonPlan written = simulator(input, done, 1, Learning.asPlanned(), 1).written(0);
      assertThat(new GuardCheck(input).refused(written, done)).as("%s misses %s", y.athlete(), missed.date()).isEmpty();
      assertThat(Difference.between(plan, written, done.today())).allMatch(d -> d.athleteId() == y.athleteId());
    }
  }

  @Test
  void whoIsAwayInTheSeasonsFileStaysAway() {
    SeasonPlan written = usual(1, 3).written(1);
    INPUT.squad().forEach(m ->
        assertThat(written.of(m.id()).orElseThrow().days()).noneMatch(d -> m.away(d.date()).filter(w -> w != Away.Why.SOFT).isPresent()));
  }
}
