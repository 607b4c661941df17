package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.readiness.SpeedUse.Told;
import boundwright.readiness.TimeHere.Why;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The least stay, landings over a day, and flights of the same day from two approaches. */
class StayAndTrendsTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 20);
  private static final GateRules RULES = GateRules.DEFAULT;

  private static TimeHere time(int steps, int... daysAgo) {
    return TimeHere.of(IntStream.of(daysAgo).mapToObj(TODAY::minusDays).toList(), steps, false, RULES.stay(), TODAY);
  }

  @Test
  void aNewApproachIsAskedTwoWeeksBelowSixStepsAndThreeFromThere() {
    assertThat(time(4, 13, 10, 6, 3)).isEqualTo(new TimeHere(TODAY.minusDays(13), 13, 14, Why.NEW));
    assertThat(time(4, 13, 10, 6, 3).met()).isFalse();
    assertThat(time(4, 14, 10, 6, 3).met()).isTrue();
    assertThat(time(6, 20, 17, 13, 6, 3).met()).isFalse();
    assertThat(time(6, 20, 17, 13, 6, 3).over(TODAY)).isEqualTo(TODAY.plusDays(1));
    assertThat(time(6, 21, 17, 13, 6, 3).met()).isTrue();
    assertThat(time(6).met()).isFalse();
  }

  @Test
  void afterABreakHalfIsAskedOfAnApproachThatWasKnown() {
    TimeHere back = time(6, 100, 95, 90, 85, 79, 6, 3);
    assertThat(back).isEqualTo(new TimeHere(TODAY.minusDays(6), 6, 11, Why.AFTER_BREAK));
    assertThat(time(6, 100, 95, 90, 85, 79, 11, 6, 3).met()).isTrue();
    assertThat(time(4, 100, 97, 6, 3)).as("left before it was known: all of it again").isEqualTo(new TimeHere(TODAY.minusDays(6), 6, 14, Why.NEW));
    assertThat(time(4, 60, 50, 40, 30)).as("the break is on").isEqualTo(new TimeHere(null, 0, 7, Why.AFTER_BREAK));
    assertThat(time(4, 60, 46, 32, 18, 4).met()).as("a fortnight apart is no break").isTrue();
  }

  private static Rep rep(int ago, String letters, int steps, double landing) {
    return new Rep(0, 1, TODAY.minusDays(ago), Sequence.parse(letters), steps, Surface.TRACK, List.of(), landing, null, null, true, List.of());
  }

  private static TimeHere time(DrillFamily family, int rung, int highest, List<Rep> log) {
    LoadAnswer none = new LoadAnswer(false, "", Gate.LADDER, false, "", Gate.LADDER);
    return GateCase.of(log, family, rung, highest, none, RULES, TODAY).time();
  }

  @Test
  void longerApproachesAndHopsMakeAnApproachKnownAndTheCoachsOwnSettingDoes() {
    List<Rep> hops = IntStream.of(20, 15, 10, 5).mapToObj(a -> rep(a, "R x6", 6, 14)).toList();
    assertThat(time(DrillFamily.ALTERNATE, 4, 4, hops).met()).as("hops from farther").isTrue();
    List<Rep> bounds = IntStream.of(20, 15, 10, 5).mapToObj(a -> rep(a, "RL x3", 6, 14)).toList();
    assertThat(time(DrillFamily.SINGLE_LEG, 4, 4, bounds).met()).as("bounds load a leg less than hops").isFalse();
    assertThat(time(DrillFamily.SINGLE_LEG, 4, 6, List.of()).why()).as("the coach has them on 6 steps").isEqualTo(Why.KNOWN);
    List<Rep> back = IntStream.of(60, 55, 5).mapToObj(a -> rep(a, "R x6", 4, 14)).toList();
    assertThat(time(DrillFamily.SINGLE_LEG, 4, 6, back)).as("known, but after a break").isEqualTo(new TimeHere(TODAY.minusDays(5), 5, 7, Why.AFTER_BREAK));
  }

  private static LookedDay day(int ago, double... lengths) {
    List<GateRep> out = new ArrayList<>();
    for (double l : lengths) {
      out.add(new GateRep(TODAY.minusDays(ago), true, l));
    }
    return LookedDay.of(out).get(0);
  }

  /**
   * Six landings that shrink without exception: S = -15, variance 6 x 5 x 17 / 18 = 28.333, z = -14/5.3229 = -2.6301 (Mann's
   * variance; worked). Two such days: S = -30, z = -29/7.5277 = -3.8524.
   */
  @Test
  void kendallsCountOfOneDayAndOfTwo() {
    Fade one = Fade.of(List.of(day(1, 1.05, 1.03, 1.01, 0.99, 0.97, 0.95)));
    assertThat(one.z()).isCloseTo(-2.6301, within(5e-5));
    assertThat(one.overTenReps()).isCloseTo(-0.20, within(1e-9));
    assertThat(one.shrinks(RULES.fading())).isTrue();
    Fade two = Fade.of(List.of(day(4, 1.05, 1.03, 1.01, 0.99, 0.97, 0.95), day(1, 1.05, 1.03, 1.01, 0.99, 0.97, 0.95)));
    assertThat(two.z()).isCloseTo(-3.8524, within(5e-5));
    assertThat(two.days()).isEqualTo(2);
  }

  @Test
  void aSureButSmallShrinkingIsAllowedAndALargeOneOfFewLandingsIsNotSure() {
    assertThat(Fade.of(List.of(day(4, 1.005, 1.003, 1.001, .999, .997, .995), day(1, 1.005, 1.003, 1.001, .999, .997, .995))).shrinks(RULES.fading()))
        .isFalse();
    assertThat(Fade.of(List.of(day(4, 1.02, 1.00, 0.98), day(1, 1.02, 1.00, 1.01))).shrinks(RULES.fading())).isFalse();
    assertThat(Fade.of(List.of(day(1, 1.02, 1.00, 0.98))).known()).isFalse();
  }

  /**
   * 2.31 2.40 2.36 against 2.22 2.30 2.21 m a flight on one day: gain .11333, 90 % interval .03107 to .19559. Standing:
   * reference library (scipy 1.17, stats.ttest_ind with equal variances).
   */
  @Test
  void gainOfOneDayIsTheTwoSampleInterval() {
    List<Rep> log = new ArrayList<>();
    for (double here : new double[] {2.31, 2.40, 2.36}) {
      log.add(rep(1, "RRL", 4, 3 * here));
    }
    for (double below : new double[] {2.22, 2.30, 2.21}) {
      log.add(rep(1, "RRL", 2, 3 * below));
    }
    SpeedUse use = SameDayGain.of(log, 4, RULES.speed());
    Estimate gain = Objects.requireNonNull(use.perFlight());
    assertThat(gain.p50()).isCloseTo(.113333, within(1e-6));
    assertThat(gain.p05()).isCloseTo(.031074, within(1e-6));
    assertThat(gain.p95()).isCloseTo(.195593, within(1e-6));
    assertThat(use.told()).as("one day tells nothing yet").isEqualTo(Told.NOT_KNOWN);
    assertThat(use.here()).isEqualTo(3);
  }

  @Test
  void onlyTheSameDayDrillAndSurfaceAreCompared() {
    List<Rep> log = new ArrayList<>();
    for (int ago = 30; ago > 0; ago -= 2) {
      log.add(rep(ago, "RRL", 4, 8));
      log.add(rep(ago - 1, "RRL", 2, 6));
      log.add(rep(ago, "LLR", 2, 6));
    }
    assertThat(SameDayGain.of(log, 4, RULES.speed())).isEqualTo(SpeedUse.notKnown());
  }

  /** Flights of a rep that broke off are not usual ones: whoever breaks off shortens or lengthens them before. */
  @Test
  void abandonedRepsTellNothingOfTheSpeed() {
    List<Rep> log = new ArrayList<>();
    for (int ago = 30; ago > 0; ago -= 3) {
      for (int i = 0; i < 3; i++) {
        for (int steps : new int[] {2, 4}) {
          double at = (steps == 4 ? 3.0 : 2.0) + 0.01 * i;
          log.add(
              new Rep(0, 1, TODAY.minusDays(ago), Sequence.parse("RL x3"), steps, Surface.TRACK, List.of(at, 2 * at), null, Outcome.ABANDONED,
                  3, null, false, List.of()));
        }
      }
    }
    assertThat(SameDayGain.of(log, 4, RULES.speed())).isEqualTo(SpeedUse.notKnown());
  }
}
