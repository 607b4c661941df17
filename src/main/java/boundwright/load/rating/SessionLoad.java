package boundwright.load.rating;

import boundwright.quantity.RefusedException;
import java.util.List;

/**
 * Session ratings and weighted means: a description of the training, never a gate.
 *
 * <p>Session load = rating (0 to 10) x minutes; monotony = mean over standard deviation of the seven days, strain = sum x
 * monotony (Foster 1998; memory; the source seen does not say which standard deviation: n - 1 here). Exponentially
 * weighted mean with L = 2 / (N + 1), started at the first load (Williams et al. 2017, read). Their ratio is largely
 * arithmetic (Lolli et al. 2019; Impellizzeri et al. 2021, read) and is not computed.
 */
public final class SessionLoad {
  private SessionLoad() {}

  /** Rating x minutes; rating 0 to 10, minutes 1 to 600. */
  public static double of(double rating, double minutes) {
    if (!(rating >= 0 && rating <= 10) || !(minutes >= 1 && minutes <= 600)) {
      throw new RefusedException(
          "A session rated " + rating + " over " + minutes + " minutes is out of range: rating 0 to 10, 1 to 600 minutes.");
    }
    return rating * minutes;
  }

  /**
   * A week of seven days' loads.
   *
   * @param sum of the seven
   * @param monotony mean over standard deviation; NaN when all seven are equal
   * @param strain sum x monotony; NaN when monotony is
   */
  public record Week(double sum, double monotony, double strain) {}

  /** Describes seven days; days of rest are 0. */
  public static Week week(List<Double> days) {
    if (days.size() != 7) {
      throw new RefusedException("A week has seven days of load; " + days.size() + " were given. Enter 0 for a day of rest.");
    }
    double sum = days.stream().mapToDouble(d -> d).sum();
    double mean = sum / 7;
    double squares = days.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
    double sd = Math.sqrt(squares / 6);
    double monotony = sd == 0 ? Double.NaN : mean / sd;
    return new Week(sum, monotony, sum * monotony);
  }

  /** Weighted mean after the last day, over {@code n} days, oldest load first; at least one. */
  public static double weightedMean(List<Double> days, int n) {
    double weight = 2.0 / (n + 1);
    double mean = days.get(0);
    for (int i = 1; i < days.size(); i++) {
      mean += weight * (days.get(i) - mean);
    }
    return mean;
  }
}
