package boundwright.approach.full;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.approach.full.FullRunTrial.Held;
import boundwright.approach.weather.DayWeather;
import boundwright.approach.weather.Weather;
import boundwright.approach.weather.WeatherLog;
import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.inference.GroupedNormal;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Distance by approach steps: the worked quadratic, the squad's pooling, the weather, and how often the intervals hold on squads of another law. */
class FullRunModelTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);

  private static SeenDistance jump(long who, int daysAgo, int steps, double m) {
    return new SeenDistance(who, TODAY.minusDays(daysAgo), steps, m, Weather.UNKNOWN);
  }

  private static FullRunModel fit(List<SeenDistance> seen) {
    return FullRunModel.of(seen, TODAY, new Random(1));
  }

  /** A quadratic through 6, 12 and 20 steps with 15.25, 16.25 and 16.89 m gives 16.80 m at 18 (worked; science notes, section 9). */
  @Test
  void quadraticThroughThreePointsGives1680At18() {
    GroupedNormal exact = new GroupedNormal(new double[3], new double[3][3]);
    double[] steps = {6, 12, 20};
    double[][] x = new double[3][];
    double[][] v = new double[3][3];
    for (int i = 0; i < 3; i++) {
      double z = (steps[i] - 12) / 8;
      x[i] = new double[] {1, z, z * z};
      v[i][i] = 1;
    }
    exact.add(new double[] {15.25, 16.25, 16.89}, x, v);
    assertThat(exact.coefficient(new double[] {1, 0.75, 0.5625}).mean()).isCloseTo(16.80, within(0.005));
  }

  /** A squad that jumps on that quadratic, each with an offset of their own, is told so: the weak priors give way to jumps. */
  @Test
  void theSquadsQuadraticAndOwnOffsetAreFound() {
    Random r = new Random(5);
    List<SeenDistance> seen = new ArrayList<>();
    for (int who = 1; who <= 12; who++) {
      double offset = 0.8 * r.nextGaussian();
      for (int day = 0; day < 8; day++) {
        for (int n : new int[] {6, 12, 20}) {
          double y = n == 6 ? 15.25 : n == 12 ? 16.25 : 16.89;
          seen.add(jump(who, 7 * day, n, Math.round(100 * (y + offset + 0.05 * r.nextGaussian())) / 100.0));
        }
      }
      if (who == 12) {
        seen.removeIf(s -> s.athleteId() == 12 && s.steps() != 6);
        Estimate at18 = fit(seen).forecast(12, 18).level_m();
        assertThat(at18.p50()).as("only known from 6 steps").isCloseTo(16.80 + offset, within(0.15));
        assertThat(at18.p05()).isLessThan(16.80 + offset);
        assertThat(at18.p95()).isGreaterThan(16.80 + offset);
      }
    }
  }

  /** Another order of the rows and another name of the athletes change nothing; the same seed gives the same figures. */
  @Test
  void orderAndNamesDoNotMatter() {
    SimulatedJumpers sim = new SimulatedJumpers(FullRunTrial.KINDS.get(3).squad(), 77);
    List<SeenDistance> mixed = new ArrayList<>(sim.seen);
    Collections.shuffle(mixed, new Random(3));
    long first = sim.seen.get(0).athleteId();
    Estimate a = fit(sim.seen).forecast(first, 14).jump_m();
    Estimate b = fit(mixed).forecast(first, 14).jump_m();
    assertThat(b.p50()).isCloseTo(a.p50(), within(0.02));
    assertThat(b.halfWidth()).isCloseTo(a.halfWidth(), within(0.03));
    assertThat(fit(sim.seen).forecast(first, 14)).isEqualTo(fit(sim.seen).forecast(first, 14));
  }

  /** More own jumps narrow; steps further away widen; a single jump is less sure than the mean. */
  @Test
  void whatNarrowsAndWhatWidens() {
    List<SeenDistance> seen = new ArrayList<>(new SimulatedJumpers(FullRunTrial.KINDS.get(0).squad(), 12).seen);
    seen.add(jump(99, 3, 8, 11.5));
    double one = fit(seen).forecast(99, 16).level_m().halfWidth();
    for (int d = 0; d < 10; d++) {
      seen.add(jump(99, 3 + d, 8, 11.4 + 0.02 * d));
    }
    FullRunModel model = fit(seen);
    assertThat(model.forecast(99, 16).level_m().halfWidth()).isLessThan(one);
    assertThat(model.forecast(99, 10).level_m().halfWidth()).isLessThan(model.forecast(99, 16).level_m().halfWidth());
    assertThat(model.forecast(99, 16).jump_m().halfWidth()).isGreaterThan(model.forecast(99, 16).level_m().halfWidth());
    assertThat(model.forecast(99, 16).chance(model.forecast(99, 16).jump_m().p95())).isCloseTo(0.05, within(1e-6));
  }

  /** Half a normal has mean sd root(2/pi) and variance sd2 (1 - 2/pi) (textbook); a noted wind is drawn towards still air by the ratio of variances. */
  @Test
  void whatIsBelievedOfAWind() {
    assertThat(new Weather(null, Weather.From.HEAD, null, null).believed().mean()).isCloseTo(-1.1968, within(1e-4));
    assertThat(new Weather(null, Weather.From.TAIL, null, null).believed().sd()).isCloseTo(0.9042, within(1e-4));
    Weather.Believed flag = new Weather(2.0, Weather.From.FLAG, null, null).believed();
    assertThat(flag.mean()).isCloseTo(2 * 2.25 / 3.25, within(1e-12));
    assertThat(flag.sd()).isCloseTo(Math.sqrt(2.25 / 3.25), within(1e-12));
    assertThat(Weather.gauge(2.0).believed().sd()).isLessThan(0.2);
    assertThat(Weather.UNKNOWN.believed()).isEqualTo(new Weather.Believed(0, 1.5));
  }

  /** A wind effect of 12 cm per m/s is found by the gauge, less surely by the flag, and nothing is counted where nothing was noted. */
  @Test
  void windIsLearnedAndAnEstimateWidens() {
    Random r = new Random(21);
    List<SeenDistance> gauge = new ArrayList<>();
    List<SeenDistance> flag = new ArrayList<>();
    List<SeenDistance> none = new ArrayList<>();
    for (int who = 1; who <= 8; who++) {
      for (int day = 0; day < 15; day++) {
        double wind = 1.5 * r.nextGaussian();
        double y = Math.round(100 * (13 + 0.1 * who + 0.12 * wind + 0.1 * r.nextGaussian())) / 100.0;
        LocalDate date = TODAY.minusDays(3L * day);
        gauge.add(new SeenDistance(who, date, 14, y, Weather.gauge(Math.round(10 * wind) / 10.0)));
        flag.add(new SeenDistance(who, date, 14, y, new Weather(Math.rint(wind + r.nextGaussian()), Weather.From.FLAG, null, null)));
        none.add(new SeenDistance(who, date, 14, y, Weather.UNKNOWN));
      }
    }
    Estimate byGauge = Objects.requireNonNull(fit(gauge).weather().wind_m());
    Estimate byFlag = Objects.requireNonNull(fit(flag).weather().wind_m());
    assertThat(byGauge.p50()).isCloseTo(0.12, within(0.02));
    assertThat(byFlag.p50()).as("a plain regression on the flag would find 0.12 x 2.25 / 3.25 = 0.083").isCloseTo(0.12, within(0.035));
    assertThat(byFlag.halfWidth()).isGreaterThan(1.2 * byGauge.halfWidth());
    assertThat(fit(none).weather().wind_m()).isNull();
    assertThat(fit(none).weather().warmth_m()).isNull();
    assertThat(fit(none).weather().wet_m()).isNull();
  }

  /**
   * On squads that jump by another law (a speed that nears its most, into contacts and flights) the 90 % intervals hold 85 to 95 times in a
   * hundred. The settings were chosen on seeds 1 and 2; this one was not looked at before. Fewer rounds than the table of docs/full-run.md.
   */
  @Test
  void intervalsHoldOnSquadsOfAnotherLaw() {
    int asked = 0;
    double level = 0;
    double single = 0;
    for (FullRunTrial.Kind kind : FullRunTrial.KINDS) {
      Held h = FullRunTrial.run(kind.squad(), 424_242L, kind.squad().athletes() > 20 ? 3 : 8);
      asked += h.asked();
      level += h.asked() * h.level();
      single += h.asked() * h.single();
    }
    assertThat(asked).isGreaterThan(300);
    assertThat(level / asked).isBetween(0.85, 0.95);
    assertThat(single / asked).isBetween(0.85, 0.95);
  }

  /** What the desk puts together: full-run marks count from the run-throughs' steps, the same jump in two logs once, and nothing far beyond. */
  @Test
  void deskGathersAndRefusesWhatNobodyHasJumped() {
    Kept kept = new Kept();
    kept.full.put(1L, 14);
    kept.found.add(new FoundDistance(1, TODAY.minusDays(20), 8, 12.10, Weather.UNKNOWN, FoundDistance.Where.DISTANCE));
    kept.found.add(new FoundDistance(1, TODAY.minusDays(9), 14, 12.90, Weather.UNKNOWN, FoundDistance.Where.PHASES));
    kept.found.add(new FoundDistance(1, TODAY.minusDays(9), null, 12.90, Weather.gauge(1.2), FoundDistance.Where.MEET));
    kept.found.add(new FoundDistance(2, TODAY.minusDays(9), null, 12.50, Weather.UNKNOWN, FoundDistance.Where.MEET));
    kept.days.add(new DayWeather(TODAY.minusDays(20), new Weather(-1.0, Weather.From.FLAG, 9.0, true), ""));
    FullRunDesk desk = new FullRunDesk(kept, kept);
    assertThat(desk.seen()).hasSize(2);
    assertThat(desk.seen().get(0).weather().wet()).isTrue();
    assertThat(desk.seen().get(1).weather().wind()).isEqualTo(1.2);
    FullRunAnswer answer = desk.answer(athlete(1, "Bram Curlew"), null, TODAY);
    assertThat(answer.steps()).isEqualTo(14);
    assertThat(answer.words(LengthUnit.METRES)).contains(" from ").contains("A single jump lies between");
    assertThat(answer.from()).contains("2 triple jumps of Bram Curlew (from 8, 14 steps)").contains("1 athlete has");
    FullRunAnswer guessed = desk.answer(athlete(1, "Bram Curlew"), 20, TODAY);
    assertThat(guessed.words(LengthUnit.METRES)).endsWith(" nine times in ten. A first guess: nobody here has jumped from more than 14 steps yet.");
    assertThat(desk.answer(athlete(1, "Bram Curlew"), 18, TODAY).guess()).isNull();
    FullRunAnswer far = desk.answer(athlete(1, "Bram Curlew"), 22, TODAY);
    assertThat(far.words(LengthUnit.METRES)).isEqualTo(
        "The data cannot tell. Nobody here has jumped from more than 14 steps, and 22 is too far from that; the first guess speaks of 6 to 20 steps. "
            + "Log a jump of anybody from 18 steps or more.");
    assertThat(far.curve()).isEmpty();
    assertThat(desk.answer(athlete(2, "Ines Sandpiper"), null, TODAY).words(LengthUnit.METRES)).startsWith("The data cannot tell. No triple jump of Ines Sandpiper");
    FullRunAnswer somebody = desk.answer(8, 13.05, 16, TODAY);
    assertThat(somebody.words(LengthUnit.METRES)).startsWith("13.05 m from 8 steps is about ").contains(" from 16.");
    Estimate level = Objects.requireNonNull(somebody.asked()).level_m();
    assertThat(level.p50()).as("about 14.0 to 14.5 from 16").isBetween(13.8, 14.6);
    assertThatThrownBy(() -> desk.answer(3, 13.05, 16, TODAY)).isInstanceOf(RefusedException.class).hasMessageContaining("3").hasMessageContaining("4 to 26");
    assertThatThrownBy(() -> new Weather(2.0, Weather.From.HEAD, null, null)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new Weather(null, Weather.From.GAUGE, null, null)).isInstanceOf(RefusedException.class);
    assertThatThrownBy(() -> new DayWeather(TODAY, Weather.UNKNOWN, "")).isInstanceOf(RefusedException.class);
  }

  /** The job's own words, "13.05 from 8 steps is about 14.0-14.5 from 16", where no other jump is kept: the first guess holds them, and says what it is. */
  @Test
  void theFirstGuessAnswersWhereTheSquadHasNoLongRun() {
    FullRunDesk desk = new FullRunDesk(new Kept(), new Kept());
    FullRunAnswer a = desk.answer(8, 13.05, 16, TODAY);
    Estimate level = Objects.requireNonNull(a.asked()).level_m();
    assertThat(level.p05()).isBetween(12.6, 14.0);
    assertThat(level.p95()).isBetween(14.5, 16.2);
    assertThat(level.p50()).isBetween(14.0, 14.5);
    assertThat(a.words(LengthUnit.METRES)).startsWith("13.05 m from 8 steps is about ").endsWith("A first guess: nobody here has jumped from more than 8 steps yet.");
    assertThat(desk.answer(4, 10.0, 16, TODAY).missing()).contains("from more than 4 steps").contains("from 6 steps or more");
    assertThat(desk.answer(4, 10.0, 24, TODAY).missing()).as("from 6 steps 24 would still be too far").contains("from more than 4 steps").contains("from 20 steps or more");
    assertThat(desk.answer(16, 14.0, 6, TODAY).words(LengthUnit.METRES)).endsWith("nobody here has jumped from fewer than 16 steps yet.");
    assertThat(desk.answer(16, 14.0, 4, TODAY).missing()).contains("from fewer than 16 steps").contains("from 8 steps or fewer");
  }

  /** One jump alone, told from the first guess: on jumpers of another law the intervals hold at least 85 times in a hundred (from 8 they are wider than they need be). */
  @Test
  void theFirstGuessHoldsOnJumpersOfAnotherLaw() {
    for (int[] ask : new int[][] {{6, 14}, {6, 18}, {8, 16}, {8, 20}, {16, 6}}) {
      Held h = FullRunTrial.alone(ask[0], ask[1], 424_242L, 16);
      assertThat(h.asked()).isEqualTo(80);
      assertThat(h.level()).as("from %d, asked %d", ask[0], ask[1]).isGreaterThanOrEqualTo(0.85);
      assertThat(h.single()).as("from %d, asked %d", ask[0], ask[1]).isGreaterThanOrEqualTo(0.85);
    }
  }

  private static Athlete athlete(long id, String name) {
    return new Athlete(id, name, Level.ADVANCED, Foot.RIGHT, 8);
  }

  /** A log in memory. */
  private static final class Kept implements FullRunLog, WeatherLog {
    final List<FoundDistance> found = new ArrayList<>();
    final Map<Long, Integer> full = new LinkedHashMap<>();
    final List<DayWeather> days = new ArrayList<>();

    @Override
    public DistanceEntry add(DistanceEntry distance) {
      throw new UnsupportedOperationException();
    }

    @Override
    public List<DistanceEntry> distances(long athleteId) {
      return List.of();
    }

    @Override
    public Optional<DistanceEntry> removeDistance(long athleteId, long id) {
      return Optional.empty();
    }

    @Override
    public List<FoundDistance> everybody() {
      return found;
    }

    @Override
    public Map<Long, Integer> fullRuns() {
      return full;
    }

    @Override
    public void keep(DayWeather day) {
      days.add(day);
    }

    @Override
    public List<DayWeather> days() {
      return days;
    }

    @Override
    public Optional<DayWeather> remove(LocalDate date) {
      return Optional.empty();
    }
  }
}
