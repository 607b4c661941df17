package boundwright.technique;

import boundwright.evidence.Source;
import boundwright.evidence.Sources;
import boundwright.quantity.Interval;
import boundwright.quantity.RefusedException;
import java.util.Locale;

/**
 * Cohen's kappa: how far two observers who put the same reps into categories agree beyond chance; 1 is full agreement, 0 is
 * what guessing at each observer's own rates would give. With shares p(i,j), margins r and c, po the agreement and pe that of
 * chance: kappa = (po - pe) / (1 - pe) (Cohen 1960; memory). The standard error is the large-sample one of Fleiss, Cohen and
 * Everitt 1969 (memory); with fewer than some thirty reps, or categories that are hardly used, it is too small.
 *
 * @param value kappa, -1 to 1
 * @param se large-sample standard error; 0 when the two agree everywhere
 * @param agreed share of the reps on which the two agree, 0 to 1
 * @param byChance share on which they would agree by chance, 0 to 1
 * @param reps how many reps both judged
 */
public record Kappa(double value, double se, double agreed, double byChance, int reps) {
  /** Where the measure comes from. */
  public static final Source SOURCE = Sources.KAPPA;
  /** Where its error comes from. */
  public static final Source ERROR_SOURCE = Sources.KAPPA_ERROR;

  /**
   * Kappa of a table of counts.
   *
   * @param counts square; row = category of the first observer, column = category of the second; at least two categories
   * @throws RefusedException if there is nothing to compare, or both use one and the same category throughout
   */
  public static Kappa of(int[][] counts) {
    int k = counts.length;
    long n = 0;
    for (int[] row : counts) {
      if (row.length != k) {
        throw new RefusedException("A table of agreement is square; this one has " + k + " rows and a row of " + row.length + ".");
      }
      for (int c : row) {
        if (c < 0) {
          throw new RefusedException("A table of agreement holds counts of 0 or more; this one holds " + c + ".");
        }
        n += c;
      }
    }
    if (k < 2 || n < 1) {
      throw new RefusedException(
          "Agreement needs at least 2 categories and 1 rep that both looked at; there were " + k + " and " + n + ". Look at some reps together.");
    }
    double[] r = new double[k];
    double[] c = new double[k];
    double agreed = 0;
    for (int i = 0; i < k; i++) {
      for (int j = 0; j < k; j++) {
        r[i] += counts[i][j] / (double) n;
        c[j] += counts[i][j] / (double) n;
      }
      agreed += counts[i][i] / (double) n;
    }
    double chance = 0;
    for (int i = 0; i < k; i++) {
      chance += r[i] * c[i];
    }
    if (chance > 1 - 1e-12) {
      throw new RefusedException(
          "Both observers put all " + n + " reps into one and the same category: they agree, but chance alone would do that too, so "
              + "kappa cannot be told. Look at reps in which the fault is sometimes there.");
    }
    double kappa = (agreed - chance) / (1 - chance);
    double a = 0;
    double b = 0;
    for (int i = 0; i < k; i++) {
      for (int j = 0; j < k; j++) {
        double p = counts[i][j] / (double) n;
        if (i == j) {
          double w = 1 - (r[i] + c[i]) * (1 - kappa);
          a += p * w * w;
        } else {
          b += p * (c[i] + r[j]) * (c[i] + r[j]);
        }
      }
    }
    double rest = kappa - chance * (1 - kappa);
    double variance = Math.max(0, a + (1 - kappa) * (1 - kappa) * b - rest * rest) / n;
    return new Kappa(kappa, Math.sqrt(variance) / (1 - chance), agreed, chance, Math.toIntExact(n));
  }

  /** The 95 % interval, cut at -1 and 1. */
  public Interval interval() {
    return new Interval(Math.max(-1, value - Interval.Z975 * se), Math.min(1, value + Interval.Z975 * se), 0.95);
  }

  /** The agreement in a sentence. */
  public String inWords() {
    Interval i = interval();
    String tail =
        i.low() > 0
            ? "They agree more than chance would."
            : i.high() < 0 ? "They agree less than chance would: agree on the words first." : "That cannot be told from chance.";
    return String.format(
            Locale.ROOT, "The same on %.0f %% of %d reps, kappa %.2f (95 %% interval %.2f to %.2f). ", agreed * 100, reps, value, i.low(), i.high())
        + tail
        + (reps < 30 ? " With fewer than 30 reps the interval is too narrow." : "");
  }
}
