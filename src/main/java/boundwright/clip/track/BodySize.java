package boundwright.clip.track;

import boundwright.footfall.Foot;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/**
 * How large the athlete is in the picture, before anything is calibrated: needed so that limits on speed and noise can be
 * written in metres.
 *
 * <p>From the median length of hip-knee plus knee-ankle, taken as 0.86 m on a grown athlete (thigh and shank are .245 and
 * .246 of the height; Winter, memory, at 1.75 m). A tenth more or less does no harm: only limits rest on it.
 */
public final class BodySize {
  private static final double LEG_M = 0.86;

  private BodySize() {}

  /** Units of the track (pixels) per metre of athlete. */
  public static double perMetre(Track track) {
    List<Double> legs = new ArrayList<>();
    for (int i = 0; i < track.frames(); i++) {
      for (Foot side : Foot.values()) {
        Spot knee = track.spot(BodyPoint.of(Joint.KNEE, side), i);
        double leg =
            track.spot(BodyPoint.of(Joint.HIP, side), i).to(knee) + knee.to(track.spot(BodyPoint.of(Joint.ANKLE, side), i));
        if (!Double.isNaN(leg)) {
          legs.add(leg);
        }
      }
    }
    if (legs.size() < 6) {
      throw new RefusedException(
          String.format(
              Locale.ROOT,
              "A whole leg was seen in %d frames; at least 3 frames with both legs are needed. Film from the side with the feet in the picture, or draw a box round the athlete.",
              legs.size()));
    }
    Collections.sort(legs);
    return legs.get(legs.size() / 2) / LEG_M;
  }
}
