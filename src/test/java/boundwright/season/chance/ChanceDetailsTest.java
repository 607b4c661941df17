package boundwright.season.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import boundwright.season.Done;
import boundwright.season.MadeUpSeason;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Unplanned;
import boundwright.season.ladder.Turnout;
import boundwright.season.mend.Happened;
import boundwright.season.solve.SeasonWork;
import boundwright.season.weeks.WantedWeeks;
import boundwright.load.account.ContactWeights;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

class ChanceDetailsTest {
  private static final SeasonInput INPUT = MadeUpSeason.of(3, 16, 2);
  private static final SeasonWork.Habits HABITS = SeasonWork.ofFile().habits(INPUT.first());

  private static SeasonPlan empty() {
    return new SeasonPlan(
        INPUT.name(), 1,
        INPUT.squad().stream()
            .map(m -> new SeasonPlan.Year(m.id(), m.name(), List.of(), Happened.climbs(new SeasonPlan("", 0, List.of()), INPUT).get(INPUT.squad().indexOf(m)), List.of()))
            .toList());
  }

  private static SeasonSimulator of(SeasonPlan plan, WhatIf... asked) {
    return new SeasonSimulator(INPUT, plan, Done.nothing(INPUT), HABITS, Attendance.of(INPUT.squad(), 1), Learning.asPlanned(), List.of(asked), 1);
  }

  /** Worked by hand: the squad came 30 of 40 days, so 39 of 50 with the prior; then (28 + 7.8) / 40 and (2 + 7.8) / 20; unknown .78. */
  @Test
  void attendanceIsPooledWhereFewDaysAreKnown() {
    Attendance a = Attendance.learned(INPUT.squad(), Map.of(1L, new Turnout(28, 2), 2L, new Turnout(2, 8)));
    assertThat(a.days()).isEqualTo(40);
    assertThat(a.shares().get(1L)).isCloseTo(0.895, within(1e-9));
    assertThat(a.shares().get(2L)).isCloseTo(0.49, within(1e-9));
    assertThat(a.shares().get(3L)).isCloseTo(0.78, within(1e-9));
  }

  /** Mean 1/2, variance 1/12 and no correlation from day to day (textbook; 4 standard errors). */
  @Test
  void numbersAreUniformAndDrawnForWhatTheyAreAbout() {
    int n = 20_000;
    long key = new World(3, 7).key(World.What.COMES, 12);
    double[] u = IntStream.range(0, n).mapToDouble(i -> World.uniform(key, i)).toArray();
    double mean = IntStream.range(0, n).mapToDouble(i -> u[i]).average().orElseThrow();
    double with = IntStream.range(1, n).mapToDouble(i -> (u[i] - 0.5) * (u[i - 1] - 0.5)).average().orElseThrow();
    assertThat(DoubleStream.of(u).allMatch(x -> x >= 0 && x < 1)).isTrue();
    assertThat(mean).isCloseTo(0.5, within(4 / Math.sqrt(12.0 * n)));
    assertThat(IntStream.range(0, n).mapToDouble(i -> (u[i] - 0.5) * (u[i] - 0.5)).average().orElseThrow()).isCloseTo(1 / 12.0, within(4 * Math.sqrt(1 / 180.0 / n)));
    assertThat(with).isCloseTo(0, within(4 / 12.0 / Math.sqrt(n)));
    assertThat(World.uniform(new World(3, 7).key(World.What.COMES, 12), 400)).isEqualTo(u[400]);
    assertThat(World.uniform(new World(3, 8).key(World.What.COMES, 12), 400)).isNotEqualTo(u[400]);
    assertThat(World.uniform(new World(3, 7).key(World.What.AWAY, 12), 400)).isNotEqualTo(u[400]);
    assertThat(World.uniform(new World(3, 7).key(World.What.COMES, 13), 400)).isNotEqualTo(u[400]);
  }

  /** The second look at a season finds what the quick step would never leave: too much in seven days, and hard days too near. */
  @Test
  void theSecondLookFindsRefusedDays() {
    PlannedYear year =
        new PlannedYear(
            INPUT, INPUT.squad().get(0), empty().years().get(0), Done.nothing(INPUT), new WantedWeeks(INPUT).of(INPUT.squad().get(0)), List.of(), HABITS.stay(),
            new RepWeights(new ContactWeights(INPUT.rules().guard().scale())));
    int most = (int) new LoadRun(year.numbers, year.limits).most(1, 0);
    assertThat(refused(year, 10, most, false)).isZero();
    assertThat(refused(year, 10, most + 11, false)).isEqualTo(1);
    assertThat(refused(year, 10, 100, true)).isZero();
    assertThat(refused(year, 1, 100, true)).isEqualTo(1);
  }

  /** Days on which one leg has half of {@code load} on the first day and half on another. */
  private static int refused(PlannedYear year, int apart, int load, boolean hard) {
    DayLog log = new DayLog(year);
    for (int t = 0; t < year.days; t++) {
      Drills.Done d = new Drills.Done();
      boolean works = t == 0 || t == apart;
      d.right = t == 0 ? load : works ? 100 : 0;
      d.left = 0;
      d.hard = works && hard;
      log.tell(t, d);
    }
    return log.refused();
  }

  @Test
  void whatCannotBeIsRefusedInWords() {
    SeasonPlan plan = empty();
    refused(() -> SeasonSimulator.check(0), "0 simulated seasons", "1000 is usual");
    refused(() -> of(plan).run(1_000_000, 1, n -> {}), "1000000");
    refused(() -> Asked.of(INPUT, "hour:moon:tuesday"), "moon", "gym");
    refused(() -> Asked.of(INPUT, "hour:gym:someday"), "someday");
    refused(() -> Asked.of(INPUT, "without:moon"), "moon", "m1");
    refused(() -> Asked.of(INPUT, "faster"), "faster", "hour:PLACE:WEEKDAY");
    refused(() -> of(plan, new WhatIf.OneMeetLess("m6", "Meet 7")), "nobody's usual meet");
    refused(() -> Attendance.of(INPUT.squad(), 1.2), "1.2");
    refused(() -> new Unplanned(Collections.nCopies(12, 2.0), 1, 1), "2.0", "0 to 1");
    refused(() -> new Unplanned(List.of(), 1, 1), "twelve");
    refused(() -> of(new SeasonPlan("other", 1, List.of())), "not one of this season", "Runner 1");
    assertThat(of(plan).run(3, 1, n -> {}).athletes()).allMatch(a -> a.sessions() == 0 && a.load().stream().allMatch(b -> b.high() == 0));
  }

  private static void refused(ThrowingCallable what, String... words) {
    assertThatThrownBy(what).isInstanceOf(RefusedException.class).satisfies(e -> assertThat(e.getMessage()).contains(words));
  }
}
