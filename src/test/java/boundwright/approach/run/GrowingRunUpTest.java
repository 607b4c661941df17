package boundwright.approach.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.athlete.growth.Grown;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.athlete.growth.GrowthRepository;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.athlete.growth.Measurement;
import boundwright.athlete.person.People;
import boundwright.athlete.person.Person;
import boundwright.athlete.person.PersonRepository;
import boundwright.quantity.Estimate;
import java.lang.reflect.Proxy;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Marks of somebody who has grown since the last measured run-up, on invented runners whose steps follow the body more or less. */
class GrowingRunUpTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 12);
  private static final double STEPS_FOLLOW_SD = 0.5;
  private static final int STEPS = 16;

  private static double length() {
    double sum = 0;
    for (int i = 1; i <= STEPS; i++) {
      sum += 2.1 - .9 * Math.pow(.75, i - 1);
    }
    return sum;
  }

  private record Heights(List<Measurement> all) implements GrowthRepository {
    @Override
    public List<Measurement> measurements(long athleteId) {
      return all;
    }

    @Override
    public Map<Long, List<Measurement>> measurements(List<Long> athletes) {
      return Map.of(1L, all);
    }

    @Override
    public Map<Long, List<Measurement>> everybody() {
      return Map.of(1L, all);
    }

    @Override
    public Measurement add(long athleteId, Measurement measurement) {
      throw new UnsupportedOperationException();
    }

    @Override
    public boolean remove(long athleteId, long measurementId) {
      throw new UnsupportedOperationException();
    }

    @Override
    public GrowthSettings settings() {
      return GrowthSettings.DEFAULT;
    }

    @Override
    public void keep(GrowthSettings settings) {
      throw new UnsupportedOperationException();
    }
  }

  private static GrowthDesk desk(List<Measurement> heights) {
    PersonRepository nobody =
        (PersonRepository)
            Proxy.newProxyInstance(
                People.class.getClassLoader(), new Class<?>[] {PersonRepository.class}, (p, m, a) -> m.getName().equals("person") ? Person.UNKNOWN : Map.of());
    return new GrowthDesk(new Heights(heights), nobody, Clock.fixed(TODAY.atTime(12, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC));
  }

  /** 60 weeks of heights, the last of today. */
  private static List<Measurement> heights(Random random, double start, double cmAYear) {
    List<Measurement> out = new ArrayList<>();
    for (int weeks = 60; weeks >= 0; weeks -= 6) {
      double cm = start + cmAYear * (60 - weeks) / 52.18 + 0.4 * random.nextGaussian();
      out.add(new Measurement(0, TODAY.minusWeeks(weeks), Math.round(10 * cm) / 1000.0, null, null, ""));
    }
    return out;
  }

  /** Per cent of 300 growing runners, 26 weeks after six run-throughs, whose mean start mark lies in the interval: with their heights, without. */
  private static double[] held(ToDoubleFunction<Random> follows) {
    int people = 300;
    double[] held = new double[2];
    for (long seed = 1; seed <= people; seed++) {
      Random random = new Random(7_000 + seed);
      double start = 140 + 15 * random.nextDouble();
      double speed = 4 + 5 * random.nextDouble();
      List<RunThrough> runs = new ArrayList<>();
      for (int k = 0; k < 6; k++) {
        runs.add(RunThrough.toGap(STEPS, length() + 0.1, 0.1 + 0.12 * random.nextGaussian(), null, null));
      }
      LocalDate then = TODAY.minusWeeks(26);
      List<Grown> grown = desk(heights(random, start, speed)).since(1, Collections.nCopies(runs.size(), then));
      Grown one = grown.get(0);
      double truth = length() * Math.pow((start + speed * 60 / 52.18) / (start + speed * 34 / 52.18), follows.applyAsDouble(random));
      Estimate with =
          StepModel.of(runs, grown.stream().map(Grown::ratio).toList(), Math.hypot(STEPS_FOLLOW_SD * (one.ratio() - 1), one.sd())).length(STEPS);
      Estimate without = StepModel.of(runs).length(STEPS);
      held[0] += with.p05() <= truth && truth <= with.p95() ? 100.0 / people : 0;
      held[1] += without.p05() <= truth && truth <= without.p95() ? 100.0 / people : 0;
    }
    return held;
  }

  @Test
  void theIntervalOfTheStartMarkHoldsWhileTheBodyGrows() {
    double[] asAssumed = held(r -> 1 + STEPS_FOLLOW_SD * r.nextGaussian());
    double[] anything = held(r -> 2 * r.nextDouble());
    System.out.printf("start marks of who grows hold: %.1f %%, without heights %.1f %%, whatever steps follow %.1f %%%n", asAssumed[0], asAssumed[1], anything[0]);
    assertThat(asAssumed[0]).as("steps follow the body as the makers guess").isBetween(85.0, 97.0);
    assertThat(asAssumed[1]).as("without heights").isLessThan(40.0);
    assertThat(anything[0]).as("anything from not at all to twice as much, all alike").isBetween(78.0, 97.0);
    assertThat(held(r -> 1)[0]).as("just as the body").isGreaterThan(97.0);
  }

  @Test
  void whoDoesNotGrowKeepsTheirMarks() {
    List<RunThrough> runs = Collections.nCopies(4, RunThrough.toGap(STEPS, length() + 0.1, 0.1, null, null));
    assertThat(StepModel.of(runs, Collections.nCopies(4, 1.0), 0).length(STEPS)).isEqualTo(StepModel.of(runs).length(STEPS));
    assertThat(desk(List.of()).since(1, List.of(TODAY))).isEmpty();
    List<Grown> still = desk(heights(new Random(1), 170, 0)).since(1, List.of(TODAY.minusWeeks(26), TODAY, TODAY.minusYears(9)));
    assertThat(still).extracting(Grown::ratio).allSatisfy(r -> assertThat(r).isCloseTo(1, within(0.004)));
    assertThat(still.get(1)).isEqualTo(new Grown(TODAY, 1, 0));
    assertThat(still.get(2).ratio()).as("before the first height nothing is known").isCloseTo(1, within(0.004));
  }
}
