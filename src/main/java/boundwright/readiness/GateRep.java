package boundwright.readiness;

import java.time.LocalDate;

/**
 * A rep whose technique was judged.
 *
 * @param date its day
 * @param clean whether nothing was ticked
 * @param length landing over the mean landing of the same drill on the same day, or NaN when it was not measured
 */
public record GateRep(LocalDate date, boolean clean, double length) {}
