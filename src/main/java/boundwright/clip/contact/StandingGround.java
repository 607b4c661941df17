package boundwright.clip.contact;

import boundwright.clip.propose.Course;
import boundwright.clip.propose.Proposal;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import java.util.Arrays;

/**
 * Whether a standing foot stays where it is. On a treadmill, or before a camera that travels along unseen, it goes back as fast as the
 * body would go forward; then nothing that rests on the ground may be used.
 */
public final class StandingGround {
  /** The foot may creep by this share of its speed against the hips before the ground is said to move (judgement: half of all). */
  private static final double SLIDES = 0.5;
  /** Slower than this a foot does not slide [m/s]; a finder's jitter alone is (judgement). */
  private static final double LEAST_MS = 0.3;
  /** Only the middle of a stance is looked at. */
  private static final double FROM = 0.25;
  private static final double TO = 0.65;
  /** So many frames are needed to tell. */
  private static final int FEWEST = 6;

  private StandingGround() {}

  /**
   * Whether the feet stand still where the network says that they stand.
   *
   * @param plane the athlete, sides right, in a plane that should stand still
   */
  public static boolean stays(Track plane, Proposal net) {
    double[] slide = new double[2 * plane.frames()];
    double[] against = new double[2 * plane.frames()];
    int n = 0;
    for (Course.Stand s : Course.of(net, plane.medianStep())) {
      BodyPoint ankle = BodyPoint.of(Joint.ANKLE, s.foot());
      int from = s.first() + (int) (FROM * (s.last() - s.first()));
      int to = s.first() + (int) (TO * (s.last() - s.first()));
      for (int i = from; i + 2 <= to && n < slide.length; i++) {
        double dt = plane.time(i + 2) - plane.time(i);
        Spot a = plane.spot(ankle, i);
        Spot b = plane.spot(ankle, i + 2);
        double hips = hips(plane, i + 2) - hips(plane, i);
        if (a.known() && b.known() && !Double.isNaN(hips)) {
          slide[n] = Math.abs(b.x() - a.x()) / dt;
          against[n++] = Math.abs(b.x() - a.x() - hips) / dt;
        }
      }
    }
    return n < FEWEST || !(median(slide, n) > Math.max(LEAST_MS, SLIDES * median(against, n)));
  }

  private static double hips(Track t, int i) {
    return (t.spot(BodyPoint.LEFT_HIP, i).x() + t.spot(BodyPoint.RIGHT_HIP, i).x()) / 2;
  }

  private static double median(double[] v, int n) {
    double[] part = Arrays.copyOf(v, n);
    Arrays.sort(part);
    return part[n / 2];
  }
}
