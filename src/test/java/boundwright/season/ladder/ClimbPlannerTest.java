package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Surface;
import boundwright.footfall.Sequence;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The climb on the expected day: examples by hand. */
class ClimbPlannerTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);
  private static final Set<DayOfWeek> DAYS = Set.of(DayOfWeek.MONDAY, DayOfWeek.THURSDAY);
  private static final GateRules.Stay STAY = GateRules.DEFAULT.stay();
  private static final SquadPace NOTHING = SquadPace.of(List.of(), STAY, PacePrior.USUAL);

  private static Member member(int steps, int fullSteps, List<Away> away, List<Entry> entries, History past) {
    Member m = InventedClimbs.member(1, steps, DAYS);
    return new Member(m.athlete(), false, null, Map.of(), fullSteps, DAYS, 300, null, away, entries, List.of(), past);
  }

  private static Member member(int steps) {
    return member(steps, 16, List.of(), List.of(), History.NONE);
  }

  private static PlannedClimb climb(SeasonInput season, Member m, SquadPace pace, double attendance) {
    return InventedClimbs.of(
        DrillFamily.ALTERNATE, new ClimbPlanner(season, ClimbRules.usual(STAY)).climbs(m, season.first(), List.of(), pace, attendance));
  }

  private static PlannedClimb climb(Member m, double attendance) {
    return climb(InventedClimbs.season(FIRST, 300, List.of(m)), m, NOTHING, attendance);
  }

  private static SeasonInput withMeet(Member m, LocalDate day) {
    SeasonInput s = InventedClimbs.season(FIRST, 300, List.of(member(0)));
    return new SeasonInput(s.name(), s.first(), s.last(), s.periods(), List.of(new Meet("M", "Invented meet", day)), s.venues(), List.of(m), s.rules());
  }

  private static LocalDate decided(PlannedClimb c) {
    return c.climb().decisions().get(0).date();
  }

  @Test
  void theExpectedDayIsTheMeanOfSessionsOnTheCalendarAndNotTheEarliestPossible() {
    StayForecast stay = climb(member(2), 1).stays().get(0);
    // two sessions a week; the n-th is on Monday or Thursday; ready at the first whole session not below those needed
    double days = 0;
    for (int n = 0; n < 400; n++) {
      LocalDate session = FIRST.plusDays(7L * (n / 2) + (n % 2) * 3L);
      boolean over = ChronoUnit.DAYS.between(FIRST, session) >= 14;
      double ready = over ? stay.pace().chance(0, n + 1) : 0;
      days += (1 - ready) * (n % 2 == 0 ? 3 : 4);
    }
    assertThat(stay.leastOver()).isEqualTo(FIRST.plusDays(14));
    assertThat((double) ChronoUnit.DAYS.between(FIRST, stay.expected())).isCloseTo(days, within(0.6));
    assertThat(stay.expected()).isAfter(FIRST.plusDays(28));
    assertThat(stay.early()).isBefore(stay.expected());
    assertThat(stay.late()).isAfter(stay.expected());
  }

  @Test
  void itIsDecidedOnATrainingDayFromTheExpectedDayOnAndBeginsOnTheNext() {
    PlannedClimb c = climb(member(2), 1);
    StayForecast stay = c.stays().get(0);
    Climb.DecisionDay d = c.climb().decisions().get(0);
    assertThat(d.date().getDayOfWeek()).isIn(DAYS);
    assertThat(ChronoUnit.DAYS.between(stay.expected(), d.date())).isBetween(0L, 4L);
    assertThat(d.stays()).isEqualTo(2);
    assertThat(d.goesTo()).isEqualTo(4);
    assertThat(d.chance()).isBetween(0.5, 0.75);
    assertThat(c.climb().stages().get(1).from()).isBetween(d.date().plusDays(3), d.date().plusDays(4));
    assertThat(ChronoUnit.DAYS.between(d.date(), d.nextLook())).isBetween(7L, 32L);
    assertThat(stay.chanceNext()).as("more likely than not at the next look, or four weeks on").isGreaterThan(0.4);
  }

  @Test
  void withHalfTheAttendanceItTakesAboutTwiceAsLong() {
    double full = ChronoUnit.DAYS.between(FIRST, climb(member(2), 1).stays().get(0).expected());
    double half = ChronoUnit.DAYS.between(FIRST, climb(member(2), 0.5).stays().get(0).expected());
    assertThat(half / full).isBetween(1.8, 2.1);
  }

  @Test
  void nothingNewAndNoDecisionInTheWeekOfAMainMeet() {
    LocalDate planned = decided(climb(member(2), 1));
    for (int shift = 0; shift <= 6; shift++) {
      LocalDate meet = planned.plusDays(shift);
      Member m = member(2, 16, List.of(), List.of(new Entry("M", Entry.Importance.MAIN)), History.NONE);
      SeasonInput season = withMeet(m, meet);
      Climb c = climb(season, m, NOTHING, 1).climb();
      assertThat(c.decisions().get(0).date()).as("meet on %s", meet).isAfter(meet);
      assertThat(c.newIn(new Span(meet.minusDays(6), meet))).as("meet on %s", meet).isEmpty();
      Member usual = member(2, 16, List.of(), List.of(new Entry("M", Entry.Importance.USUAL)), History.NONE);
      assertThat(decided(climb(withMeet(usual, meet), usual, NOTHING, 1))).as("a meet out of training costs a session at most").isBefore(planned.plusDays(8));
    }
  }

  @Test
  void afterABreakTheLeastStayIsAskedAgain() {
    // away for four weeks, of which the first day is one day before the least stay would be over
    Span away = new Span(FIRST.plusDays(13), FIRST.plusDays(41));
    StayForecast stay = climb(member(2, 16, List.of(new Away(away, Away.Why.HELD)), List.of(), History.NONE), 1).stays().get(0);
    assertThat(stay.leastOver()).as("two weeks from the first day after it, Monday, as none were over before it")
        .isEqualTo(FIRST.plusDays(42 + 14));
    Span later = new Span(FIRST.plusDays(15), FIRST.plusDays(41));
    StayForecast known = climb(member(2, 16, List.of(new Away(later, Away.Why.AWAY)), List.of(), History.NONE), 1).stays().get(0);
    assertThat(known.leastOver()).as("two weeks were over on the fifteenth day").isEqualTo(FIRST.plusDays(14));
    assertThat(known.decision()).isNotNull();
    assertThat(Objects.requireNonNull(known.decision()).date()).as("one week again after the break").isAfterOrEqualTo(FIRST.plusDays(42 + 7));
  }

  @Test
  void aFamilyThatWorksThereAlreadyCountsForTheLeastStayAndASofterOneDoesNot() {
    Member hops = new Member(InventedClimbs.member(1, 2, DAYS).athlete(), false, null, Map.of(DrillFamily.SINGLE_LEG, 4, DrillFamily.ALTERNATE, 4),
        16, DAYS, 300, null, List.of(), List.of(), List.of(), month(4, "R x6"));
    SeasonInput season = InventedClimbs.season(FIRST, 300, List.of(hops));
    List<PlannedClimb> all = new ClimbPlanner(season, ClimbRules.usual(STAY)).climbs(hops, FIRST, List.of(), NOTHING, 1);
    assertThat(InventedClimbs.of(DrillFamily.ALTERNATE, all).stays().get(0).leastOver()).as("a month of hops from there").isEqualTo(FIRST);
    Member bounds = new Member(hops.athlete(), false, null, hops.steps(), 16, DAYS, 300, null, List.of(), List.of(), List.of(), month(4, "RL x5"));
    all = new ClimbPlanner(season, ClimbRules.usual(STAY)).climbs(bounds, FIRST, List.of(), NOTHING, 1);
    assertThat(InventedClimbs.of(DrillFamily.SINGLE_LEG, all).stays().get(0).leastOver()).as("bounds say nothing of hops").isEqualTo(FIRST.plusDays(14));
  }

  @Test
  void plannedDaysOfAFamilyThatWorksThereAlreadyCountToo() {
    Member m = member(2);
    Map<LocalDate, List<DrillFamily>> days = new TreeMap<>();
    for (int week = 0; week < 20; week++) {
      days.put(FIRST.plusWeeks(week), week < 3 ? List.of(DrillFamily.SINGLE_LEG) : List.of(DrillFamily.SINGLE_LEG, DrillFamily.ALTERNATE));
    }
    SeasonInput season = InventedClimbs.season(FIRST, 300, List.of(m));
    ClimbPlanner planner = new ClimbPlanner(season, ClimbRules.usual(STAY));
    List<PlannedClimb> all = planner.climbs(m, Planned.year(m, List.of(), days), FIRST, List.of(), NOTHING, 1);
    assertThat(InventedClimbs.of(DrillFamily.ALTERNATE, all).stays().get(0).leastOver()).as("the first day of bounds, three weeks after the hops began")
        .isEqualTo(FIRST.plusWeeks(3));
    Member below = new Member(m.athlete(), false, null, Map.of(DrillFamily.SINGLE_LEG, 0), 16, DAYS, 300, null, List.of(), List.of(), List.of(), History.NONE);
    all = planner.climbs(below, Planned.year(below, List.of(), days), FIRST, List.of(), NOTHING, 1);
    assertThat(InventedClimbs.of(DrillFamily.ALTERNATE, all).stays().get(0).leastOver()).as("hops from standing say nothing of two steps")
        .isEqualTo(FIRST.plusWeeks(5));
  }

  private static History month(int steps, String sequence) {
    return History.of(
        List.of(30, 26, 23, 19, 16, 12, 9, 5, 2).stream()
            .map(d -> new DayLoad(FIRST.minusDays(d), List.of(new Work(Sequence.parse(sequence), 6, steps, Surface.GRASS))))
            .toList());
  }

  @Test
  void theClimbEndsAtTheFullRunUpTheCoachsTopAndTwelve() {
    Set<Integer> to = Set.copyOf(climb(InventedClimbs.season(FIRST, 400, List.of(member(0))), member(0, 6, List.of(), List.of(), History.NONE), NOTHING, 1)
        .climb().stages().stream().map(Climb.Stage::steps).toList());
    assertThat(to).as("a full run-up of six").contains(0).isSubsetOf(0, 2, 4, 6);
    ClimbRules rules = new ClimbRules(STAY, Map.of(DrillFamily.SINGLE_LEG, 2), 7, 28, PacePrior.USUAL);
    Member m = member(0);
    List<PlannedClimb> all = new ClimbPlanner(InventedClimbs.season(FIRST, 400, List.of(m)), rules).climbs(m, FIRST, List.of(), NOTHING, 1);
    assertThat(InventedClimbs.of(DrillFamily.SINGLE_LEG, all).climb().stages()).extracting(Climb.Stage::steps).containsExactly(0, 2);
    assertThat(climb(member(12), 1).climb().decisions()).isEmpty();
  }

  @Test
  void bothBranchesInWords() {
    Fork fork =
        new Fork(DrillFamily.ALTERNATE, new Climb.DecisionDay(LocalDate.of(2026, 3, 12), 4, 6, 0.61, LocalDate.of(2026, 3, 26)), 0.5, 12, 3);
    assertThat(fork.sentence())
        .isEqualTo("If ready by 12 March: from 6 steps. Else stay, and look again on 26 March. Chance 0.6 (12 stays of this squad).");
    assertThat(climb(member(2), 1).forks().get(0).howSure()).endsWith("(no stay of this squad known yet).");
  }

  @Test
  void aPlanThatBeginsANewApproachLateIsFoundByTheGateItself() {
    Member m = member(2);
    LocalDate decided = FIRST.plusDays(21);
    Climb climb = new Climb(DrillFamily.ALTERNATE, List.of(new Climb.Stage(2, FIRST)), List.of(new Climb.DecisionDay(decided, 2, 4, 0.5, decided.plusDays(14))));
    SeasonPlan.Year soon = Planned.year(m, List.of(climb), List.of(FIRST, FIRST.plusDays(7), FIRST.plusDays(14), decided));
    assertThat(LeastStayCheck.of(m, soon, STAY)).isEmpty();
    SeasonPlan.Year late = Planned.year(m, List.of(climb), List.of(FIRST.plusDays(8), FIRST.plusDays(14), decided));
    assertThat(LeastStayCheck.of(m, late, STAY)).singleElement().satisfies(e -> assertThat(e.time().over(decided)).isEqualTo(decided.plusDays(1)));
    assertThat(LeastStayCheck.of(m, Planned.year(m, List.of(climb), List.of(FIRST.plusDays(7), decided)), STAY)).as("fourteen days are kept").isEmpty();
  }
}
