package boundwright.clip.day;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Which rep of a film is which tap. The film has one clock, the taps have another; one offset between the two is found that makes the
 * most of them fit, in the same order, some of either left out. A tap comes some seconds after the landing, once sooner and once later.
 *
 * @param offset_s what is added to the film's times to give the taps' [s], the usual delay of a tap included
 * @param taps for each rep of the film the place of its tap, or -1
 * @param sure for each how sure that is, 0 to 1
 */
@SuppressWarnings("ArrayRecordComponent") // made here, read once
record TapMatch(double offset_s, int[] taps, double[] sure) {
  /** How unevenly a coach taps after a landing [s] (judgement). */
  private static final double SPREAD_S = 5;
  /** Farther from its place than this nothing is matched [s]. */
  private static final double FARTHEST_S = 20;
  /** A match is worth this much; what it lies off is taken from it. */
  private static final double WORTH = 1;
  /** Fewer than this fit by chance. */
  private static final int LEAST = 3;
  /** Offsets nearer than this are one [s]. */
  private static final double SAME_S = 15;
  /** The second best offset must be worse by this much, or the match is not believed. */
  private static final double CLEAR = 0.75;

  /**
   * Finds the match.
   *
   * @param landings_s of the film's reps in order [s]
   * @param who of each, as the coach said, or null
   * @param taps_s of the taps in order [s], by any clock
   * @param tapped whose each tap was
   */
  static TapMatch of(double[] landings_s, List<@Nullable Long> who, double[] taps_s, List<Long> tapped) {
    int n = landings_s.length;
    int[] none = new int[n];
    Arrays.fill(none, -1);
    TapMatch nothing = new TapMatch(Double.NaN, none, new double[n]);
    if (Math.min(n, taps_s.length) < LEAST) {
      return nothing;
    }
    double best = Double.NEGATIVE_INFINITY;
    double offset = Double.NaN;
    List<double[]> all = new ArrayList<>();
    for (double landing : landings_s) {
      for (double tap : taps_s) {
        double o = tap - landing;
        double worth = worth(path(landings_s, who, taps_s, tapped, o), landings_s, taps_s, o);
        all.add(new double[] {o, worth});
        if (worth > best) {
          best = worth;
          offset = o;
        }
      }
    }
    int[] path = path(landings_s, who, taps_s, tapped, offset);
    offset = refined(path, landings_s, taps_s, offset);
    path = path(landings_s, who, taps_s, tapped, offset);
    best = Math.max(best, worth(path, landings_s, taps_s, offset));
    double found = offset;
    double second = all.stream().filter(a -> Math.abs(a[0] - found) > SAME_S).mapToDouble(a -> a[1]).max().orElse(0);
    long fit = Arrays.stream(path).filter(t -> t >= 0).count();
    if (fit < LEAST || best - second < CLEAR) {
      return nothing;
    }
    double clear = Math.min(1, (best - second) / fit + 0.5);
    double[] sure = new double[n];
    for (int i = 0; i < n; i++) {
      sure[i] = path[i] < 0 ? 0 : clear * Math.exp(-0.5 * sq((taps_s[path[i]] - landings_s[i] - offset) / (2 * SPREAD_S))) * alone(i, path[i], landings_s, taps_s, offset);
    }
    return new TapMatch(offset, path, sure);
  }

  /** Less than one where another tap or another rep fits nearly as well. */
  private static double alone(int i, int tap, double[] landings, double[] taps, double offset) {
    double own = off(taps[tap] - landings[i] - offset);
    double other = 0;
    for (int j = 0; j < taps.length; j++) {
      other = j == tap ? other : Math.max(other, off(taps[j] - landings[i] - offset));
    }
    for (int k = 0; k < landings.length; k++) {
      other = k == i ? other : Math.max(other, off(taps[tap] - landings[k] - offset));
    }
    return own / (own + 0.5 * other);
  }

  private static double off(double residual) {
    return Math.exp(-0.5 * sq(residual / SPREAD_S));
  }

  private static double refined(int[] path, double[] landings, double[] taps, double offset) {
    double[] all =
        IntStream.range(0, path.length).filter(i -> path[i] >= 0).mapToDouble(i -> taps[path[i]] - landings[i]).sorted().toArray();
    return all.length == 0 ? offset : all[all.length >> 1];
  }

  private static double sq(double v) {
    return v * v;
  }

  private static double gain(double residual) {
    return Math.abs(residual) > FARTHEST_S ? Double.NEGATIVE_INFINITY : WORTH - Math.min(0.9, 0.25 * sq(residual / SPREAD_S));
  }

  private static double worth(int[] path, double[] landings, double[] taps, double offset) {
    double sum = 0;
    for (int i = 0; i < path.length; i++) {
      sum += path[i] < 0 ? 0 : gain(taps[path[i]] - landings[i] - offset);
    }
    return sum;
  }

  /** The best match in order for one offset. */
  private static int[] path(double[] landings, List<@Nullable Long> who, double[] taps, List<Long> tapped, double offset) {
    int n = landings.length;
    int m = taps.length;
    double[][] worth = new double[n + 1][m + 1];
    for (int i = 1; i <= n; i++) {
      for (int j = 1; j <= m; j++) {
        worth[i][j] = Math.max(worth[i - 1][j], worth[i][j - 1]);
        worth[i][j] = Math.max(worth[i][j], worth[i - 1][j - 1] + both(landings, who, taps, tapped, offset, i - 1, j - 1));
      }
    }
    int[] out = new int[n];
    Arrays.fill(out, -1);
    int j = m;
    for (int i = n; i > 0 && j > 0; ) {
      double matched = worth[i - 1][j - 1] + both(landings, who, taps, tapped, offset, i - 1, j - 1);
      if (worth[i][j] == matched) {
        out[--i] = --j;
      } else if (worth[i][j] == worth[i - 1][j]) {
        i--;
      } else {
        j--;
      }
    }
    return out;
  }

  private static double both(double[] landings, List<@Nullable Long> who, double[] taps, List<Long> tapped, double offset, int i, int j) {
    Long said = who.get(i);
    return said != null && !said.equals(tapped.get(j)) ? Double.NEGATIVE_INFINITY : gain(taps[j] - landings[i] - offset);
  }

  /** The offset, empty where none was found. */
  OptionalDouble offset() {
    return Double.isNaN(offset_s) ? OptionalDouble.empty() : OptionalDouble.of(offset_s);
  }
}
