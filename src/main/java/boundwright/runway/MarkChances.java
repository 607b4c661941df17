package boundwright.runway;

import boundwright.flight.Forecast;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * The chances of a take-off mark, and the marks that reach a chance. From a mark {@code d} metres before the sand,
 * the landing must pass {@code d} by the margin, and the last contact stay before {@code d} by its margin. Both
 * positions are normal in the forecast, so the chance to end in sand falls and the chance to stay clear rises with
 * {@code d}, the window is an interval, and the mark at which the two chances meet makes the smaller one largest. All
 * in closed form.
 */
record MarkChances(double landing, double landingSd, double lastContact, double lastContactSd, MarkSettings settings) {
  private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

  static MarkChances of(Forecast f, MarkSettings settings) {
    int n = f.sequence().size();
    return new MarkChances(f.mean(n + 1), f.sd(n + 1), f.mean(n), f.sd(n), settings);
  }

  /** Chance to end in sand by the margin, 0 to 1. */
  double inSand(double mark) {
    return NORMAL.cumulativeProbability(inSandScore(mark));
  }

  /** The chance to end in sand as a standard normal score: orders marks alike, and is cheap. */
  double inSandScore(double mark) {
    return (landing - settings.sandMargin_m() - mark) / landingSd;
  }

  /** Chance that the last contact is clear of the sand by the margin, 0 to 1. */
  double clear(double mark) {
    return NORMAL.cumulativeProbability(clearScore(mark));
  }

  /** The chance to stay clear as a standard normal score. */
  double clearScore(double mark) {
    return (mark - settings.clearMargin_m() - lastContact) / lastContactSd;
  }

  /** The mark at which both chances are equal [m]; never in the sand. */
  double best() {
    double far = landing - settings.sandMargin_m();
    double near = lastContact + settings.clearMargin_m();
    return Math.max(0, (far * lastContactSd + near * landingSd) / (lastContactSd + landingSd));
  }

  /** The marks that reach the asked chance on both sides. */
  Optional<Window> window() {
    double z = NORMAL.inverseCumulativeProbability(settings.chance());
    double min = Math.max(0, lastContact + settings.clearMargin_m() + z * lastContactSd);
    double max = landing - settings.sandMargin_m() - z * landingSd;
    return min <= max ? Optional.of(new Window(min, max)) : Optional.empty();
  }

  /** The two marks at which the edges themselves, without margins, are at stake. */
  MarkAdvice.LearningMarks learning() {
    double z = NORMAL.inverseCumulativeProbability(MarkAdvice.LEARNING_CHANCE);
    double one = Math.max(0, lastContact + z * lastContactSd);
    double other = Math.max(0, landing - z * landingSd);
    return new MarkAdvice.LearningMarks(Math.min(one, other), Math.max(one, other));
  }
}
