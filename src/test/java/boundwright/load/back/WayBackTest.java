package boundwright.load.back;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.LoadScale;
import boundwright.load.account.Work;
import boundwright.quantity.RefusedException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Stages, what a breach costs, and where a way back stands by what was entered and felt. */
class WayBackTest {
  private static final LocalDate BEGUN = LocalDate.of(2026, 3, 2);
  private static final ContactWeights WEIGHTS = new ContactWeights(LoadScale.DEFAULT);

  /** What one contact of {@link #bounds} weighs. */
  private static final double EACH = WEIGHTS.of(bounds(0, 1)).units(Foot.RIGHT);

  private static WayBack way(BackStep... steps) {
    return new WayBack(1, Foot.RIGHT, BEGUN, Stages.USUAL, 100 * EACH, 28, new WayBack.Clearance("Dr Invented", BEGUN, true), List.of(steps), null);
  }

  private static BackStep on(int week, int stage) {
    return new BackStep(week, BEGUN.plusWeeks(week), BackStep.Kind.ON, stage, "Coach", "");
  }

  private static Felt tooMuch(LocalDate day) {
    return new Felt(day, Grade.TOO_MUCH);
  }

  /** Worked: ln(1/.3)/ln 1.15 = 8.61 and ln(1/.3)/ln 1.10 = 12.63 weeks, rounded up; the other rows likewise. */
  @ParameterizedTest
  @CsvSource({"0.30, 0.15, 8.61, 9", "0.30, 0.10, 12.63, 13", "0.50, 0.10, 7.27, 8", "0.80, 0.25, 1.00, 1"})
  void weeksToTheFormerLoadAreTheWorkedOnes(double start, double growth, double exact, int weeks) {
    Stages s = new Stages(start, growth);
    assertThat(Math.log(1 / start) / Math.log(1 + growth)).isCloseTo(exact, within(0.006));
    assertThat(s.count()).isEqualTo(weeks);
    assertThat(new ShortestWay(s).days(BackState.rested(0), DayOfWeek.MONDAY)).isEqualTo(7 * weeks);
    assertThat(s.share(weeks - 1)).isLessThan(1);
    assertThat(s.share(weeks)).isEqualTo(1);
    for (int k = 1; k < weeks; k++) {
      assertThat(s.share(k) / s.share(k - 1)).isCloseTo(1 + growth, within(1e-12));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.30, 0.15", "0.30, 0.10", "0.60, 0.10"})
  void aBreachAtAnyStageCostsExactlyOneStage(double start, double growth) {
    Stages s = new Stages(start, growth);
    ShortestWay shortest = new ShortestWay(s);
    for (int k = 0; k < s.count(); k++) {
      int before = shortest.days(BackState.rested(k), DayOfWeek.MONDAY);
      for (int clean = 0; clean <= 1; clean++) {
        for (int days = 0; days < Stages.LEAST_DAYS; days++) {
          BackState after = new BackState(BackState.LONG_AGO, k, clean, days).next(true, Grade.TOO_MUCH);
          assertThat(after).isEqualTo(new BackState(1, Math.max(0, k - 1), 0, 0));
        }
      }
      int back = shortest.days(BackState.rested(Stages.after(k, Grade.TOO_MUCH)), DayOfWeek.MONDAY);
      assertThat(back - before).as("stage %d", k).isEqualTo(k == 0 ? 0 : Stages.LEAST_DAYS);
      // the same by the log: a coach who stepped to k, and one pain
      BackStep[] steps = new BackStep[k];
      for (int i = 0; i < k; i++) {
        steps[i] = on(i + 1, i + 1);
      }
      WayBack way =
          new WayBack(1, Foot.LEFT, BEGUN, s, 100, 28, new WayBack.Clearance("Dr Invented", BEGUN, true), List.of(steps), null);
      LocalDate day = BEGUN.plusWeeks(k).plusDays(3);
      assertThat(way.on(day, List.of()).stage()).isEqualTo(k);
      assertThat(way.on(day, List.of(tooMuch(day))).stage()).isEqualTo(Math.max(0, k - 1));
      assertThat(way.on(day.plusDays(9), List.of(tooMuch(day), tooMuch(day.plusDays(1)))).stage()).as("two days in a row are one").isEqualTo(Math.max(0, k - 1));
      assertThat(way.on(day.plusDays(9), List.of(tooMuch(day), tooMuch(day.plusDays(2)))).stage()).as("another one is another").isEqualTo(Math.max(0, k - 2));
    }
  }

  @Test
  void aStepOfTheSameDayIsTakenBackByWhatWasFeltAfterIt() {
    WayBack way = way(on(1, 1));
    LocalDate day = BEGUN.plusWeeks(1);
    assertThat(way.on(day.minusDays(1), List.of()).stage()).isZero();
    assertThat(way.on(day, List.of())).isEqualTo(new WayBack.Stand(1, day, null));
    assertThat(way.on(day, List.of(tooMuch(day)))).isEqualTo(new WayBack.Stand(0, day.plusDays(1), day));
    assertThat(way.on(day, List.of(new Felt(day, Grade.FELT))).stage()).as("acceptable stays").isEqualTo(1);
    assertThat(way.on(day, List.of(tooMuch(BEGUN.minusDays(1)))).stage()).as("before it began").isEqualTo(1);
  }

  @Test
  void daysToComeAreJudgedAStageAWeekAndNeverSooner() {
    WayBack way = way();
    LocalDate today = BEGUN.plusDays(3);
    assertThat(LegBack.of(way, today, List.of(), null).stageOn(BEGUN.plusDays(6))).isZero();
    assertThat(LegBack.of(way, today, List.of(), null).stageOn(BEGUN.plusDays(7))).isEqualTo(1);
    assertThat(LegBack.of(way, today, List.of(), null).stageOn(BEGUN.plusDays(14))).isEqualTo(2);
    assertThat(LegBack.of(way, today, List.of(), null).stageOn(BEGUN.plusDays(1000))).isEqualTo(Stages.USUAL.count());
    LocalDate late = BEGUN.plusDays(20);
    assertThat(LegBack.of(way, late, List.of(), null).stageOn(late)).as("nobody stepped").isZero();
    assertThat(LegBack.of(way, late, List.of(), null).stageOn(late.plusDays(1))).isEqualTo(1);
  }

  private static DayLoad bounds(int day, int contacts) {
    return new DayLoad(BEGUN.plusDays(day), List.of(new Work(Sequence.parse("R"), contacts, 0, Surface.GRASS)));
  }

  @Test
  void onlyDaysLoadedAsTheStageAsksAndFeltByNobodyAreClean() {
    WayBack way = way();
    WayBack.Stand stand = way.on(BEGUN.plusDays(7), List.of());
    // 30 of 100 a week, 15 a day: 8 are more than half of it, 7 are not
    List<DayLoad> done = List.of(bounds(0, 8), bounds(2, 7), bounds(4, 15));
    assertThat(BackState.cleanDays(way, stand, BEGUN.plusDays(7), done, List.of(), WEIGHTS)).containsExactly(BEGUN, BEGUN.plusDays(4));
    assertThat(BackState.of(way, BEGUN.plusDays(7), done, List.of(), WEIGHTS)).isEqualTo(new BackState(3, 0, 2, 7));
    assertThat(BackState.of(way, BEGUN.plusDays(7), done, List.of(), WEIGHTS).earned()).isTrue();
    assertThat(BackState.of(way, BEGUN.plusDays(6), done, List.of(), WEIGHTS).earned()).as("a week is not over").isFalse();
    List<Felt> nextMorning = List.of(new Felt(BEGUN.plusDays(5), Grade.FELT));
    assertThat(BackState.cleanDays(way, stand, BEGUN.plusDays(7), done, nextMorning, WEIGHTS)).containsExactly(BEGUN);
    assertThat(BackState.of(way, BEGUN.plusDays(5), done, List.of(), WEIGHTS).sinceLoaded()).isEqualTo(1);
  }

  @Test
  void theFormerWeekIsTheMeanOfTheFourUpToTheLastDay() {
    List<DayLoad> days = List.of(bounds(-70, 99), bounds(-57, 10), bounds(-50, 20), bounds(-44, 30), bounds(-40, 40), bounds(-5, 8));
    FormerWeek former = FormerWeek.of(days, Foot.RIGHT, BEGUN.minusDays(30), BEGUN.minusDays(400), WEIGHTS).orElseThrow();
    assertThat(former.last()).isEqualTo(BEGUN.minusDays(40));
    assertThat(former.units()).isCloseTo(100 / 4.0 * EACH, within(1e-9));
    assertThat(FormerWeek.of(days, Foot.LEFT, BEGUN, BEGUN.minusDays(70), WEIGHTS)).isEmpty();
    assertThat(FormerWeek.of(days, Foot.RIGHT, BEGUN.minusDays(63), BEGUN.minusDays(70), WEIGHTS).orElseThrow().weeks()).as("a short log").isEqualTo(1);
  }

  @Test
  void whatIsNoWayBackIsRefusedInWords() {
    assertThatThrownBy(() -> new Stages(0.95, 0.1)).isInstanceOf(RefusedException.class).hasMessageContaining("95 %").hasMessageContaining("10 to 90");
    assertThatThrownBy(() -> new Stages(0.3, 0.5)).isInstanceOf(RefusedException.class).hasMessageContaining("50 %").hasMessageContaining("2 to 30");
    assertThatThrownBy(() -> new Stages(Double.NaN, 0.1)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new WayBack.Clearance(" ", BEGUN, true)).isInstanceOf(RefusedException.class).hasMessageContaining("1 to 80");
    assertThatThrownBy(
            () -> new WayBack(0, Foot.LEFT, BEGUN, Stages.USUAL, 100, 28, new WayBack.Clearance("Dr Invented", BEGUN.plusDays(1), true), List.of(), null))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("cannot begin before");
    assertThatThrownBy(() -> new WayBack(0, Foot.LEFT, BEGUN, Stages.USUAL, 1, 28, new WayBack.Clearance("Dr Invented", BEGUN, true), List.of(), null))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("former week");
  }
}
