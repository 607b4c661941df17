package boundwright.clip.contact;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Motion;

/** The middle between the hips. */
final class Hips {
  private Hips() {}

  /** Where it is forward at a time [m], NaN if unknown. */
  static double at(Motion motion, double time) {
    return motion.at(BodyPoint.LEFT_HIP, time).towards(motion.at(BodyPoint.RIGHT_HIP, time), 0.5).x();
  }
}
