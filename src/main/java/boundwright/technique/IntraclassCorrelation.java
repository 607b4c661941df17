package boundwright.technique;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Interval;
import boundwright.quantity.RefusedException;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * How much of the spread of figures lies between the things judged rather than between or within the observers: the six
 * intraclass correlations of Shrout and Fleiss 1979 (Psychol Bull 86:420-428, read) from the mean squares of a table of
 * {@code targets} rows and {@code observers} columns, with the F-based intervals of McGraw and Wong 1996 (Psychol Methods
 * 1:30-46, memory). An estimate below 0 is possible and means: no sign that the targets differ; the mean of
 * all observers can then have no finite figure and is given as minus infinity.
 *
 * @param targets rows, n, at least 3
 * @param observers columns, k, at least 2
 * @param betweenTargets mean square between targets (n - 1)
 * @param withinTargets mean square within targets (n (k - 1))
 * @param betweenObservers mean square between observers (k - 1)
 * @param residual residual mean square ((n - 1)(k - 1))
 */
public record IntraclassCorrelation(
    int targets, int observers, double betweenTargets, double withinTargets, double betweenObservers, double residual) {
  /** Where the six forms come from. */
  public static final Source SOURCE = Sources.ICC;
  /** Where the intervals come from. */
  public static final Source INTERVAL_SOURCE = Sources.ICC_INTERVALS;

  /** Which of the six. */
  public enum Form {
    /** (1,1): each target judged by other observers; one figure. */
    ONE_WAY_SINGLE(false),
    /** (2,1): observers drawn from many; one figure, absolute agreement. */
    RANDOM_SINGLE(false),
    /** (3,1): just these observers; one figure, a constant difference between them forgiven. */
    FIXED_SINGLE(false),
    /** (1,k): as (1,1), mean of all observers. */
    ONE_WAY_MEAN(true),
    /** (2,k): as (2,1), mean of all observers. */
    RANDOM_MEAN(true),
    /** (3,k): as (3,1), mean of all observers. */
    FIXED_MEAN(true);

    private final boolean mean;

    Form(boolean mean) {
      this.mean = mean;
    }

    /** Whether it speaks of the mean of all observers. */
    public boolean ofMean() {
      return mean;
    }
  }

  /**
   * From a full table.
   *
   * @param figures one row per target, one column per observer; any unit, all finite
   * @throws RefusedException if the table is too small, has gaps, or all its figures are the same
   */
  public static IntraclassCorrelation of(double[][] figures) {
    int n = figures.length;
    int k = n == 0 ? 0 : figures[0].length;
    if (n < 3 || k < 2) {
      throw new RefusedException(
          "An intraclass correlation needs at least 3 rows and 2 observers; there were " + n + " and " + k + ". Add more.");
    }
    double grand = 0;
    double[] row = new double[n];
    double[] column = new double[k];
    for (int i = 0; i < n; i++) {
      if (figures[i].length != k) {
        throw new RefusedException("Row " + (i + 1) + " has " + figures[i].length + " figures and row 1 has " + k + ". Leave out rows with gaps.");
      }
      for (int j = 0; j < k; j++) {
        if (!Double.isFinite(figures[i][j])) {
          throw new RefusedException("Row " + (i + 1) + " has no figure from observer " + (j + 1) + ". Leave that row out.");
        }
        row[i] += figures[i][j] / k;
        column[j] += figures[i][j] / n;
        grand += figures[i][j] / n / k;
      }
    }
    double rows = 0;
    double columns = 0;
    double rest = 0;
    for (int i = 0; i < n; i++) {
      rows += k * (row[i] - grand) * (row[i] - grand);
      for (int j = 0; j < k; j++) {
        double e = figures[i][j] - row[i] - column[j] + grand;
        rest += e * e;
      }
    }
    for (int j = 0; j < k; j++) {
      columns += n * (column[j] - grand) * (column[j] - grand);
    }
    // What is left by rounding alone is nothing: 1e-24 of the figures' own squares.
    double dust = 1e-24 * (grand * grand * n * k + rows + columns);
    rest = rest <= dust ? 0 : rest;
    columns = columns <= dust ? 0 : columns;
    if (rows <= dust && rest == 0) {
      throw new RefusedException("All rows have the same figures: there is nothing to tell apart. Take reps that differ.");
    }
    return new IntraclassCorrelation(
        n, k, rows / (n - 1), (columns + rest) / (n * (k - 1.0)), columns / (k - 1), rest / ((n - 1.0) * (k - 1)));
  }

  /** The correlation in this form. */
  public double value(Form form) {
    double b = betweenTargets;
    double w = withinTargets;
    double e = residual;
    double k = observers;
    double j = (betweenObservers - e) / targets;
    return switch (form) {
      case ONE_WAY_SINGLE -> (b - w) / (b + (k - 1) * w);
      case RANDOM_SINGLE -> (b - e) / (b + (k - 1) * e + k * j);
      case FIXED_SINGLE -> (b - e) / (b + (k - 1) * e);
      case ONE_WAY_MEAN -> (b - w) / b;
      case RANDOM_MEAN -> steppedUp(value(Form.RANDOM_SINGLE));
      case FIXED_MEAN -> (b - e) / b;
    };
  }

  /** The 95 % interval in this form. */
  public Interval interval(Form form) {
    double k = observers;
    return switch (form) {
      case ONE_WAY_SINGLE, ONE_WAY_MEAN -> fromF(betweenTargets / withinTargets, targets * (k - 1), form.ofMean());
      case FIXED_SINGLE, FIXED_MEAN -> fromF(betweenTargets / residual, (targets - 1) * (k - 1), form.ofMean());
      case RANDOM_SINGLE -> random();
      case RANDOM_MEAN -> {
        Interval single = random();
        yield new Interval(steppedUp(single.low()), steppedUp(single.high()), single.level());
      }
    };
  }

  // Spearman and Brown; a single figure at or below -1/(k-1) has no bound below for the mean.
  private double steppedUp(double single) {
    double below = 1 + (observers - 1) * single;
    return below <= 0 ? Double.NEGATIVE_INFINITY : observers * single / below;
  }

  private Interval fromF(double f, double within, boolean mean) {
    if (Double.isInfinite(f)) {
      return new Interval(1, 1, 0.95);
    }
    double low = f / upperF(targets - 1, within);
    double high = f * upperF(within, targets - 1);
    return mean
        ? new Interval(1 - 1 / low, 1 - 1 / high, 0.95)
        : new Interval((low - 1) / (low + observers - 1), (high - 1) / (high + observers - 1), 0.95);
  }

  private Interval random() {
    double n = targets;
    double k = observers;
    double b = betweenTargets;
    double c = betweenObservers;
    double e = residual;
    double rho = value(Form.RANDOM_SINGLE);
    if (c == 0 && e == 0) {
      return new Interval(1, 1, 0.95);
    }
    // Satterthwaite's degrees of freedom for the error of absolute agreement.
    double p = k * rho / (n * (1 - rho));
    double q = 1 + k * rho * (n - 1) / (n * (1 - rho));
    double num = (p * c + q * e) * (p * c + q * e);
    double den = p * c * (p * c) / (k - 1) + q * e * (q * e) / ((n - 1) * (k - 1));
    double v = Math.max(1, num / den);
    double below = upperF(n - 1, v);
    double above = upperF(v, n - 1);
    double error = k * c + (k * n - k - n) * e;
    return new Interval(
        n * (b - below * e) / (below * error + n * b), n * (above * b - e) / (error + n * above * b), 0.95);
  }

  private static double upperF(double numerator, double denominator) {
    return new FDistribution(numerator, denominator).inverseCumulativeProbability(0.975);
  }
}
