package boundwright.jump.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.Projectile;
import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The long jump's flight, its parts, the trade of speed for angle, and when the data cannot tell. */
class LongJumpTakeOffTest {
  private static final LocalDate DAY = LocalDate.of(2026, 5, 12);

  private static TakeOff takeOff(double vx, double vy) {
    return new TakeOff(9.0, 0.4, vx, vy, 1.25, 0.65, 0.35);
  }

  /** The collection's flight (worked): vx 8.5, vy 3.2, centre of mass 1.25 to .65 m gives t .8045 s and x 6.838 m. */
  @Test
  void theFlightOfTheCollection() {
    Projectile p = takeOff(8.5, 3.2).flight();
    assertThat(p.time()).isCloseTo(.8045, within(5e-5));
    assertThat(p.distance()).isCloseTo(6.838, within(5e-4));
  }

  /** Official = take-off + flight + landing distance - toe-to-board (Hay; memory): .35 + 6.838 + .562 - .10 = 7.65 (worked). */
  @Test
  void thePartsAddUpToTheOfficialDistance() {
    LongJump j = new LongJump(0, 1, DAY, Foot.LEFT, 18, 7.65, .10, takeOff(8.5, 3.2), "");
    LongJump.Parts p = Objects.requireNonNull(j.parts());
    assertThat(p.flight_m()).isCloseTo(6.838, within(5e-4));
    assertThat(p.landing_m()).isCloseTo(.562, within(5e-4));
    assertThat(p.takeOff_m() + p.flight_m() + p.landing_m() - p.given_m()).isCloseTo(7.65, within(1e-9));
    assertThat(new LongJump(0, 1, DAY, Foot.LEFT, 18, 7.65, null, takeOff(8.5, 3.2), "").parts()).as("the gap is not known").isNull();
  }

  @Test
  void speedAndAngleAreTheSameTakeOff() {
    TakeOff t = TakeOff.ofAngle(null, null, 9.0824, 20.6302, 1.25, .65, null);
    assertThat(t.vx()).isCloseTo(8.5, within(1e-3));
    assertThat(t.vy()).isCloseTo(3.2, within(1e-3));
    assertThat(t.angle_deg()).isCloseTo(20.6302, within(1e-9));
    assertThat(t.speed()).isCloseTo(9.0824, within(1e-9));
  }

  /** At one speed from a height h the best angle has tan = v / sqrt(v^2 + 2 g h), 45 degrees on the level (textbook projectile). */
  @ParameterizedTest
  @CsvSource({"9.2, 0.6", "8, 0", "5.5, 0.5", "3, 0.4"})
  void withNoTradeTheBestAngleIsTheTextbooks(double v, double drop) {
    double textbook = Math.toDegrees(Math.atan(v / Math.sqrt(v * v + 2 * Projectile.G * drop)));
    assertThat(BestAngle.optimum(new SpeedForAngle.Line(v, 0), drop, 1, 60)).isCloseTo(textbook, within(.051));
  }

  /** Take-offs of an athlete whose speed is a straight line of the angle, with a little noise. */
  private static List<TakeOff> made(double at20, double slope, double spread, int n, Random random) {
    List<TakeOff> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double angle = 20 + spread * (2.0 * i / (n - 1) - 1);
      double v = at20 + slope * (angle - 20) + .08 * random.nextGaussian();
      out.add(TakeOff.ofAngle(null, null, v, angle, 1.22 + .02 * random.nextGaussian(), .62 + .02 * random.nextGaussian(), .35));
    }
    return out;
  }

  /** Law: over 200 athletes made by a seeded roll the true best angle and slope lie in their nine-in-ten intervals about nine times in ten. */
  @Test
  void intervalsOfTheTradeHoldTheTruthAboutNineTimesInTen() {
    long seed = 4711;
    Random random = new Random(seed);
    int slopes = 0;
    int angles = 0;
    int n = 200;
    for (int i = 0; i < n; i++) {
      double slope = -.14 + .06 * random.nextDouble();
      List<TakeOff> all = made(9.2, slope, 6, 14, random);
      BestAngle b = BestAngle.of(all, random);
      slopes += b.trade().slope().p05() <= slope && slope <= b.trade().slope().p95() ? 1 : 0;
      double truth = BestAngle.optimum(new SpeedForAngle.Line(9.2 - 20 * slope, slope), .60, b.trade().least_deg(), b.trade().most_deg());
      angles += b.best_deg().p05() - .1 <= truth && truth <= b.best_deg().p95() + .1 ? 1 : 0;
    }
    assertThat(slopes / (double) n).as("slope, seed " + seed).isBetween(.83, 1.0);
    assertThat(angles / (double) n).as("angle, seed " + seed).isBetween(.83, 1.0);
  }

  /** An athlete who takes off too flat for their own trade is told so, and by about what a direct reckoning gives. */
  @Test
  void anAngleThatWouldCarryFurtherIsTold() {
    Random random = new Random(5);
    List<TakeOff> all = made(9.2, -.10, 6, 14, random);
    BestAngle b = BestAngle.of(all, random);
    assertThat(b.cannotTell()).isNull();
    SpeedForAngle.Line truth = new SpeedForAngle.Line(9.2 + 2, -.10);
    double best = BestAngle.optimum(truth, .60, 14, 26);
    double gain = BestAngle.flight(truth, .60, best) - BestAngle.flight(truth, .60, 20);
    assertThat(b.best_deg().p50()).isCloseTo(best, within(2.5));
    assertThat(b.worth_m().p50()).isCloseTo(gain, within(.12));
    assertThat(b.words()).startsWith("2").contains("degrees would carry").contains("The usual take-off is 20.0");
  }

  @Test
  void saysWhenTheDataCannotTell() {
    Random random = new Random(6);
    assertThat(BestAngle.of(made(9.2, -.1, 6, 7, random), random).words()).contains("cannot tell").contains("at least 8").contains("there are 7");
    assertThat(BestAngle.of(made(9.2, -.1, .5, 12, random), random).words()).contains("too much alike");
    assertThat(Touchdown.of(made(9.2, -.1, 5, 12, random)).words()).contains("cannot tell").contains("there are 0");
    assertThat(new LongJumpAnswer(List.of(), 0, null, null, List.of()).words()).contains("there are none");
  }

  /** Take-offs from a plane: 1.2 m/s up and 2 m/s lost for each metre of touchdown distance, .1 and .05 for each m/s of speed. */
  @Test
  void whatTheFootsPlaceDoesComesBack() {
    Random random = new Random(7);
    List<TakeOff> all = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      double d = .30 + .015 * i;
      double in = 8.8 + .4 * random.nextDouble();
      double up = 3 + 4 * (d - .45) + .1 * (in - 9) + .03 * random.nextGaussian();
      double loss = .9 + 3 * (d - .45) + .05 * (in - 9) + .03 * random.nextGaussian();
      all.add(new TakeOff(in, d, in - loss, up, 1.2, .6, .3));
    }
    Touchdown t = Touchdown.of(all);
    assertThat(Objects.requireNonNull(t.upPer_10cm()).p50()).isCloseTo(.4, within(.05));
    assertThat(Objects.requireNonNull(t.lossPer_10cm()).p50()).isCloseTo(.3, within(.05));
    assertThat(t.words()).contains("upwards").contains("lost forwards");
  }

  /** Without noise a change is worth the plain difference of two flights (worked). */
  @Test
  void whatChangesAreWorthIsTheDifferenceOfTwoFlights() {
    List<TakeOff> same = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double angle = 18 + .4 * i;
      same.add(TakeOff.ofAngle(null, null, 9.2 - .1 * (angle - 20), angle, 1.25, .65, null));
    }
    List<LongWorth> worth = LongWorth.of(same, new Random(8));
    SpeedForAngle.Line line = new SpeedForAngle.Line(11.2, -.1);
    double middle = 18 + .4 * 5.5;
    double before = BestAngle.flight(line, .6, middle);
    assertThat(worth.get(0).metres().p50()).isCloseTo(BestAngle.flight(new SpeedForAngle.Line(11.3, -.1), .6, middle) - before, within(.01));
    assertThat(worth.get(1).metres().p50()).isCloseTo(BestAngle.flight(line, .6, middle + 1) - before, within(.02));
    assertThat(worth.get(2).metres().p50()).isCloseTo(BestAngle.flight(line, .65, middle) - before, within(.01));
    assertThat(worth.get(3).metres().p50()).isEqualTo(.02);
  }

  @Test
  void refusesInWords() {
    assertThatThrownBy(() -> new LongJump(0, 1, DAY, Foot.LEFT, 18, 12, null, null, "")).isInstanceOf(RefusedException.class).hasMessageContaining("1 to 10 m");
    assertThatThrownBy(() -> new LongJump(0, 1, DAY, Foot.LEFT, 18, 4.0, .1, takeOff(8.5, 3.2), ""))
        .isInstanceOf(RefusedException.class).hasMessageContaining("the flight alone is 6.84 m");
    assertThatThrownBy(() -> takeOff(8.5, 7)).isInstanceOf(RefusedException.class).hasMessageContaining("7 m/s");
    assertThatThrownBy(() -> TakeOff.ofAngle(null, null, 9, 70, 1.2, .6, null)).isInstanceOf(RefusedException.class).hasMessageContaining("70 degrees");
    assertThatThrownBy(() -> SpeedForAngle.of(List.of())).isInstanceOf(RefusedException.class);
  }
}
