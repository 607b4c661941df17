package boundwright.clip.contact;

import boundwright.clip.contact.CornerFit.Prior;
import java.util.Arrays;
import java.util.List;

/** What the contacts of one rep have in common, taken as the prior of each (empirical Bayes). */
final class Pool {
  /** From so many contacts on there is something in common to speak of. */
  private static final int FEWEST = 3;

  private Pool() {}

  /**
   * The priors of some coefficients.
   *
   * @param seen one row a contact
   * @param first what holds before anything was seen
   * @param least the smallest standard deviation that is believed
   */
  static Prior[] of(List<double[]> seen, Prior[] first, double[] least) {
    if (seen.size() < FEWEST) {
      return first;
    }
    Prior[] out = new Prior[first.length];
    for (int c = 0; c < first.length; c++) {
      int col = c;
      double[] v = seen.stream().mapToDouble(k -> k[col]).sorted().toArray();
      double mid = median(v);
      double[] off = Arrays.stream(v).map(a -> Math.abs(a - mid)).sorted().toArray();
      out[c] = new Prior(mid, Math.min(first[c].sd(), Math.max(least[c], 1.2 * median(off))));
    }
    return out;
  }

  static double median(double[] sorted) {
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
  }
}
