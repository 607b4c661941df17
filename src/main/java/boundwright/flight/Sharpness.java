package boundwright.flight;

/**
 * How well a forecast knows where the last contact and the landing of one rep will fall.
 *
 * @param lastContactSd standard deviation of the last contact's position [m]
 * @param landingSd standard deviation of the landing's position [m]
 */
public record Sharpness(double lastContactSd, double landingSd) {}
