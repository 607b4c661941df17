package boundwright.flight.season;

import boundwright.flight.Forecast;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The mark that a forecast gives, with the margins of the default settings (0.30 m each side), worked here on its own.
 *
 * @param meanLast mean position of the last contact [m]
 * @param sdLast its standard deviation [m]
 * @param meanLanding mean position of the landing [m]
 * @param sdLanding its standard deviation [m]
 */
public record Marks(double meanLast, double sdLast, double meanLanding, double sdLanding) {
  /** In sand by so much, clear of it by so much [m]. */
  public static final double MARGIN = 0.30;
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

  /** Of a forecast. */
  public static Marks of(Forecast f) {
    int n = f.sequence().size();
    return new Marks(f.mean(n), f.sd(n), f.mean(n + 1), f.sd(n + 1));
  }

  /** Where the two chances meet [m]. */
  public double best() {
    return Math.max(0, ((meanLanding - MARGIN) * sdLast + (meanLast + MARGIN) * sdLanding) / (sdLast + sdLanding));
  }

  /** Chance that a rep from there counts: the two failures exclude each other. */
  public double promise(double mark) {
    return NORMAL.cumulativeProbability((meanLanding - MARGIN - mark) / sdLanding)
        + NORMAL.cumulativeProbability((mark - MARGIN - meanLast) / sdLast)
        - 1;
  }

  /** The mark at which one of the two sides is at stake three times in ten [m]. */
  public double learning(boolean far) {
    return Math.max(0.1, far ? meanLanding - 0.5244 * sdLanding : meanLast + 0.5244 * sdLast);
  }

  /** Whether a rep counts: in sand by the margin and the last contact clear by the margin. */
  public static boolean counts(double[] p, double mark) {
    int n = p.length - 1;
    return p[n] >= mark + MARGIN && p[n - 1] <= mark - MARGIN;
  }
}
