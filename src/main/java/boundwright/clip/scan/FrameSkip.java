package boundwright.clip.scan;

import boundwright.clip.film.Picture;
import boundwright.clip.pose.Pose;
import boundwright.clip.pose.Region;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;

/**
 * Which frames need no look. While both feet are well above where they last stood, nothing happens within a hundredth of
 * a second that the frames around do not show; only films of more than about 120 frames a second gain. And whoever was last seen
 * at the edge of the picture has most likely left it, and each search takes several passes of the network.
 */
final class FrameSkip {
  /** Never more than this between two looks [s]: at 240 frames a second every second frame is left out. */
  private static final double LONGEST_S = 0.0095;
  /** Both feet at least so high above the ground line, as a share of hip to ankle (about 0.2 m; judgement). */
  private static final double HIGH = 0.25;
  /** The ground line fades by this share of the leg in a second, so that a wild point does not stay [1/s]. */
  private static final double FADE = 0.6;

  /** Whoever went out is looked for only so often [s] (judgement). */
  private static final double OUT_EVERY_S = 1 / 30.0;
  /** At the edge is a body whose middle is so near to it, as a share of the region's side (judgement: about half a body). */
  private static final double AT_EDGE = 0.25;

  private double ground = Double.NaN;
  private double seen = Double.NaN;
  private double looked = Double.NaN;
  private double rest;
  private boolean high;
  private int inFlight;

  /** Whether the frame at this time [s] may be left out. */
  boolean leavesOut(double time) {
    boolean out = time - looked < rest;
    inFlight += out && high ? 1 : 0;
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
    double faded = Double.isNaN(seen) ? ground : ground - FADE * leg * (time - seen);
    ground = Double.isNaN(faded) ? foot : Math.max(faded, foot);
    high = sure > 0.5 && ground - foot > HIGH * leg;
    seen = time;
    looked = time;
    rest = high ? LONGEST_S - 0.0042 : 0;
  }

  /** The athlete is not seen: every frame counts, unless the athlete was last seen at the edge. */
  void lost(double time, Region last, Picture picture) {
    double across = Math.min(last.x(), picture.width() - last.x());
    double along = Math.min(last.y(), picture.height() - last.y());
    high = false;
    looked = time;
    rest = Math.min(across, along) < AT_EDGE * last.side() ? OUT_EVERY_S : 0;
  }

  /** How many frames were left out in flight. */
  int inFlight() {
    return inFlight;
  }
}
