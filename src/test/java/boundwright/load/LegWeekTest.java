package boundwright.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
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

  /** RRL has 2 right and 1 left contact, RL x5 has 5 of each (worked). */
  @Test
  void contactsAreCountedForEachLegAndRungInTheRightWeek() {
    List<DayLoad> days = List.of(day(13, "RRL", 4, 2), day(7, "RL x5", 2, 0), day(6, "RRL", 10, 4), day(0, "RL x5", 3, 0));
    List<LegWeek> weeks = LegWeek.of(days, TODAY, 2, GuardLimits.DEFAULT);
    assertThat(weeks.get(0).first()).isEqualTo(TODAY.minusDays(13));
    assertThat(weeks.get(0).byRung()).containsOnlyKeys(0, 2).containsEntry(2, new LegWeek.Legs(8, 4)).containsEntry(0, new LegWeek.Legs(10, 10));
    assertThat(weeks.get(1).byRung()).containsEntry(4, new LegWeek.Legs(20, 10)).containsEntry(0, new LegWeek.Legs(15, 15));
    assertThat(weeks.get(1).contacts(Foot.RIGHT)).isEqualTo(35);
    // 32 contacts the week before lie under the floor of 60: caution above 66, refused above 78
    assertThat(weeks.get(1).cautionAbove()).isCloseTo(66, within(1e-9));
    assertThat(weeks.get(1).refusedAbove()).isCloseTo(78, within(1e-9));
  }

  /** What is drawn as a limit must be what the guard says, on any day: its own answer is the reference. */
  @RepeatedTest(40)
  void theLimitsAreTheGuardsOwn(RepetitionInfo info) {
    Random random = new Random(info.getCurrentRepetition());
    List<DayLoad> days = new ArrayList<>();
    for (int ago = 100; ago >= 0; ago--) {
      if (ago % 7 == 0 || random.nextInt(3) == 0) {
        days.add(day(ago, "RL x5", 1 + random.nextInt(9), 2));
      }
    }
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.OFF_SEASON);
    for (LegWeek week : LegWeek.of(days, TODAY, 8, GuardLimits.DEFAULT)) {
      DayLoad last = days.stream().filter(d -> d.date().equals(week.last())).findFirst().orElseThrow();
      Answer answer =
          guard.judge(Level.ADVANCED, LegCare.NONE, days, last).findings().stream()
              .filter(f -> f.rule() == Finding.Rule.RAMP)
              .findFirst()
              .orElseThrow()
              .answer();
      assertThat(week.answer()).as("seed %d, week up to %s, %s", info.getCurrentRepetition(), week.last(), week).isEqualTo(answer);
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
    assertThat(LegWeek.of(read, TODAY, 6, GuardLimits.DEFAULT)).isEqualTo(LegWeek.of(all, TODAY, 6, GuardLimits.DEFAULT));
  }

  @Test
  void aGrowingAthleteNewToBoundingIsHeldToTheLowerLimits() {
    Guard guard = new Guard(GuardLimits.DEFAULT, Season.PRE_SEASON);
    LegCare growing = new LegCare(true, TODAY.minusWeeks(2), List.of(), List.of());
    LegCare longAgo = new LegCare(true, TODAY.minusWeeks(11), List.of(), List.of());
    // 50-60 jumps a session for children who start (Johnson et al. 2011; read); pre-season beginners 100-250 (Chu 1998; memory)
    assertThat(guard.session(Level.BEGINNER, growing, List.of(), TODAY)).isEqualTo(new Band(50, 60));
    assertThat(guard.session(Level.BEGINNER, longAgo, List.of(), TODAY)).isEqualTo(new Band(100, 250));
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
