package boundwright.clip.reading;

import boundwright.footfall.Foot;
import boundwright.quantity.Estimate;
import org.jspecify.annotations.Nullable;

/**
 * The take-off into the last flight of a clip, to be entered as that of a long jump. Heights and places are of the centre of mass by the
 * segment model; speeds and heights are those of the free flight fitted to it.
 *
 * @param foot it took off from
 * @param speedIn_ms forward speed into it [m/s], or null where the flight or step before was not seen
 * @param touchdown_m toe ahead of the centre of mass at touchdown [m], or null
 * @param speed_ms forward speed at toe-off [m/s]
 * @param upSpeed_ms upward speed at toe-off [m/s]
 * @param height_m at toe-off [m]
 * @param landingHeight_m at the landing [m]
 * @param ahead_m ahead of the toe at toe-off [m]
 */
public record LastTakeOff(
    Foot foot,
    @Nullable Double speedIn_ms,
    @Nullable Estimate touchdown_m,
    double speed_ms,
    double upSpeed_ms,
    double height_m,
    double landingHeight_m,
    double ahead_m) {}
