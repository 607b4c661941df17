package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class FlightModelTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);
  private static final Sequence DRILL = Sequence.parse("RRL x2");
  private static final Athlete ATHLETE = new Athlete(1, "Invented", Level.INTERMEDIATE, Foot.RIGHT, 4);

  private static FlightModel prior() {
    return FlightModel.prior(Profile.bare(ATHLETE));
  }

  private static Rep rep(LocalDate date, int steps, @Nullable Double landing, @Nullable Outcome outcome, @Nullable Double mark) {
    return new Rep(0, 1, date, DRILL, steps, Surface.TRACK, List.of(), landing, outcome, mark, List.of());
  }

  private static double landing(FlightModel m, int steps, LocalDate date) {
    return m.forecast(DRILL, steps, Surface.TRACK, date).landing().p50();
  }

  private static double spread(FlightModel m, int steps, LocalDate date) {
    return m.forecast(DRILL, steps, Surface.TRACK, date).landing().halfWidth();
  }

  @Test
  void aMeasuredLandingPullsTheForecastTowardsItAndNarrowsIt() {
    FlightModel before = prior();
    double target = landing(before, 4, DAY) + 1.5;
    FlightModel after = before.learn(rep(DAY, 4, target, null, null));
    assertThat(landing(after, 4, DAY.plusDays(1))).isBetween(landing(before, 4, DAY) + 0.5, target);
    assertThat(spread(after, 4, DAY)).isLessThan(spread(before, 4, DAY));
    assertThat(after.reps()).isEqualTo(1);
    assertThat(before.reps()).isZero();
  }

  @Test
  void manyRepsConvergeOnWhatTheAthleteDoes() {
    FlightModel m = prior();
    double truth = landing(m, 4, DAY) * 1.12;
    for (int i = 0; i < 40; i++) {
      m = m.learn(rep(DAY.plusDays(i / 4), 4, truth + (i % 2 == 0 ? 0.15 : -0.15), null, null));
    }
    assertThat(landing(m, 4, DAY.plusDays(20))).isCloseTo(truth, within(0.15));
  }

  @Test
  void tapsMoveTheForecastTheWayTheySay() {
    FlightModel m = prior();
    double mark = landing(m, 4, DAY);
    double before = landing(m, 4, DAY);
    assertThat(landing(m.learn(rep(DAY, 4, null, Outcome.SHORT, mark)), 4, DAY)).isLessThan(before - 0.1);
    assertThat(landing(m.learn(rep(DAY, 4, null, Outcome.IN, mark)), 4, DAY)).isGreaterThan(before + 0.1);
    double last = m.forecast(DRILL, 4, Surface.TRACK, DAY).mean(6);
    assertThat(landing(m.learn(rep(DAY, 4, null, Outcome.LATE, last)), 4, DAY)).isGreaterThan(before + 0.1);
  }

  @Test
  void aTapWithoutAMarkTeachesNoLength() {
    FlightModel m = prior();
    FlightModel after = m.learn(rep(DAY, 4, null, Outcome.SHORT, null));
    assertThat(landing(after, 4, DAY)).isCloseTo(landing(m, 4, DAY), within(1e-9));
    assertThat(after.reps()).isEqualTo(1);
    assertThat(after.measuredReps()).isZero();
  }

  @Test
  void aGoodDayCountsTodayMoreThanTomorrow() {
    FlightModel m = prior();
    double usual = landing(m, 4, DAY);
    for (int i = 0; i < 30; i++) {
      double form = i / 5 % 2 == 0 ? 1.02 : 0.98;
      m = m.learn(rep(DAY.plusDays(i / 5), 4, usual * form * (i % 2 == 0 ? 1.01 : 0.99), null, null));
    }
    LocalDate good = DAY.plusDays(10);
    for (int i = 0; i < 4; i++) {
      m = m.learn(rep(good, 4, usual * 1.04, null, null));
    }
    double today = landing(m, 4, good) - usual;
    double tomorrow = landing(m, 4, good.plusDays(1)) - usual;
    assertThat(today).isGreaterThan(0.3);
    assertThat(tomorrow).isBetween(0.0, 0.75 * today);
  }

  @Test
  void aRungNeverTriedIsMarkedAndLessSureTheFartherAway() {
    FlightModel m = prior();
    double usual = landing(m, 4, DAY);
    for (int i = 0; i < 20; i++) {
      m = m.learn(rep(DAY.plusDays(i / 5), 4, usual, null, null));
    }
    Forecast at4 = m.forecast(DRILL, 4, Surface.TRACK, DAY.plusDays(9));
    Forecast at6 = m.forecast(DRILL, 6, Surface.TRACK, DAY.plusDays(9));
    Forecast at12 = m.forecast(DRILL, 12, Surface.TRACK, DAY.plusDays(9));
    assertThat(at4.extrapolated()).isFalse();
    assertThat(at6.extrapolated()).isTrue();
    assertThat(at4.landing().halfWidth()).isLessThan(at6.landing().halfWidth());
    assertThat(at6.landing().halfWidth()).isLessThan(at12.landing().halfWidth());
  }

  @Test
  void knownMarksAndTimedRunUpsShiftTheFirstGuess() {
    Profile strong =
        new Profile(ATHLETE, List.of(new KnownMark(1, KnownMark.Kind.STANDING_TRIPLE, 0, 8.6, DAY)), List.of());
    Profile weak =
        new Profile(ATHLETE, List.of(new KnownMark(1, KnownMark.Kind.STANDING_TRIPLE, 0, 6.2, DAY)), List.of());
    Profile quick = new Profile(ATHLETE, List.of(), List.of(new MeasuredRunUp(1, 8, 13.5, 8.6, DAY)));
    assertThat(landing(FlightModel.prior(strong), 4, DAY)).isGreaterThan(landing(FlightModel.prior(weak), 4, DAY) + 2);
    assertThat(spread(FlightModel.prior(strong), 0, DAY)).isLessThan(spread(prior(), 0, DAY));
    assertThat(landing(FlightModel.prior(quick), 8, DAY)).isGreaterThan(landing(prior(), 8, DAY));
  }

  /** A known standing triple is, by definition, what the model must then forecast from standing, less the best-of bonus. */
  @Test
  void theFirstGuessReproducesTheKnownMark() {
    Profile p = new Profile(ATHLETE, List.of(new KnownMark(1, KnownMark.Kind.STANDING_TRIPLE, 0, 8.0, DAY)), List.of());
    double standing = FlightModel.prior(p).forecast(Sequence.parse("RRL"), 0, Surface.TRACK, DAY).landing().p50();
    assertThat(standing).isCloseTo(8.0 * 0.985, within(0.15));
  }

  @Test
  void sameRepsSameModelToTheLastBit() {
    SimulatedAthlete s = new SimulatedAthlete(Level.ADVANCED, 77);
    FlightModel one = prior();
    FlightModel two = prior();
    List<Rep> reps = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double[] p = s.jump(DRILL, 4);
      reps.add(i % 3 == 0 ? SimulatedAthlete.tap(DAY, DRILL, 4, p, 16) : SimulatedAthlete.measured(DAY, DRILL, 4, p));
    }
    for (Rep r : reps) {
      one = one.learn(r);
    }
    for (Rep r : reps) {
      two = FlightModel.fromBytes(two.learn(r).toBytes()).orElseThrow();
    }
    assertThat(two.belief()).isEqualTo(one.belief());
    assertThat(two.toBytes()).isEqualTo(one.toBytes());
  }

  @Test
  void bytesOfAnotherVersionOrCutShortAreNotTaken() {
    byte[] bytes = prior().toBytes();
    byte[] other = bytes.clone();
    other[0] ^= 0x55;
    assertThat(FlightModel.fromBytes(other)).isEmpty();
    assertThat(FlightModel.fromBytes(java.util.Arrays.copyOf(bytes, bytes.length / 2))).isEmpty();
    assertThat(FlightModel.fromBytes(new byte[0])).isEmpty();
  }

  /** Sixty contacts, every seen and unseen print mixed: the covariance stays a covariance. */
  @Test
  void longSequencesStayHealthy() {
    Sequence longest = Sequence.parse("RRL x20");
    SimulatedAthlete s = new SimulatedAthlete(Level.INTERMEDIATE, 5);
    FlightModel m = prior();
    for (int i = 0; i < 30; i++) {
      m = m.learn(SimulatedAthlete.measured(DAY.plusDays(i), longest, 4, s.jump(longest, 4)));
    }
    Forecast f = m.forecast(longest, 4, Surface.TRACK, DAY.plusDays(40));
    double before = 0;
    for (int c = 2; c <= 61; c++) {
      assertThat(f.mean(c)).as("contact %s", c).isGreaterThan(before + 0.5);
      assertThat(f.sd(c)).as("contact %s", c).isPositive().isLessThan(0.3 + 0.05 * f.mean(c));
      before = f.mean(c);
    }
  }

  /** 18 steps = 33.83 m from a rocking start, a high-school boy; first steps .82-1.37 m (both read). */
  @Test
  void runUpLengthsAgreeWithMeasuredOnes() {
    RunUpBook book = RunUpBook.of(Profile.bare(ATHLETE));
    assertThat(book.length(18).p50()).isCloseTo(33.83, within(0.15));
    assertThat(book.length(1).p50()).isBetween(0.82, 1.37);
    assertThat(book.length(0).p50()).isZero();
  }

  @Test
  void ownRunUpsReplaceTheGuess() {
    Profile p =
        new Profile(ATHLETE, List.of(), List.of(new MeasuredRunUp(1, 4, 6.6, null, DAY), new MeasuredRunUp(2, 4, 6.7, null, DAY)));
    RunUpBook book = RunUpBook.of(p);
    RunUpBook guess = RunUpBook.of(Profile.bare(ATHLETE));
    assertThat(book.length(4).p50()).isCloseTo(6.6, within(0.12));
    assertThat(book.length(4).halfWidth()).isLessThan(guess.length(4).halfWidth() / 2);
    assertThat(book.length(6).p50()).isGreaterThan(guess.length(6).p50());
    assertThat(book.measured(4)).isEqualTo(2);
  }

  @Test
  void badRepsAreRefusedInWords() {
    assertThatThrownBy(() -> rep(DAY, 4, 0.0, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("0.00 m");
    assertThatThrownBy(() -> rep(DAY, 4, 90.0, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("90.00 m");
    assertThatThrownBy(() -> rep(DAY, -1, 15.0, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("-1");
    assertThatThrownBy(() -> rep(DAY, 40, 15.0, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("0 (standing) to 26");
    assertThatThrownBy(() -> rep(DAY, 4, null, null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("says nothing");
    assertThatThrownBy(() -> rep(DAY, 4, 15.0, Outcome.SHORT, 14.0)).isInstanceOf(RefusedException.class).hasMessageContaining("does not fit");
    assertThatThrownBy(
            () ->
                new Rep(0, 1, DAY, DRILL, 4, Surface.TRACK, List.of(3.0, 2.9), null, null, null, List.of()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("out of order");
    assertThatThrownBy(
            () ->
                new Rep(0, 1, DAY, DRILL, 4, Surface.TRACK, List.of(3.0, 6.0, 9.0, 12.0, 14.0, 17.0), null, null, null, List.of()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("at most 5");
  }
}
