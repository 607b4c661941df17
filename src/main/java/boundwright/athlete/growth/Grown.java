package boundwright.athlete.growth;

import java.time.LocalDate;

/**
 * How much taller somebody is than on a day.
 *
 * @param since that day
 * @param ratio height now over height then, at least 1
 * @param sd standard deviation of the ratio
 */
public record Grown(LocalDate since, double ratio, double sd) {
  /** In per cent. */
  public double percent() {
    return 100 * (ratio - 1);
  }
}
