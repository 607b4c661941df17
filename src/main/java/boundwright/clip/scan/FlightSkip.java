package boundwright.clip.scan;

import boundwright.clip.pose.Pose;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;

/**
 * Which frames need no look: while both feet are well above where they last stood, nothing happens within a hundredth of
 * a second that the frames around do not show. Only films of more than about 120 frames a second gain.
 */
final class FlightSkip {
  /** Never more than this between two looks [s]: at 240 frames a second every second frame is left out. */
  private static final double LONGEST_S = 0.0095;
  /** Both feet at least so high above the ground line, as a share of hip to ankle (about 0.2 m; judgement). */
  private static final double HIGH = 0.25;
  /** The ground line fades by this share of the leg in a second, so that a wild point does not stay [1/s]. */
  private static final double FADE = 0.6;

  private double ground = Double.NaN;
  private double last = Double.NaN;
  private boolean high;
  private int skipped;

  /** Whether the frame at this time [s] may be left out. */
  boolean skip(double time) {
    boolean out = high && time - last < LONGEST_S - 0.0042;
    skipped += out ? 1 : 0;
    return out;
  }

  void saw(double time, Pose pose) {
    double foot = Double.NEGATIVE_INFINITY;
    double sure = 1;
    for (BodyPoint p : new BodyPoint[] {BodyPoint.LEFT_TOE, BodyPoint.RIGHT_TOE, BodyPoint.LEFT_HEEL, BodyPoint.RIGHT_HEEL}) {
      foot = Math.max(foot, pose.spot(p).y());
      sure = Math.min(sure, pose.sure(p));
    }
    Spot hip = pose.spot(BodyPoint.LEFT_HIP);
    double leg = hip.to(pose.spot(BodyPoint.LEFT_KNEE)) + pose.spot(BodyPoint.LEFT_KNEE).to(pose.spot(BodyPoint.LEFT_ANKLE));
    double faded = Double.isNaN(last) ? ground : ground - FADE * leg * (time - last);
    ground = Double.isNaN(faded) ? foot : Math.max(faded, foot);
    high = sure > 0.5 && ground - foot > HIGH * leg;
    last = time;
  }

  /** The athlete is not seen: every frame counts. */
  void lost() {
    high = false;
  }

  int skipped() {
    return skipped;
  }
}
