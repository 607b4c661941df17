package boundwright.readiness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import boundwright.readiness.SequentialTest.Decision;
import boundwright.readiness.SequentialTest.Run;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Check values of the project's collection of formulas, section 5; the standing stands at each. */
class SharesTest {
  private static final long SEED = 20260411;

  /** Beta(1,1) brought forward. Standing: worked. */
  @ParameterizedTest
  @CsvSource({"9, 10, .6779", "10, 10, .9141", "17, 20, .6296", "18, 20, .8213"})
  void chanceThatTheTrueShareIsAboveFourFifths(int good, int of, double chance) {
    assertThat(BetaShare.seen(good, of).chanceAbove(0.8)).isCloseTo(chance, within(5e-5));
  }

  /** Mean after 9 of 10, and P(at least 8 of the next 10). Standing: worked. */
  @Test
  void meanAndLookAhead() {
    BetaShare share = BetaShare.seen(9, 10);
    assertThat(share.mean()).isCloseTo(.8333, within(5e-5));
    assertThat(share.chanceOfNext(8, 10)).isCloseTo(.744361, within(5e-7));
  }

  /** With nothing seen every count of good reps is equally likely (Laplace's result for an even start; memory). */
  @Test
  void nothingSeenMakesEveryCountEquallyLikely() {
    for (int k = 0; k <= 7; k++) {
      assertThat(new BetaShare(0, 0).chanceOfNext(k, 7)).isCloseTo((8 - k) / 8.0, within(1e-12));
    }
  }

  /** The look ahead by one rep is the mean: the definition of a predictive chance. */
  @Test
  void theNextRepIsGoodWithTheMeanChance() {
    BetaShare share = new BetaShare(5, 3);
    assertThat(share.chanceOfNext(1, 1)).isCloseTo(share.mean(), within(1e-12));
    assertThat(share.and(true).mean()).isGreaterThan(share.mean());
    assertThat(share.and(false).mean()).isLessThan(share.mean());
    assertThat(share.estimate().p05()).isLessThan(share.estimate().p50());
  }

  /** Wald's limits and increments. Standing: worked, in the form of the NIST/SEMATECH e-Handbook. */
  @Test
  void limitsOfTheSequentialTest() {
    SequentialTest t = new SequentialTest(.6, .9, .05, .10);
    assertThat(t.passAt()).isCloseTo(2.89037, within(5e-6));
    assertThat(t.failAt()).isCloseTo(-2.25129, within(5e-6));
    assertThat(t.forGood()).isCloseTo(.40547, within(5e-6));
    assertThat(t.forBad()).isCloseTo(-1.38629, within(5e-6));
    assertThat(t.shortestPass()).isEqualTo(8);
    assertThat(t.shortestFail()).isEqualTo(2);
  }

  /** 1,1,1,0 and then ones passes at trial 12. Standing: worked. */
  @Test
  void exampleRunPassesAtTheTwelfthRep() {
    List<Boolean> reps = new ArrayList<>(Collections.nCopies(20, true));
    reps.set(3, false);
    Run run = SequentialTest.USUAL.run(reps);
    assertThat(run.decision()).isEqualTo(Decision.PASS);
    assertThat(run.trial()).isEqualTo(12);
    assertThat(SequentialTest.USUAL.run(reps.subList(0, 11)).decision()).isEqualTo(Decision.GO_ON);
    assertThat(SequentialTest.USUAL.run(reps.subList(0, 11)).goodStillNeeded()).isEqualTo(1);
  }

  @Test
  void shortestPassAndFail() {
    assertThat(SequentialTest.USUAL.run(Collections.nCopies(7, true)).decision()).isEqualTo(Decision.GO_ON);
    assertThat(SequentialTest.USUAL.run(Collections.nCopies(8, true)).decision()).isEqualTo(Decision.PASS);
    assertThat(SequentialTest.USUAL.run(Collections.nCopies(1, false)).decision()).isEqualTo(Decision.GO_ON);
    assertThat(SequentialTest.USUAL.run(Collections.nCopies(2, false)).decision()).isEqualTo(Decision.FAIL);
    assertThat(SequentialTest.USUAL.run(List.of())).isEqualTo(new Run(Decision.GO_ON, 0, 0, 8));
  }

  /** Wald's inequalities alpha' <= alpha / (1 - beta) and beta' <= beta / (1 - alpha) (Wald 1945; memory), on the exact chance. */
  @Test
  void keepsItsErrors() {
    SequentialTest t = SequentialTest.USUAL;
    assertThat(t.chanceOfPassing(.6, 500)).isPositive().isLessThanOrEqualTo(.05 / .90);
    assertThat(1 - t.chanceOfPassing(.9, 500)).isPositive().isLessThanOrEqualTo(.10 / .95);
    assertThat(t.chanceOfPassing(1, 8)).isEqualTo(1);
    assertThat(t.chanceOfPassing(1, 7)).isZero();
  }

  /** The counted chance against the test run on random reps. */
  @Test
  void countedChanceAgreesWithRandomRuns() {
    Random r = new Random(SEED);
    int passes = 0;
    int rounds = 20_000;
    for (int i = 0; i < rounds; i++) {
      List<Boolean> reps = new ArrayList<>();
      for (int n = 0; n < 30; n++) {
        reps.add(r.nextDouble() < .8);
      }
      passes += SequentialTest.USUAL.run(reps).decision() == Decision.PASS ? 1 : 0;
    }
    double chance = SequentialTest.USUAL.chanceOfPassing(.8, 30);
    assertThat(passes / (double) rounds).as("seed " + SEED).isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / rounds)));
  }

  /** Law: turning one good rep bad never turns a run that did not pass into one that does. */
  @Test
  void aWorseRepNeverPasses() {
    Random r = new Random(SEED);
    for (int i = 0; i < 2000; i++) {
      List<Boolean> reps = new ArrayList<>();
      for (int n = 0; n < 20; n++) {
        reps.add(r.nextDouble() < .85);
      }
      List<Boolean> worse = new ArrayList<>(reps);
      worse.set(r.nextInt(20), false);
      if (SequentialTest.USUAL.run(reps).decision() != Decision.PASS) {
        assertThat(SequentialTest.USUAL.run(worse).decision()).as("seed " + SEED + " " + reps).isNotEqualTo(Decision.PASS);
      }
    }
  }

  /** '8 of 10' at a true .7. Standing: worked. */
  @Test
  void theRuleOfThumbLetsTooManyThrough() {
    NaiveRule rule = new NaiveRule(8, 10);
    assertThat(rule.passChance(.7)).isCloseTo(.3828, within(5e-5));
    assertThat(rule.passChance(.7, 3)).isCloseTo(.0561, within(5e-5));
  }

  @Test
  void refusals() {
    assertThatThrownBy(() -> new SequentialTest(.9, .6, .05, .1)).isInstanceOf(RefusedException.class).hasMessageContaining("0.9 and 0.6");
    assertThatThrownBy(() -> new SequentialTest(.6, .9, 0, .1)).isInstanceOf(RefusedException.class).hasMessageContaining("0.05 and 0.10");
    assertThatThrownBy(() -> BetaShare.seen(11, 10)).isInstanceOf(RefusedException.class).hasMessageContaining("-1 bad");
    assertThatThrownBy(() -> new BetaShare(1, 1).chanceAbove(80)).isInstanceOf(RefusedException.class).hasMessageContaining("0.8");
    assertThatThrownBy(() -> new NaiveRule(11, 10)).isInstanceOf(RefusedException.class).hasMessageContaining("11 of 10");
  }
}
