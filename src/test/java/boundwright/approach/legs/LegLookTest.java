package boundwright.approach.legs;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Right against left: growth and run-up taken out, the truth inside the interval, silence where there is nothing. */
class LegLookTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

  /** Hops of an athlete who wins .08 m in 30 days on both legs; the left is measured early and the right late. */
  private static List<OffLeg> grown(double rightLess_left, Random random) {
    List<OffLeg> out = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      Foot foot = random.nextInt(16) < i ? Foot.RIGHT : Foot.LEFT;
      LocalDate date = DAY.plusDays(10L * i);
      int steps = 2 * (i % 3);
      double day = .03 * random.nextGaussian();
      for (int k = 0; k < 4; k++) {
        double value =
            2.2 + .08 * 10 * i / 30.0 + .06 * steps + (foot == Foot.RIGHT ? .5 : -.5) * rightLess_left + day + .04 * random.nextGaussian();
        out.add(new OffLeg(Measure.HOP, foot, date, steps, 1, value));
      }
    }
    return out;
  }

  private static double naive(List<OffLeg> all) {
    double r = all.stream().filter(o -> o.foot() == Foot.RIGHT).mapToDouble(OffLeg::value).average().orElseThrow();
    double l = all.stream().filter(o -> o.foot() == Foot.LEFT).mapToDouble(OffLeg::value).average().orElseThrow();
    return r - l;
  }

  /** Law: over 300 athletes made by a seeded roll the true difference lies in the interval about nine times in ten, growth or not. */
  @Test
  void theIntervalHoldsTheTruthAlthoughTheLegsWereMeasuredAtDifferentAges() {
    long seed = 321;
    Random random = new Random(seed);
    int held = 0;
    int looked = 0;
    double off = 0;
    for (int i = 0; i < 300; i++) {
      double truth = .12 * random.nextGaussian();
      List<OffLeg> all = grown(truth, random);
      LegLook look = LegLook.of(Measure.HOP, all);
      Estimate d = look.rightLess_left();
      if (d != null) {
        looked++;
        held += d.p05() <= truth && truth <= d.p95() ? 1 : 0;
        off += naive(all) - truth;
      }
    }
    assertThat(looked).isGreaterThan(200);
    assertThat(held / (double) looked).as("seed " + seed).isBetween(.83, .99);
    assertThat(off / looked).as("means alone take growth for a better right leg").isGreaterThan(.1);
  }

  @Test
  void aDifferenceIsToldInWordsWithItsInterval() {
    LegLook look = LegLook.of(Measure.HOP, grown(.3, new Random(4)));
    assertThat(look.told()).isTrue();
    assertThat(look.words()).startsWith("hop: right less left +0.").contains(" to ");
    assertThat(Objects.requireNonNull(look.per30Days()).p50()).isBetween(.04, .12);
  }

  /** Two legs that are the same are told apart in at most about one athlete of ten (the interval's own promise). */
  @Test
  void legsThatAreTheSameAreRarelyToldApart() {
    Random random = new Random(5);
    int told = 0;
    int n = 0;
    for (int i = 0; i < 200; i++) {
      LegLook look = LegLook.of(Measure.HOP, grown(0, random));
      n += look.rightLess_left() == null ? 0 : 1;
      told += look.rightLess_left() != null && look.told() ? 1 : 0;
    }
    assertThat(told / (double) n).isLessThan(.17);
  }

  @Test
  void tooFewDaysAreSaid() {
    List<OffLeg> few =
        List.of(new OffLeg(Measure.BOUND, Foot.RIGHT, DAY, 0, 1, 2.1), new OffLeg(Measure.BOUND, Foot.RIGHT, DAY, 0, 1, 2.2), new OffLeg(Measure.BOUND, Foot.LEFT, DAY, 0, 1, 2.2));
    LegLook look = LegLook.of(Measure.BOUND, few);
    assertThat(look.right()).isEqualTo(2);
    assertThat(look.told()).isFalse();
    assertThat(look.words()).contains("cannot tell").contains("there are 1 off the right and 1 off the left");
  }

  /** The same law where a day has many places that share what the day was like: they are no more evidence than the day. */
  @Test
  void manyPlacesOfADayAreNoMoreThanADay() {
    long seed = 77;
    Random random = new Random(seed);
    int held = 0;
    for (int i = 0; i < 200; i++) {
      double truth = .1 * random.nextGaussian();
      List<OffLeg> all = new ArrayList<>();
      for (int d = 0; d < 8; d++) {
        for (Foot foot : Foot.values()) {
          double day = .06 * random.nextGaussian();
          for (int place = 1; place <= 6; place++) {
            double value = 2.4 + .02 * place + (foot == Foot.RIGHT ? .5 : -.5) * truth + day + .02 * random.nextGaussian();
            all.add(new OffLeg(Measure.BOUND, foot, DAY.plusDays(7L * d), 0, place, value));
          }
        }
      }
      Estimate e = Objects.requireNonNull(LegLook.of(Measure.BOUND, all).rightLess_left());
      held += e.p05() <= truth && truth <= e.p95() ? 1 : 0;
    }
    assertThat(held / 200.0).as("seed " + seed).isGreaterThan(.83);
  }
}
