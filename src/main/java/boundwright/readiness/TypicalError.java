package boundwright.readiness;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Estimate;
import boundwright.quantity.Interval;
import boundwright.quantity.RefusedException;
import boundwright.technique.IntraclassCorrelation.Form;
import boundwright.technique.IntraclassCorrelation;
import java.util.List;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.special.Erf;

/**
 * The error of a test, from athletes who did it twice with nothing in between that could change them: typical error = SD of
 * the differences / sqrt 2 (Hopkins 2000, Sports Med 30:1-15, read). A shift common to all, such as learning the test, is not
 * error and is taken out. All lengths and speeds are in the unit of the test.
 *
 * @param pairs athletes who did it twice
 * @param mean mean of all scores
 * @param meanChange mean of second less first
 * @param te typical error: SD of an athlete's scores about their own level, at least 0
 * @param betweenSd SD of the athletes' own levels, the error taken out; 0 if the error drowns it
 * @param icc intraclass correlation (3,1), see {@link IntraclassCorrelation}; NaN with two pairs
 */
public record TypicalError(int pairs, double mean, double meanChange, double te, double betweenSd, double icc) {
  /** Where the measures come from. */
  public static final Source SOURCE = Sources.TYPICAL_ERROR;
  /** Where the minimal detectable change comes from. */
  public static final Source CHANGE_SOURCE = Sources.DETECTABLE_CHANGE;
  /** Share of the between-athlete SD that is called the smallest worthwhile change (Hopkins 2000, read). */
  public static final double WORTHWHILE = 0.2;

  /**
   * An athlete's two scores.
   *
   * @param first the earlier one
   * @param second the later one
   */
  public record Pair(double first, double second) {}

  /**
   * From pairs of repeats.
   *
   * @throws RefusedException with fewer than two pairs, or scores that are not finite
   */
  public static TypicalError ofPairs(List<Pair> pairs) {
    int n = pairs.size();
    if (n < 2) {
      throw new RefusedException(
          "The error of a test needs at least 2 athletes who did it twice; there " + (n == 1 ? "was 1" : "were " + n)
              + ". Repeat the test with the squad within two weeks.");
    }
    double mean = 0;
    double change = 0;
    for (Pair p : pairs) {
      if (!Double.isFinite(p.first()) || !Double.isFinite(p.second())) {
        throw new RefusedException("A repeat of " + p.first() + " and " + p.second() + " is no pair of scores. Leave it out.");
      }
      mean += (p.first() + p.second()) / 2 / n;
      change += (p.second() - p.first()) / n;
    }
    double squares = 0;
    double levels = 0;
    for (Pair p : pairs) {
      double d = p.second() - p.first() - change;
      double l = (p.first() + p.second()) / 2 - mean;
      squares += d * d;
      levels += l * l;
    }
    double te = Math.sqrt(squares / (n - 1) / 2);
    double between = Math.sqrt(Math.max(0, levels / (n - 1) - te * te / 2));
    return new TypicalError(n, mean, change, te, between, icc(pairs, squares + levels));
  }

  private static double icc(List<Pair> pairs, double spread) {
    if (pairs.size() < 3 || spread <= 1e-20) {
      return Double.NaN;
    }
    double[][] table = pairs.stream().map(p -> new double[] {p.first(), p.second()}).toArray(double[][]::new);
    return IntraclassCorrelation.of(table).value(Form.FIXED_SINGLE);
  }

  /** SD of the changes from first to second. */
  public double changeSd() {
    return te * Math.sqrt(2);
  }

  /** Coefficient of variation: typical error as a share of the mean [%]. */
  public double cvPercent() {
    return 100 * te / mean;
  }

  /** Smallest worthwhile change: 0.2 of the SD between athletes. A larger step than the least that could matter is no harm. */
  public double smallestWorthwhile() {
    return WORTHWHILE * betweenSd;
  }

  /** Minimal detectable change at 95 %: what one test after one test must exceed to be told from error alone. */
  public double detectableChange() {
    return Interval.Z975 * Math.sqrt(2) * te;
  }

  /** The 95 % interval of the typical error (chi-square on pairs - 1; normal errors). Wide with few pairs. */
  public Interval interval() {
    ChiSquaredDistribution chi = new ChiSquaredDistribution(pairs - 1);
    double squares = (pairs - 1) * te * te;
    return new Interval(
        Math.sqrt(squares / chi.inverseCumulativeProbability(0.975)), Math.sqrt(squares / chi.inverseCumulativeProbability(0.025)), 0.95);
  }

  /** Whether a single try can see the smallest worthwhile change at all. */
  public boolean seesWorthwhile() {
    return te <= smallestWorthwhile();
  }

  /**
   * A change between two scores of one athlete.
   *
   * @param change later less earlier, with its 90 % interval
   * @param detectable the minimal detectable change that applies
   * @param chanceBetter chance that the true change is above the smallest worthwhile one, 0 to 1
   * @param chanceWorse chance that it is below minus the smallest worthwhile one, 0 to 1
   */
  public record Change(Estimate change, double detectable, double chanceBetter, double chanceWorse) {
    /** Whether it is larger than the error of the test explains. */
    public boolean beyondError() {
      return Math.abs(change.p50()) > detectable;
    }

    /** What can be said, without figures: the caller writes those in the coach's unit. */
    public String inWords() {
      if (beyondError()) {
        return change.p50() > 0 ? "Better by more than the error of the test." : "Lower by more than the error of the test.";
      }
      return "Within the error of the test: test again before you act on it.";
    }
  }

  /** What the change from {@code before} to {@code after} means, given this error; more is better. */
  public Change judge(double before, double after) {
    double d = after - before;
    double sd = changeSd();
    double swc = smallestWorthwhile();
    return new Change(Estimate.normal(d, sd), detectableChange(), chanceAbove(d - swc, sd), chanceAbove(-d - swc, sd));
  }

  private static double chanceAbove(double distance, double sd) {
    return sd == 0 ? (distance > 0 ? 1 : 0) : 0.5 * Erf.erfc(-distance / sd / Math.sqrt(2));
  }
}
