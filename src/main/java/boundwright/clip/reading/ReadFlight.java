package boundwright.clip.reading;

import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * From one contact to the next.
 *
 * @param time_s toe-off to touchdown [s], or null where an end was not seen
 * @param length_m toe to toe, and toe to nearer heel into the landing [m]; null without marks
 * @param speed_ms forward speed of the centre of mass [m/s]; NaN if too little was seen
 * @param upSpeed_ms upward speed of it at toe-off [m/s]; NaN likewise
 * @param fallen_ms2 its downward acceleration if left free [m/s2]: near 9.81 when scale and times are true; NaN likewise
 * @param height_m height of it at toe-off [m]; NaN likewise
 * @param landingHeight_m height of it at the touchdown [m]; NaN likewise
 * @param ahead_m how far it is ahead of the toe at toe-off [m]; NaN likewise
 */
public record ReadFlight(
    @Nullable Estimate time_s,
    @Nullable Estimate length_m,
    double speed_ms,
    double upSpeed_ms,
    double fallen_ms2,
    double height_m,
    double landingHeight_m,
    double ahead_m) {}
