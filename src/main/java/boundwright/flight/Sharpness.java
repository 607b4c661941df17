package boundwright.flight;

/**
 * How well a forecast knows where the last contact and the landing of one rep will fall.
 *
 * @param lastContactSd standard deviation of the last contact's position [m]
 * @param landingSd standard deviation of the landing's position [m]
 * @param together covariance of the two [m2]
 */
public record Sharpness(double lastContactSd, double landingSd, double together) {}
