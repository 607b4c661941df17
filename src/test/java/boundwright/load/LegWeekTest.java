package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegCounts;
import boundwright.load.account.LegWeek;
import boundwright.load.account.LoadScale;
import boundwright.load.account.OtherWork;
import boundwright.load.account.Work;
import boundwright.load.rating.RatedWeek;
import boundwright.load.rating.SessionRating;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** Weeks of contacts against the guard that judges them, and against sums done by hand (worked). */
class LegWeekTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);

  private static DayLoad day(int ago, String letters, int reps, int steps) {
    return new DayLoad(TODAY.minusDays(ago), List.of(new Work(Sequence.parse(letters), reps, steps, Surface.GRASS)));
  }

  private static final ContactWeights WEIGHTS = new ContactWeights(LoadScale.DEFAULT);

  /** RRL has 2 right and 1 left contact, RL x5 has 5 of each (worked). */
  @Test
  void contactsAreCountedForEachLegAndRungInTheRightWeek() {
    List<DayLoad> days = List.of(day(13, "RRL", 4, 2), day(7, "RL x5", 2, 0), day(6, "RRL", 10, 4), day(0, "RL x5", 3, 0));
    List<LegWeek> weeks = LegWeek.of(History.of(days), TODAY, 2, WEIGHTS);
    assertThat(weeks.get(0).first()).isEqualTo(TODAY.minusDays(13));
    assertThat(weeks.get(0).byRung()).containsOnlyKeys(0, 2);
    assertThat(weeks.get(0).counts()).isEqualTo(new LegCounts.Legs(18, 14));
    assertThat(weeks.get(1).byRung()).containsOnlyKeys(0, 4);
    assertThat(weeks.get(1).counts()).isEqualTo(new LegCounts.Legs(35, 25));
    double ten = WEIGHTS.of(new Work(Sequence.parse("RL x5"), 1, 0, Surface.GRASS), 7).units();
    assertThat(weeks.get(1).byRung().values().stream().mapToDouble(LegWeek.Legs::both).sum()).isCloseTo(weeks.get(1).units(), within(1e-9));
    assertThat(weeks.get(1).before()).as("the week before, which is the one drawn beside it").isCloseTo(weeks.get(0).units(), within(1e-9));
    assertThat(ten).as("ten standing bounds are about ten of the unit").isBetween(9.0, 11.0);
  }

  /** What is drawn must be what the guard compares, on any day: its own finding is the reference. */
  @RepeatedTest(40)
  void theOwnWeekIsTheGuardsOwn(RepetitionInfo info) {
    Random random = new Random(info.getCurrentRepetition());
    List<DayLoad> days = new ArrayList<>();
    for (int ago = 100; ago >= 0; ago--) {
      if (ago % 7 == 0 || random.nextInt(3) == 0) {
        days.add(day(ago, "RL x5", 4 + random.nextInt(9), 2));
      }
    }
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON, WEIGHTS);
    for (LegWeek week : LegWeek.of(History.of(days), TODAY, 8, WEIGHTS)) {
      DayLoad last = days.stream().filter(d -> d.date().equals(week.last())).findFirst().orElseThrow();
      Finding own =
          guard.judge(Level.ADVANCED, LegCare.NONE, days, last).findings().stream()
              .filter(f -> f.rule() == Finding.Rule.OWN_WEEKS)
              .findFirst()
              .orElseThrow();
      assertThat(own.value()).as("seed %d, week up to %s", info.getCurrentRepetition(), week.last()).isCloseTo(week.units(), within(1e-6));
      double base = Math.max(week.before(), GuardLimits.DEFAULT.startWeek());
      assertThat(own.limit()).isCloseTo(base * (own.answer() == Answer.REFUSED ? 1.3 : 1.1), within(1e-6));
    }
  }

  /** Reading the days that {@link LegWeek#daysNeeded} asks for gives the same weeks as reading all. */
  @Test
  void theDaysNeededAreEnough() {
    List<DayLoad> all = new ArrayList<>();
    for (int ago = 200; ago >= 0; ago -= 2) {
      all.add(day(ago, "RRL", 1 + ago % 17, 0));
    }
    LocalDate from = TODAY.minusDays(LegWeek.daysNeeded(6));
    List<DayLoad> read = all.stream().filter(d -> !d.date().isBefore(from)).toList();
    assertThat(LegWeek.of(History.of(read), TODAY, 6, WEIGHTS)).isEqualTo(LegWeek.of(History.of(all), TODAY, 6, WEIGHTS));
  }

  @Test
  void otherWorkStandsInTheWeekWithoutARung() {
    OtherWork sprints = new OtherWork(0, 1, TODAY, OtherWork.Kind.SPRINT, 200, 0);
    LegWeek week = LegWeek.of(History.of(List.of(new DayLoad(TODAY, List.of(), List.of(sprints)))), TODAY, 1, WEIGHTS).get(0);
    assertThat(week.byRung()).containsOnlyKeys(LegWeek.OTHER);
    assertThat(week.counts()).as("sprint steps never enter the handbooks' contacts").isEqualTo(LegCounts.Legs.NONE);
    assertThat(week.units(Foot.LEFT)).isEqualTo(week.units(Foot.RIGHT)).isPositive();
  }

  /** The week 420, 0, 540, 300, 0, 720, 0: sum 1980, monotony .9642, strain 1909.14 (Foster 1998; worked). */
  @Test
  void ratedWeeksAreFostersWeek() {
    List<SessionRating> ratings =
        List.of(
            new SessionRating(1, TODAY.minusDays(6), 7, 60), new SessionRating(1, TODAY.minusDays(4), 9, 60),
            new SessionRating(1, TODAY.minusDays(3), 5, 60), new SessionRating(1, TODAY.minusDays(1), 8, 90),
            new SessionRating(1, TODAY.minusDays(7), 10, 100));
    RatedWeek week = RatedWeek.of(ratings, List.of(day(6, "RRL", 1, 0), day(5, "RRL", 1, 0)), TODAY, 1).get(0);
    assertThat(week.rated()).isEqualTo(4);
    assertThat(week.sessions()).isEqualTo(2);
    assertThat(week.week().sum()).isEqualTo(1980);
    assertThat(week.week().monotony()).isCloseTo(0.9642, within(5e-5));
    assertThat(week.week().strain()).isCloseTo(1909.14, within(5e-3));
  }

  /** 21 days of 100, then 7 of 200: 186.651612 over 7 days, 139.359836 over 28 (Williams et al. 2017; worked). */
  @Test
  void weightedMeansStartAtTheFirstRating() {
    List<SessionRating> ratings = new ArrayList<>();
    for (int ago = 27; ago >= 0; ago--) {
      ratings.add(new SessionRating(1, TODAY.minusDays(ago), ago >= 7 ? 2 : 4, 50));
    }
    assertThat(RatedWeek.weightedMean(ratings, TODAY, 7).orElseThrow()).isCloseTo(186.651612, within(1e-6));
    assertThat(RatedWeek.weightedMean(ratings, TODAY, 28).orElseThrow()).isCloseTo(139.359836, within(1e-6));
    assertThat(RatedWeek.weightedMean(List.of(), TODAY, 7)).isEmpty();
  }
}
