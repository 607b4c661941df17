package boundwright.runway;

import boundwright.flight.Forecast;
import java.util.Optional;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.util.FastMath;

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
  private static final int MOST_STEPS = 200;

  private final double near;
  private final double far;
  private final double lastSd;
  private final double landingSd;
  private final double tie;
  private final double free;
  private final MarkSettings settings;
  private final double best;
  private final double bestChance;

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
    this.bestChance = counts(best);
  }

  static MarkChances of(Forecast f, MarkSettings settings) {
    int n = f.sequence().size();
    return new MarkChances(f.mean(n), f.sd(n), f.mean(n + 1), f.sd(n + 1), f.lastContactWithLanding(), settings);
  }

  /** Chance that a rep from this mark counts: ends in sand and keeps the last contact out of it, each by its margin; 0 to 1. */
  double counts(double mark) {
    return JointNormal.belowAndAbove(clearScore(mark), -inSandScore(mark), tie);
  }

  /** What is asked. */
  MarkSettings settings() {
    return settings;
  }

  /** Expected place of the last contact, from the take-off mark [m]. */
  double lastContact() {
    return near - settings.clearMargin_m();
  }

  /** Expected place of the landing, from the take-off mark [m]. */
  double landing() {
    return far + settings.sandMargin_m();
  }

  /**
   * To the last digits, so that a browser, whose last digits differ, finds the same mark; it counts its steps, so everybody needs their
   * own.
   */
  private static BracketingNthOrderBrentSolver solver() {
    return new BracketingNthOrderBrentSolver(1e-14, 1e-13, 5);
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

  /** The chance that a rep from the best mark counts, 0 to 1. */
  double bestChance() {
    return bestChance;
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
    if (rise(from) <= 0 || rise(to) >= 0) {
      return Math.max(0, rise(from) <= 0 ? from : to);
    }
    return Math.max(0, solver().solve(MOST_STEPS, this::rise, from, to));
  }

  /** Whether the chance grows with the mark. */
  boolean rises(double mark) {
    return rise(mark) > 0;
  }

  /** Logarithm of what more room before the sand wins over what the longer way to it loses: 0 at the best mark. */
  private double rise(double mark) {
    double x = clearScore(mark);
    double y = -inSandScore(mark);
    double wins = -x * x / 2 - FastMath.log(lastSd) + JointNormal.logBelow((tie * x - y) / free);
    double loses = -y * y / 2 - FastMath.log(landingSd) + JointNormal.logBelow((x - tie * y) / free);
    return wins - loses;
  }

  /** The marks from which a rep counts with the asked chance, none if the best one does not: both decided on {@link InHundred}. */
  Optional<Window> window() {
    int asked = InHundred.asked(settings.chance());
    if (InHundred.of(bestChance) < asked) {
      return Optional.empty();
    }
    double z = NORMAL.inverseCumulativeProbability(asked / 100.0);
    return Optional.of(
        new Window(
            edge(Math.max(0, Math.min(best, near + z * lastSd)), asked), edge(Math.max(best, far - z * landingSd), asked)));
  }

  /** The last mark that works on the way from the best one to {@code outer}, beyond which none does. */
  private double edge(double outer, int asked) {
    UnivariateFunction more = mark -> counts(mark) - asked / 100.0;
    if (more.value(outer) >= 0 || more.value(best) <= 0) {
      return more.value(outer) >= 0 ? outer : best;
    }
    return solver().solve(MOST_STEPS, more, Math.min(best, outer), Math.max(best, outer), AllowedSolution.ABOVE_SIDE);
  }

  /** The two marks at which the edges themselves, without margins, are at stake. */
  MarkAdvice.LearningMarks learning() {
    double z = NORMAL.inverseCumulativeProbability(MarkAdvice.LEARNING_CHANCE);
    double one = Math.max(0, lastContact() + z * lastSd);
    double other = Math.max(0, landing() - z * landingSd);
    return new MarkAdvice.LearningMarks(Math.min(one, other), Math.max(one, other));
  }
}
