package boundwright.season.order.timing;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.order.timing.OrderSolver.Effort;
import boundwright.season.order.timing.OrderSolver.Solved;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The finish is the earliest there is: held against trying every start second by second (own slow model, worked). */
class OrderAgainstBruteForceTest {
  private static final long SEED = 15_2026;
  private static final int CASES = 200;

  @Test
  void equalOnTwoHundredSmallCases() {
    SplittableRandom random = new SplittableRandom(SEED);
    int aboveSimple = 0;
    for (int i = 0; i < CASES; i++) {
      Chains c = SmallCases.one(random);
      Solved solved = new OrderSolver(c, new double[c.athletes()], t -> 0, random.split()).solve(new Effort(20, 1_000_000_000L));
      String as = "seed " + SEED + " case " + i + " " + c.ops + " " + c.places + " coaches " + c.coaches;
      assertThat(solved.proven()).as(as).isTrue();
      assertThat(solved.finish()).as(as).isEqualTo(new EveryStart(c).finish(200));
      assertThat(solved.bound()).as(as).isEqualTo(solved.finish());
      assertThat(solved.simple()).as(as).isLessThanOrEqualTo(solved.finish());
      assertThat(Bounds.strong(c)).as(as).isBetween(solved.simple(), solved.finish());
      Timed.check(c, solved.times(), as);
      aboveSimple += solved.finish() > solved.simple() ? 1 : 0;
    }
    // cases that the bound alone decides would show little
    assertThat(aboveSimple).isGreaterThan(CASES / 4);
  }

  @Test
  void theSearchAloneFindsItToo() {
    SplittableRandom random = new SplittableRandom(SEED + 1);
    for (int i = 0; i < CASES / 2; i++) {
      Chains c = SmallCases.one(random);
      int least = new EveryStart(c).finish(200);
      String as = "seed " + (SEED + 1) + " case " + i + " " + c.ops + " " + c.places + " coaches " + c.coaches;
      LayeredSearch below = new LayeredSearch(c, 100_000);
      assertThat(below.before(least)).as(as).isNull();
      LayeredSearch at = new LayeredSearch(c, 100_000);
      Chains.Times found = at.before(least + 1);
      assertThat(Objects.requireNonNull(found, as).finish(c)).as(as).isEqualTo(least);
    }
  }
}
