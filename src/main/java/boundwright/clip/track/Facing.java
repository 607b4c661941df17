package boundwright.clip.track;

import boundwright.footfall.Foot;
import java.util.Arrays;
import java.util.List;

/**
 * Which way an athlete faces and goes, from all frames. First and last frame alone do not tell: who runs through and walks back
 * ends where they began, and a camera that follows makes everybody stand still.
 */
public final class Facing {
  /** Toes this far before the heels, in lengths of the athlete's leg, face that way clearly (judgement; a foot is a quarter of a leg). */
  private static final double CLEAR = 0.05;

  private Facing() {}

  /** Whether the athlete faces towards growing x: by the toes, and where they do not tell, by where the hips go in most frames. */
  public static boolean right(Track track) {
    double toes = toes(track);
    return Math.abs(toes) > CLEAR ? toes > 0 : !(way(track) < 0);
  }

  /** Median of how far the toes are before the heels, in lengths of the leg; 0 where feet were hardly seen. */
  public static double toes(Track track) {
    double[] v = new double[2 * track.frames()];
    int n = 0;
    for (int i = 0; i < track.frames(); i++) {
      for (Foot foot : Foot.values()) {
        Spot heel = track.spot(BodyPoint.of(Joint.HEEL, foot), i);
        Spot toe = track.spot(BodyPoint.of(Joint.TOE, foot), i);
        double leg = track.spot(BodyPoint.of(Joint.HIP, foot), i).to(track.spot(BodyPoint.of(Joint.KNEE, foot), i));
        if (heel.known() && toe.known() && leg > 0) {
          v[n++] = (toe.x() - heel.x()) / (2 * leg);
        }
      }
    }
    return median(v, n);
  }

  /** Median step of the hips from frame to frame. */
  private static double way(Track track) {
    double[] v = new double[2 * track.frames()];
    int n = 0;
    for (int i = 1; i < track.frames(); i++) {
      for (BodyPoint p : List.of(BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP)) {
        if (track.seen(p, i) && track.seen(p, i - 1)) {
          v[n++] = track.spot(p, i).x() - track.spot(p, i - 1).x();
        }
      }
    }
    return median(v, n);
  }

  private static double median(double[] v, int n) {
    double[] part = Arrays.copyOf(v, n);
    Arrays.sort(part);
    return n == 0 ? 0 : part[n / 2];
  }
}
