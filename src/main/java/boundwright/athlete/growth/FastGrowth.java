package boundwright.athlete.growth;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * That somebody grows fast, or did not long ago, by the setting.
 *
 * @param now whether they do, by the last height; if not they did until {@code until}
 * @param until last day for which it is told
 * @param speed_cm_y the speed that is believed most [cm/y], by the last height
 * @param low_cm_y 5 % point [cm/y]
 * @param high_cm_y 95 % point [cm/y]
 * @param measured day of the last height
 * @param limit_cm_y the setting [cm/y]
 */
public record FastGrowth(
    boolean now, LocalDate until, double speed_cm_y, double low_cm_y, double high_cm_y, LocalDate measured, double limit_cm_y) {
  /** Whole weeks since it was told last; 0 while they grow fast. */
  public long weeks(LocalDate day) {
    return now ? 0 : Math.max(0, ChronoUnit.WEEKS.between(until, day));
  }
}
