package boundwright.flight.season;

import boundwright.flight.Forecast;
import org.hipparchus.distribution.continuous.NormalDistribution;

/** The mark that a forecast gives, with the margins of the default settings (0.30 m each side), worked here on its own. */
record Marks(double meanLast, double sdLast, double meanLanding, double sdLanding) {
  static final double MARGIN = 0.30;
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

  static Marks of(Forecast f) {
    int n = f.sequence().size();
    return new Marks(f.mean(n), f.sd(n), f.mean(n + 1), f.sd(n + 1));
  }

  /** Where the two chances meet [m]. */
  double best() {
    return Math.max(0, ((meanLanding - MARGIN) * sdLast + (meanLast + MARGIN) * sdLanding) / (sdLast + sdLanding));
  }

  /** Chance that a rep from there counts: the two failures exclude each other. */
  double promise(double mark) {
    return NORMAL.cumulativeProbability((meanLanding - MARGIN - mark) / sdLanding)
        + NORMAL.cumulativeProbability((mark - MARGIN - meanLast) / sdLast)
        - 1;
  }

  /** The mark at which one of the two sides is at stake three times in ten [m]. */
  double learning(boolean far) {
    return Math.max(0.1, far ? meanLanding - 0.5244 * sdLanding : meanLast + 0.5244 * sdLast);
  }

  /** Whether a rep counts: in sand by the margin and the last contact clear by the margin. */
  static boolean counts(double[] p, double mark) {
    int n = p.length - 1;
    return p[n] >= mark + MARGIN && p[n - 1] <= mark - MARGIN;
  }
}
