package boundwright.clip;

/**
 * A rectangle in the picture [px of the picture as shown], drawn round the athlete.
 *
 * @param x left edge
 * @param y top edge
 * @param width above 0
 * @param height above 0
 */
public record Box(double x, double y, double width, double height) {}
