package boundwright.approach.legs;

import boundwright.footfall.Foot;
import java.time.LocalDate;

/**
 * One measured value off a leg.
 *
 * @param what is measured
 * @param foot it was taken off from
 * @param date the day
 * @param steps of the run-up, 0 to 26
 * @param place of the flight in the rep, from 1
 * @param value in the unit of {@code what}
 */
public record OffLeg(Measure what, Foot foot, LocalDate date, int steps, int place, double value) {}
