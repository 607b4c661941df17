package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;

/**
 * Wald's sequential test on a share: reps are taken one at a time, in order, until the evidence is enough either way.
 * The running sum of ln(p1/p0) for a good rep and ln((1-p1)/(1-p0)) for a bad one passes at ln A = ln((1-beta)/alpha)
 * and fails at ln B = ln(beta/(1-alpha)) (form of the NIST/SEMATECH e-Handbook, 7.2 and 6.2.6; worked). Once it has
 * answered it stops: later reps belong to a new test. Turning a good rep bad never makes it pass.
 *
 * @param p0 true share that must not pass, 0 to 1
 * @param p1 true share that should pass, above {@code p0}
 * @param alpha chance, at most about, of passing an athlete at {@code p0}; 0 to 0.5
 * @param beta chance, at most about, of failing an athlete at {@code p1}; 0 to 0.5
 */
public record SequentialTest(double p0, double p1, double alpha, double beta) {
  /** Where the form comes from. */
  public static final Source SOURCE = Sources.SEQUENTIAL;
  /** 0.6 must not pass, 0.9 should, at 5 and 10 % (a choice of the makers; judgement). */
  public static final SequentialTest USUAL = new SequentialTest(0.6, 0.9, 0.05, 0.10);

  /** How a run of the test stands. */
  public enum Decision {
    /** Enough good reps. */
    PASS,
    /** Too many bad reps. */
    FAIL,
    /** More reps are needed. */
    GO_ON
  }

  /**
   * The test after some reps.
   *
   * @param decision how it stands
   * @param trial the rep, counted from 1, at which it was decided; the reps seen while it goes on
   * @param sum the evidence when it stopped [natural log of the likelihood ratio]
   * @param goodStillNeeded good reps in a row that would pass now; 0 once it passed; those of a new test once it failed
   */
  public record Run(Decision decision, int trial, double sum, int goodStillNeeded) {}

  /** Refuses shares and errors that make no test. */
  public SequentialTest {
    if (!(p0 > 0 && p0 < p1 && p1 < 1)) {
      throw new RefusedException(
          "The two shares of the test were " + p0 + " and " + p1 + "; they must be between 0 and 1, the first below the second. "
              + "Usual is 0.6 and 0.9.");
    }
    if (!(alpha > 0 && alpha < 0.5 && beta > 0 && beta < 0.5)) {
      throw new RefusedException(
          "The two errors of the test were " + alpha + " and " + beta + "; they must be between 0 and 0.5. Usual is 0.05 and 0.10.");
    }
  }

  /** ln A: the evidence that passes. */
  public double passAt() {
    return Math.log((1 - beta) / alpha);
  }

  /** ln B: the evidence that fails, negative. */
  public double failAt() {
    return Math.log(beta / (1 - alpha));
  }

  /** What a good rep adds. */
  public double forGood() {
    return Math.log(p1 / p0);
  }

  /** What a bad rep adds, negative. */
  public double forBad() {
    return Math.log((1 - p1) / (1 - p0));
  }

  /** Fewest reps that can pass: all good. */
  public int shortestPass() {
    return (int) Math.ceil(passAt() / forGood());
  }

  /** Fewest reps that can fail: all bad. */
  public int shortestFail() {
    return (int) Math.ceil(failAt() / forBad());
  }

  /** Runs the test over reps in the order in which they were done; true is a good rep. Reps after the decision are not looked at. */
  public Run run(List<Boolean> reps) {
    int good = 0;
    int bad = 0;
    for (boolean rep : reps) {
      if (rep) {
        good++;
      } else {
        bad++;
      }
      double sum = sum(good, bad);
      if (sum >= passAt()) {
        return new Run(Decision.PASS, good + bad, sum, 0);
      }
      if (sum <= failAt()) {
        return new Run(Decision.FAIL, good + bad, sum, shortestPass());
      }
    }
    double sum = sum(good, bad);
    return new Run(Decision.GO_ON, good + bad, sum, (int) Math.ceil((passAt() - sum) / forGood()));
  }

  // From the counts, not by adding up, so that the order of reps leaves no rounding behind.
  private double sum(int good, int bad) {
    return good * forGood() + bad * forBad();
  }

  /**
   * The exact chance that an athlete whose true share is {@code p} passes within {@code reps} reps, by counting the ways.
   *
   * @param p 0 to 1
   * @param reps 0 to 1000
   */
  public double chanceOfPassing(double p, int reps) {
    BetaShare.checkShare(p);
    if (reps < 0 || reps > 1000) {
      throw new RefusedException("A test over " + reps + " reps is out of range: 0 to 1000.");
    }
    double[] alive = {1};
    double passed = 0;
    for (int n = 1; n <= reps; n++) {
      double[] next = new double[n + 1];
      for (int good = 0; good <= n; good++) {
        double chance = (good > 0 ? alive[good - 1] * p : 0) + (good < n ? alive[good] * (1 - p) : 0);
        double sum = sum(good, n - good);
        if (sum >= passAt()) {
          passed += chance;
        } else if (sum > failAt()) {
          next[good] = chance;
        }
      }
      alive = next;
    }
    return passed;
  }

  /** The test in a sentence. */
  public String inWords() {
    return String.format(
        Locale.ROOT,
        "Passes a true share of %.0f %% and stops one of %.0f %%: at the earliest after %d good reps in a row, or fails after %d bad ones.",
        p1 * 100, p0 * 100, shortestPass(), shortestFail());
  }
}
