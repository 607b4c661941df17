package boundwright.readiness;

/**
 * Whether the speed of a rung goes into longer flights.
 *
 * @param perFlight gain over the rung below [m a flight]
 * @param chanceLonger chance that it is above 0
 * @param repsHere reps logged with a length or a tap from this rung
 */
public record SpeedUse(double perFlight, double chanceLonger, int repsHere) {}
