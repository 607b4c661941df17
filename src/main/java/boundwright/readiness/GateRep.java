package boundwright.readiness;

import java.time.LocalDate;

/**
 * A rep whose technique was looked at.
 *
 * @param date its day
 * @param clean whether nothing was ticked
 * @param length landing over the mean landing of the same drill on the same day, or NaN when it was not measured
 * @param loadsLeg whether a fault was ticked that loads a leg, see {@link LegLoading}
 */
public record GateRep(LocalDate date, boolean clean, double length, boolean loadsLeg) {
  /** A rep without such a fault. */
  public GateRep(LocalDate date, boolean clean, double length) {
    this(date, clean, length, false);
  }
}
