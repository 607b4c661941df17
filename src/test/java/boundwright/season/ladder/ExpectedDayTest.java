package boundwright.season.ladder;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.season.ladder.InventedClimbs.Score;
import org.junit.jupiter.api.Test;

/**
 * A small share of {@code bench/ladder}: the expected day against what became of invented athletes who learn, asked by the real gate
 * (requirements of the project; the rates are own output). The athletes are a process of their own, see {@link Learner}.
 */
class ExpectedDayTest {
  private static final long SEED = 28;
  /** Standard errors; of twenty squads chance goes beyond in one test of a thousand (Student t). */
  private static final double FOUR = 4;

  @Test
  void withSixtyStaysTheRangeHoldsAndTheExpectedDayIsNotBiased() {
    LadderBench.Scores s = LadderBench.scores(60, 20, 0.5, SEED);
    assertThat(s.all().coverage()).as("share in the 80 %% range of %s cases, seed %s", s.all().cases(), SEED).isBetween(0.72, 0.88);
    for (Score score : new Score[] {s.fresh(), s.running()}) {
      assertThat(Math.abs(score.bias())).as("bias [days], standard error %s, seed %s", score.biasError(), SEED).isLessThan(FOUR * score.biasError());
      assertThat(score.absolute()).as("better than the earliest possible day, seed %s", SEED).isLessThan(0.7 * score.earliest());
      assertThat(Math.abs(score.surprise())).as("ready by the decision day more often than said; standard error %s, seed %s", score.surpriseError(), SEED)
          .isLessThan(FOUR * score.surpriseError());
    }
  }

  @Test
  void withNothingKnownTheRangeIsWideEnough() {
    Score score = LadderBench.scores(0, 24, 0.7, SEED).fresh();
    assertThat(score.coverage()).as("of %s cases, seed %s", score.cases(), SEED).isGreaterThanOrEqualTo(0.72);
    assertThat(score.absolute()).as("seed %s", SEED).isLessThan(score.earliest());
  }
}
