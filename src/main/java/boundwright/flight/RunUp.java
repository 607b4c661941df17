package boundwright.flight;

import boundwright.quantity.Estimate;

/**
 * An athlete's run-up for a number of approach steps.
 *
 * @param length start mark to first contact [m]; 0 from standing
 * @param speed speed into the first contact [m/s]; 0 from standing
 * @param measured how many run-ups of exactly this many steps were measured with the tape
 */
public record RunUp(Estimate length, Estimate speed, int measured) {}
