package boundwright.season.year;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.GuardSettings;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.Work;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.SeasonRules;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.Wish;
import boundwright.season.weeks.WantedWeek;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Each rule: kept, on the boundary, broken. Limits are the guard's defaults: 30 % above the own weeks refused, 10 % caution, 120
 * standing-bound contacts a week for anybody, 48 and 72 hours between hard sessions (standings stand in {@code load.LoadSources}); the
 * taper's least cut of 41 % is Bosquet et al. 2007 (read).
 */
class YearRulesTest {
  private static final LocalDate FIRST = LocalDate.of(2026, 10, 5);

  /** A day may be rest, or what was added. */
  private static final class Made {
    private final List<Choice> choices = new ArrayList<>(List.of(Choice.REST));
    private boolean growing;
    private History past = History.NONE;
    private List<Entry> entries = List.of();
    private List<Meet> meets = List.of();
    private List<Wish> wishes = List.of();
    private WantedWeek week = new WantedWeek(0, Map.of(), false, false);
    private SeasonPlan.@Nullable Year published;
    private int days = 70;

    Choice add(double right, double left, int contacts, boolean hard, SessionKind kind, int venue) {
      Session session = new Session(kind, kind == SessionKind.MEET ? null : "v" + venue, List.of());
      Choice c =
          new Choice(
              choices.size(), session, venue, (int) Math.round(100 * right), (int) Math.round(100 * left), contacts, (int) Math.round(right - left), hard,
              kind == SessionKind.MEET, 0);
      choices.add(c);
      return c;
    }

    Choice add(double right, double left) {
      return add(right, left, 20, false, SessionKind.BOUNDS, 0);
    }

    YearLine line() {
      Member m =
          new Member(
              new Athlete(1, "Runner", Level.INTERMEDIATE, Foot.RIGHT, 0), growing, growing ? FIRST : null, Map.of(), 12, EnumSet.allOf(DayOfWeek.class), 200, null,
              List.of(), entries, wishes, past);
      Venue v = new Venue("v0", "Meadow", Surface.GRASS, true, 9, Map.of(DayOfWeek.MONDAY, new Venue.Hours(LocalTime.of(17, 0), LocalTime.of(19, 0))), List.of());
      SeasonInput input =
          new SeasonInput("Rules", FIRST, FIRST.plusDays(days - 1L), List.of(), meets, List.of(v), List.of(m), SeasonRules.usual(GuardSettings.DEFAULT));
      List<List<Choice>> all = new ArrayList<>();
      for (int t = 0; t < days; t++) {
        all.add(choices);
      }
      List<WantedWeek> weeks = new ArrayList<>();
      for (int w = 0; w < (days + 6) / 7; w++) {
        weeks.add(week);
      }
      return new YearLine(new YearProblem(input, m, all, weeks, published));
    }
  }

  private static YearLine with(YearLine line, Object... dayAndChoice) {
    for (int i = 0; i < dayAndChoice.length; i += 2) {
      line.choose((Integer) dayAndChoice[i], (Choice) dayAndChoice[i + 1]);
    }
    return line;
  }

  @Test
  void ownWeeksAreRefusedAboveThirtyPerCentOfTheWeekForAnybody() {
    Made made = new Made();
    Choice kept = made.add(50, 50);
    Choice edge = made.add(77.9, 77.9);
    Choice over = made.add(77.9, 77.91);
    Choice far = made.add(80, 80);
    YearLine l = made.line();
    assertThat(YearRules.ownWeeksRefused(l, 40, kept)).isZero();
    assertThat(YearRules.ownWeeksRefused(l, 40, edge)).as("78 a leg, less the tenth kept for rounding").isZero();
    assertThat(YearRules.ownWeeksRefused(l, 40, over)).isEqualTo(1);
    assertThat(YearRules.ownWeeksRefused(l, 40, far)).as("160.1 of 156").isEqualTo(5);
    assertThat(YearRules.ownWeeksRefused(l, 40, Choice.REST)).isZero();
  }

  @Test
  void ownWeeksAreJudgedForEachLegToo() {
    Made made = new Made();
    Choice edge = made.add(77.9, 0);
    Choice right = made.add(78, 0);
    Choice left = made.add(0, 90);
    YearLine l = made.line();
    assertThat(YearRules.ownWeeksRefused(l, 40, edge)).isZero();
    assertThat(YearRules.ownWeeksRefused(l, 40, right)).isEqualTo(1);
    assertThat(YearRules.ownWeeksRefused(l, 40, left)).isEqualTo(13);
  }

  @Test
  void ownWeeksLookAtTheWeekBeforeAndAQuarterOfFour() {
    Made made = new Made();
    Choice hundred = made.add(100, 100);
    Choice more = made.add(129.9, 129.9);
    Choice tooMuch = made.add(130, 130);
    Choice month = made.add(65, 64.8);
    YearLine l = with(made.line(), 30, hundred);
    assertThat(YearRules.ownWeeksRefused(l, 37, more)).as("the 200 of seven days before, the last day they count").isZero();
    assertThat(YearRules.ownWeeksRefused(l, 37, tooMuch)).isEqualTo(1);
    assertThat(YearRules.ownWeeksRefused(l, 44, more)).as("the week before is over, a quarter of 200 is less than the week for anybody").isPositive();
    with(l, 16, hundred, 23, hundred);
    assertThat(YearRules.ownWeeksRefused(l, 45, month)).as("a quarter of 600 is 150, in the weeks before these seven days").isZero();
    assertThat(YearRules.ownWeeksRefused(l, 45, more)).isPositive();
  }

  @Test
  void theCoachsWordOnTheWeeksBeforeFillsTheDaysWithoutALog() {
    Made made = new Made();
    made.past = new History(List.of(), null, new LastWeek(FIRST, 280));
    Choice kept = made.add(181.9, 181.9);
    Choice over = made.add(182.1, 182.1);
    YearLine l = made.line();
    assertThat(YearRules.ownWeeksRefused(l, 0, kept)).isZero();
    assertThat(YearRules.ownWeeksRefused(l, 0, over)).isPositive();
    assertThat(YearRules.ownWeeksRefused(l, 40, kept)).as("weeks later nothing is left of it").isPositive();
  }

  @Test
  void aMeetIsRefusedForWhatWasTrainedBeforeItAlone() {
    Made made = new Made();
    Choice meet = made.add(100, 100, 22, true, SessionKind.MEET, -1);
    Choice much = made.add(100, 100);
    YearLine l = made.line();
    assertThat(YearRules.ownWeeksRefused(l, 40, meet)).isZero();
    assertThat(YearRules.ownWeeksCaution(l, 40, meet)).isEqualTo(1);
    with(l, 38, much);
    assertThat(YearRules.ownWeeksRefused(l, 40, meet)).isPositive();
  }

  @Test
  void ownWeeksAreCautionedAboveTenPerCent() {
    Made made = new Made();
    Choice kept = made.add(60, 60);
    Choice edge = made.add(66, 66);
    Choice over = made.add(66.01, 66);
    YearLine l = made.line();
    assertThat(YearRules.ownWeeksCaution(l, 40, kept)).isZero();
    assertThat(YearRules.ownWeeksCaution(l, 40, edge)).isZero();
    assertThat(YearRules.ownWeeksCaution(l, 40, over)).isEqualTo(1);
  }

  @Test
  void hardSessionsAreRefusedBelowTwoDaysAndCautionedBelowThree() {
    Made made = new Made();
    Choice hard = made.add(10, 10, 60, true, SessionKind.BOUNDS, 0);
    Choice easy = made.add(10, 10);
    Choice meet = made.add(10, 10, 22, true, SessionKind.MEET, -1);
    YearLine l = with(made.line(), 20, hard);
    assertThat(YearRules.spacingRefused(l, 21, hard)).isEqualTo(1);
    assertThat(YearRules.spacingRefused(l, 22, hard)).isZero();
    assertThat(YearRules.spacingRefused(l, 21, easy)).isZero();
    assertThat(YearRules.spacingRefused(l, 21, meet)).as("a meet is never refused for it").isZero();
    assertThat(YearRules.spacingCaution(l, 21, meet)).isEqualTo(1);
    assertThat(YearRules.spacingCaution(l, 22, hard)).isEqualTo(1);
    assertThat(YearRules.spacingCaution(l, 23, hard)).isZero();
  }

  @Test
  void hardSessionsBeforeTheSeasonCount() {
    Made made = new Made();
    made.past = History.of(List.of(new DayLoad(FIRST.minusDays(1), List.of(new Work(Sequence.parse("RL x5"), 6, 0, Surface.GRASS)))));
    Choice hard = made.add(10, 10, 60, true, SessionKind.BOUNDS, 0);
    YearLine l = made.line();
    assertThat(YearRules.spacingRefused(l, 0, hard)).isEqualTo(1);
    assertThat(YearRules.spacingRefused(l, 1, hard)).isZero();
    assertThat(YearRules.spacingCaution(l, 1, hard)).isEqualTo(1);
    assertThat(YearRules.spacingCaution(l, 2, hard)).isZero();
  }

  @Test
  void growingAthletesAreCautionedAboveTheirSessionsInSevenDays() {
    Made made = new Made();
    made.growing = true;
    Choice easy = made.add(10, 10);
    YearLine l = with(made.line(), 20, easy, 22, easy);
    assertThat(YearRules.sessionsCaution(l, 26, easy)).as("the third in seven days").isEqualTo(1);
    assertThat(YearRules.sessionsCaution(l, 27, easy)).as("the first is a week ago").isZero();
    made.growing = false;
    assertThat(YearRules.sessionsCaution(with(made.line(), 20, easy, 22, easy), 26, easy)).isZero();
  }

  private static YearProblem.Taper taper(YearLine l) {
    return l.problem().tapers[0];
  }

  @Test
  void theLoadFallsBeforeAMainMeetTheMeetCounted() {
    Made made = new Made();
    made.meets = List.of(new Meet("m", "Alderfield", FIRST.plusDays(60)));
    made.entries = List.of(new Entry("m", Entry.Importance.MAIN));
    Choice week = made.add(70, 70);
    Choice kept = made.add(82.6, 82.6);
    Choice over = made.add(83, 83);
    Choice meet = made.add(40, 40, 22, true, SessionKind.MEET, -1);
    YearLine l = with(made.line(), 20, week, 27, week, 34, week, 41, week);
    assertThat(taper(l).from()).isEqualTo(47);
    with(l, 50, kept);
    assertThat(YearRules.taperRefused(l, taper(l), 0)).as("59 % of two weeks of 140 are 165.2").isZero();
    with(l, 50, over);
    assertThat(YearRules.taperRefused(l, taper(l), 0)).isEqualTo(1);
    with(l, 50, Choice.REST, 60, meet);
    assertThat(YearRules.taperRefused(l, taper(l), 8520)).as("80 of the meet and 85.2 more").isZero();
    assertThat(YearRules.taperRefused(l, taper(l), 8521)).isEqualTo(1);
    YearLine little = with(made.line(), 20, week, 50, over);
    assertThat(YearRules.taperRefused(little, taper(little), 0)).as("35 a week before is nothing to taper from").isZero();
  }

  @Test
  void wishesOfAWeekCountWhatIsMissingAndWhatNobodyAskedFor() {
    Made made = new Made();
    made.week = new WantedWeek(0, Map.of(SessionKind.BOUNDS, 2, SessionKind.COMBINATIONS, 1), false, false);
    Choice bounds = made.add(1, 1);
    Choice combinations = made.add(1, 1, 20, false, SessionKind.COMBINATIONS, 0);
    YearLine l = made.line();
    assertThat(YearRules.weekWishes(l, 1)).isEqualTo(3);
    with(l, 7, bounds, 9, bounds, 11, combinations);
    assertThat(YearRules.weekWishes(l, 1)).isZero();
    with(l, 12, bounds);
    assertThat(YearRules.weekWishes(l, 1)).isEqualTo(1);
    with(l, 12, Choice.REST, 11, bounds);
    assertThat(YearRules.weekWishes(l, 1)).as("bounds in the place of combinations").isEqualTo(1);
  }

  @Test
  void aWishForADayIsMetOrNot() {
    Made made = new Made();
    made.wishes = List.of(new Wish(FIRST.plusDays(5), null), new Wish(FIRST.plusDays(6), SessionKind.COMBINATIONS));
    Choice bounds = made.add(1, 1);
    Choice combinations = made.add(1, 1, 20, false, SessionKind.COMBINATIONS, 0);
    YearLine l = made.line();
    assertThat(YearRules.dayWish(l, 5, Choice.REST)).isZero();
    assertThat(YearRules.dayWish(l, 5, bounds)).isEqualTo(1);
    assertThat(YearRules.dayWish(l, 6, combinations)).isZero();
    assertThat(YearRules.dayWish(l, 6, bounds)).isEqualTo(1);
    assertThat(YearRules.dayWish(l, 6, Choice.REST)).isEqualTo(1);
    assertThat(YearRules.dayWish(l, 7, bounds)).as("nothing is wished for that day").isZero();
  }

  @Test
  void aWeekIsOffByWhatIsMissingOrTooMuch() {
    Made made = new Made();
    made.week = new WantedWeek(100, Map.of(), false, false);
    Choice exact = made.add(50, 50);
    Choice little = made.add(40.2, 40.2);
    Choice much = made.add(60, 60.6);
    YearLine l = made.line();
    assertThat(YearRules.off(with(l, 7, exact), 1)).isZero();
    assertThat(YearRules.off(with(l, 7, little), 1)).as("19.6, rounded").isEqualTo(20);
    assertThat(YearRules.off(with(l, 7, much), 1)).isEqualTo(21);
    assertThat(YearRules.off(l, 2)).isEqualTo(100);
  }

  @Test
  void legsDifferWeekByWeek() {
    Made made = new Made();
    Choice right = made.add(12, 8);
    Choice left = made.add(8, 12);
    YearLine l = with(made.line(), 7, right);
    assertThat(YearRules.unequal(l, 1)).isEqualTo(4);
    assertThat(YearRules.unequal(with(l, 9, left), 1)).isZero();
    assertThat(YearRules.unequal(with(l, 14, left), 2)).as("another week does not make up for it").isEqualTo(4);
  }

  @Test
  void aDayIsChangedWhenItIsNotAsPublished() {
    Made made = new Made();
    Choice bounds = made.add(10, 10);
    made.published =
        new SeasonPlan.Year(
            1, "Runner", List.of(new PlannedDay(FIRST.plusDays(3), new Session(SessionKind.BOUNDS, "v0", List.of()))), List.of(), List.of());
    YearLine l = made.line();
    assertThat(YearRules.changed(l, 3, bounds)).isZero();
    assertThat(YearRules.changed(l, 3, Choice.REST)).isEqualTo(1);
    assertThat(YearRules.changed(l, 4, Choice.REST)).isZero();
    assertThat(YearRules.changed(l, 4, bounds)).isEqualTo(1);
    made.published = null;
    assertThat(YearRules.changed(made.line(), 4, bounds)).as("nothing was published yet").isZero();
  }

  @Test
  void aSessionRepeatsTheOneBefore() {
    Made made = new Made();
    Choice twenty = made.add(10, 10);
    Choice thirty = made.add(15, 15, 30, false, SessionKind.BOUNDS, 0);
    Choice elsewhere = made.add(10, 10, 20, false, SessionKind.BOUNDS, 1);
    YearLine l = with(made.line(), 10, twenty);
    assertThat(YearRules.same(l, 13, twenty)).isEqualTo(1);
    assertThat(YearRules.same(l, 13, thirty)).isZero();
    assertThat(YearRules.same(l, 13, elsewhere)).isZero();
    assertThat(YearRules.same(l, 24, twenty)).isEqualTo(1);
    assertThat(YearRules.same(l, 25, twenty)).as("more than a fortnight ago").isZero();
    assertThat(YearRules.same(with(l, 12, thirty), 13, twenty)).as("another came between").isZero();
  }

  @Test
  void levelsAndKindsStandInArraysInTheirOrder() {
    assertThat(Arrays.stream(boundwright.season.year.Level.values()).mapToInt(boundwright.season.year.Level::at)).containsExactly(0, 1, 2, 3, 4, 5, 6, 7);
    assertThat(Arrays.stream(SessionKind.values()).mapToInt(SessionKind::at)).containsExactly(0, 1, 2, 3, 4);
  }

  @Test
  void theScoreAfterAnyChangesIsThatOfTheDaysAsTheyAre() {
    long seed = 20261129;
    Random random = new Random(seed);
    for (int round = 0; round < 30; round++) {
      Made made = new Made();
      made.growing = random.nextBoolean();
      made.week = new WantedWeek(150, Map.of(SessionKind.BOUNDS, 2, SessionKind.COMBINATIONS, 1), false, false);
      made.meets = List.of(new Meet("m", "Alderfield", FIRST.plusDays(60)));
      made.entries = List.of(new Entry("m", Entry.Importance.MAIN));
      made.wishes = List.of(new Wish(FIRST.plusDays(30), null));
      for (int i = 0; i < 12; i++) {
        made.add(
            random.nextInt(90), random.nextInt(90), 20 + 10 * random.nextInt(5), random.nextBoolean(),
            random.nextBoolean() ? SessionKind.BOUNDS : SessionKind.COMBINATIONS, random.nextInt(2));
      }
      YearLine line = made.line();
      Choice[] now = new Choice[made.days];
      Arrays.fill(now, Choice.REST);
      for (int i = 0; i < 300; i++) {
        int day = random.nextInt(made.days);
        now[day] = made.choices.get(random.nextInt(made.choices.size()));
        line.choose(day, now[day]);
      }
      YearLine fresh = made.line();
      for (int t = made.days - 1; t >= 0; t--) {
        fresh.choose(t, now[t]);
      }
      assertThat(line.total()).as("seed %d, round %d", seed, round).containsExactly(fresh.total());
      assertThat(line.copy().total()).containsExactly(line.total());
      assertThat(line.refusals()).isEqualTo(fresh.refusals());
    }
  }
}
