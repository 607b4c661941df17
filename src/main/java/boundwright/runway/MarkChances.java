package boundwright.runway;

import boundwright.flight.Forecast;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The chance that a rep counts from a take-off mark, the mark that makes it largest, and the marks that reach a chance. From a
 * mark {@code d} metres before the sand, the landing must pass {@code d} by the margin, and the last contact stay before
 * {@code d} by its margin. The two positions are jointly normal in the forecast, so the chance of both is one value of the
 * bivariate normal ({@link JointNormal}).
 *
 * <p>What counts is a convex set of pairs of positions that moves with {@code d} without changing shape, and the density is
 * log-concave; so is the chance as a function of {@code d} (Prekopa 1973; memory, high). It has one peak, found by the sign of its
 * slope, which is closed form; and the marks that reach a chance are an interval around it.
 */
final class MarkChances {
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);
  /** Marks at which the chance is smaller than this are not told apart. */
  private static final double NOTHING = 1e-7;
  private static final int HALVINGS = 45;

  private final double near;
  private final double far;
  private final double lastSd;
  private final double landingSd;
  private final double tie;
  private final double free;
  private final MarkSettings settings;
  private final double best;

  /**
   * The chances of a last contact and a landing at these places [m] with these standard deviations [m], above 0.
   *
   * @param together covariance of the two [m2]
   */
  MarkChances(double lastContact, double lastSd, double landing, double landingSd, double together, MarkSettings settings) {
    this.near = lastContact + settings.clearMargin_m();
    this.far = landing - settings.sandMargin_m();
    this.lastSd = lastSd;
    this.landingSd = landingSd;
    this.tie = Math.max(-1, Math.min(1, together / (lastSd * landingSd)));
    this.free = Math.sqrt(Math.max(1e-12, (1 - tie) * (1 + tie)));
    this.settings = settings;
    this.best = findBest();
  }

  static MarkChances of(Forecast f, MarkSettings settings) {
    int n = f.sequence().size();
    return new MarkChances(f.mean(n), f.sd(n), f.mean(n + 1), f.sd(n + 1), f.lastContactWithLanding(), settings);
  }

  /** Chance that a rep from this mark counts: ends in sand and keeps the last contact out of it, each by its margin; 0 to 1. */
  double counts(double mark) {
    return JointNormal.belowAndAbove(clearScore(mark), -inSandScore(mark), tie);
  }

  private double inSandScore(double mark) {
    return (far - mark) / landingSd;
  }

  private double clearScore(double mark) {
    return (mark - near) / lastSd;
  }

  /** The mark from which a rep counts most likely [m]; never in the sand. */
  double best() {
    return best;
  }

  /**
   * Neither chance alone is below the chance of both, so the best mark lies where both are at least as large as the chance at
   * the mark where they are equal. If that is next to nothing anywhere, this mark will do.
   */
  private double findBest() {
    double equal = (far * lastSd + near * landingSd) / (lastSd + landingSd);
    double z = NORMAL.inverseCumulativeProbability(Math.min(1 - NOTHING, Math.max(NOTHING, counts(equal))));
    double from = near + z * lastSd;
    double to = far - z * landingSd;
    if (from >= to) {
      return Math.max(0, equal);
    }
    for (int i = 0; i < HALVINGS; i++) {
      double at = (from + to) / 2;
      if (rises(at)) {
        from = at;
      } else {
        to = at;
      }
    }
    return Math.max(0, (from + to) / 2);
  }

  /** Whether the chance grows with the mark: what more room before the sand wins against what the longer way to it loses. */
  private boolean rises(double mark) {
    double x = clearScore(mark);
    double y = -inSandScore(mark);
    double wins = -x * x / 2 - Math.log(lastSd) + JointNormal.logBelow((tie * x - y) / free);
    double loses = -y * y / 2 - Math.log(landingSd) + JointNormal.logBelow((x - tie * y) / free);
    return wins > loses;
  }

  /** The marks from which a rep counts with the asked chance, none if the best one does not: both decided on {@link InHundred}. */
  Optional<Window> window() {
    int asked = InHundred.asked(settings.chance());
    if (InHundred.of(counts(best)) < asked) {
      return Optional.empty();
    }
    double z = NORMAL.inverseCumulativeProbability(asked / 100.0);
    return Optional.of(
        new Window(
            edge(Math.max(0, Math.min(best, near + (z - 1e-9) * lastSd)), asked),
            edge(Math.max(best, far - (z - 1e-9) * landingSd), asked)));
  }

  /** The last mark that works on the way from the best one to {@code outer}, beyond which none does. */
  private double edge(double outer, int asked) {
    double out = outer;
    double in = best;
    if (InHundred.of(counts(out)) >= asked) {
      return out;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double at = (in + out) / 2;
      if (InHundred.of(counts(at)) >= asked) {
        in = at;
      } else {
        out = at;
      }
    }
    return in;
  }
}
