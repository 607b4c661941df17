package boundwright.clip.scan;

import boundwright.clip.pose.Pose;
import boundwright.clip.track.BodyPoint;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How quickly somebody moves the legs, whatever the camera does: how fast the ankles change their distance along and across the
 * picture, in lengths of the looked-at square a second. Who stands has about 0.1, who walks about 0.5, who runs or bounds 1 and more
 * (own output, painted and real film).
 */
final class LegSpeed {
  /** Below this nobody steps (judgement). */
  static final double STANDS = 0.25;
  /** Whoever comes first is given up for somebody whose legs are so many times quicker (judgement: a walk against a run). */
  private static final double CLEARLY = 1.4;
  /** Distances are compared over so long [s], so that a finder's jitter does not count. */
  private static final double OVER_S = 0.1;

  private LegSpeed() {}

  /**
   * The mean over a part of a film; 0 where it tells nothing.
   *
   * @param times of the frames [s]
   * @param poses what was seen in them, null where nothing was
   * @param from first frame
   * @param to one behind the last
   */
  static double of(List<Double> times, List<? extends @Nullable Pose> poses, int from, int to) {
    double sum = 0;
    int n = 0;
    int j = from;
    for (int i = from; i < to; i++) {
      while (j < i && times.get(i) - times.get(j) > OVER_S + 1e-9) {
        j++;
      }
      int before = j > from ? j - 1 : j;
      Pose a = poses.get(before);
      Pose b = poses.get(i);
      double dt = times.get(i) - times.get(before);
      if (a != null && b != null && dt >= OVER_S && dt < 3 * OVER_S) {
        sum += (Math.abs(along(b) - along(a)) + Math.abs(across(b) - across(a))) / dt;
        n++;
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  /** Whose legs are the quickest, by number: the first, unless others' are clearly quicker. */
  static int quickest(double[] speeds) {
    int best = 0;
    double most = CLEARLY * Math.max(STANDS, speeds[0]);
    for (int k = 1; k < speeds.length; k++) {
      if (speeds[k] > most) {
        best = k;
        most = speeds[k];
      }
    }
    return best;
  }

  private static double along(Pose p) {
    return Math.abs(p.spot(BodyPoint.LEFT_ANKLE).x() - p.spot(BodyPoint.RIGHT_ANKLE).x()) / p.next().side();
  }

  private static double across(Pose p) {
    return Math.abs(p.spot(BodyPoint.LEFT_ANKLE).y() - p.spot(BodyPoint.RIGHT_ANKLE).y()) / p.next().side();
  }
}
