package boundwright.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What a measure or a tap would tell, against learning it and against drawing it many times (seeded). */
class InquiryTest {
  private static final long SEED = 12;
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);
  private static final Sequence DRILL = Sequence.parse("RRL x2");
  private static final Athlete ATHLETE = new Athlete(1, "Invented", Level.INTERMEDIATE, Foot.RIGHT, 4);

  private static FlightModel some() {
    FlightModel m = FlightModel.prior(Profile.bare(ATHLETE));
    SimulatedAthlete s = new SimulatedAthlete(Level.INTERMEDIATE, SEED);
    for (int i = 0; i < 8; i++) {
      m = m.learn(SimulatedAthlete.landingOnly(DAY.plusDays(i / 4), DRILL, 4, s.jump(DRILL, 4)));
    }
    return m;
  }

  private static Inquiry ask(FlightModel m, LocalDate day) {
    return m.inquiry(DRILL, 4, Surface.TRACK, day);
  }

  @Test
  void whatIsAskedNowIsTheForecast() {
    FlightModel m = some();
    Forecast f = m.forecast(DRILL, 4, Surface.TRACK, DAY.plusDays(3));
    Sharpness now = ask(m, DAY.plusDays(3)).now();
    assertThat(now.lastContactSd()).isCloseTo(f.sd(6), within(1e-9));
    assertThat(now.landingSd()).isCloseTo(f.sd(7), within(1e-9));
    assertThat(now.together()).isCloseTo(f.lastContactWithLanding(), within(1e-9));
  }

  @Test
  void moreIsNeverLess() {
    Inquiry q = ask(some(), DAY.plusDays(3));
    assertThat(q.measured().lastContactSd()).isLessThanOrEqualTo(q.lastContactMeasured().lastContactSd() + 1e-12);
    assertThat(q.measured().landingSd()).isLessThanOrEqualTo(q.landingMeasured().landingSd() + 1e-12);
    assertThat(q.lastContactMeasured().lastContactSd()).isLessThan(q.now().lastContactSd());
    assertThat(q.least().landingSd()).isLessThan(q.measured().landingSd());
    double mark = some().forecast(DRILL, 4, Surface.TRACK, DAY.plusDays(3)).landing().p50();
    assertThat(q.tapped(mark, 0)).isEqualTo(q.now());
    assertThat(q.tapped(mark, 1).landingSd()).isLessThan(q.now().landingSd());
    assertThat(q.tapped(mark, 2).landingSd()).isLessThan(q.tapped(mark, 1).landingSd());
    assertThat(q.tapped(60, 2).landingSd()).as("a foregone tap").isCloseTo(q.now().landingSd(), within(0.002));
    assertThatThrownBy(() -> q.tapped(mark, 4)).isInstanceOf(RefusedException.class).hasMessageContaining("0 to 3");
  }

  /** The same rep learned: the figures agree but for what the rep says of the scatter. */
  @Test
  void measuringKeepsThePromise() {
    FlightModel m = some();
    LocalDate day = DAY.plusDays(3);
    Forecast f = m.forecast(DRILL, 4, Surface.TRACK, day);
    List<Double> prints = List.of(f.mean(2), f.mean(3), f.mean(4), f.mean(5), f.mean(6));
    FlightModel after = m.learn(new Rep(0, 1, day, DRILL, 4, Surface.TRACK, prints, f.mean(7), null, null, List.of()));
    Sharpness kept = ask(after, day).now();
    double shared = Math.pow(kept.landingSd(), 2) - Math.pow(ask(after, day).least().landingSd(), 2);
    double promised = Math.pow(ask(m, day).measured().landingSd(), 2) - Math.pow(ask(m, day).least().landingSd(), 2);
    assertThat(Math.sqrt(shared / promised)).isCloseTo(1, within(0.2));
  }

  /** Two taps drawn 400 000 times from the forecast, the third rep's variance within each way the taps turned out. */
  @Test
  void tapsKeepThePromiseWhenTheyAreDrawn() {
    FlightModel m = some();
    LocalDate day = DAY.plusDays(3);
    Forecast f = m.forecast(DRILL, 4, Surface.TRACK, day);
    double mark = f.landing().p50() - 0.5 * f.sd(7);
    double shared = Math.pow(f.sd(7), 2) - Math.pow(ask(m, day).least().landingSd(), 2);
    double own = Math.pow(ask(m, day).least().landingSd(), 2);
    Random r = new Random(SEED);
    double[][] sums = new double[4][3];
    for (int i = 0; i < 400_000; i++) {
      double athlete = f.mean(7) + Math.sqrt(shared) * r.nextGaussian();
      int way = 0;
      for (int tap = 0; tap < 2; tap++) {
        boolean in = athlete + Math.sqrt(own) * r.nextGaussian() >= mark;
        way = 2 * way + (in == (r.nextDouble() >= 0.01) ? 1 : 0);
      }
      sums[way][0]++;
      sums[way][1] += athlete - f.mean(7);
      sums[way][2] += Math.pow(athlete - f.mean(7), 2);
    }
    double within = 0;
    for (double[] s : sums) {
      within += (s[2] - s[1] * s[1] / s[0]) / 400_000;
    }
    double drawn = Math.sqrt(within + own);
    assertThat(ask(m, day).tapped(mark, 2).landingSd()).as("seed %s", SEED).isCloseTo(drawn, within(0.03 * drawn));
  }

  @Test
  void surfacesAreCounted() {
    FlightModel m = some();
    assertThat(m.repsOn(Surface.TRACK)).isEqualTo(8);
    assertThat(m.repsOn(Surface.GRASS)).isZero();
  }
}
