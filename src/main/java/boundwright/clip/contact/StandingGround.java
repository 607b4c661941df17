package boundwright.clip.contact;

import boundwright.clip.propose.Course;
import boundwright.clip.propose.Proposal;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Track;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Whether a standing foot stays where it is. On a treadmill, or before a camera that travels along unseen, it goes back as fast as the
 * body would go forward; then nothing that rests on the ground may be used.
 */
public final class StandingGround {
  /** The foot may creep by this share of its speed against the hips before the ground is said to move (judgement: half of all). */
  private static final double SLIDES = 0.5;
  /** Slower than this a foot does not slide [m/s]; a finder's jitter alone is (judgement). */
  private static final double LEAST_MS = 0.3;
  /** The early and the late part of a stance whose middle places are compared, as shares of it; in between the legs pass. */
  private static final double[] EARLY = {0.1, 0.4};
  private static final double[] LATE = {0.6, 0.85};
  /** Stances shorter than so many frames do not tell. */
  private static final int FEWEST_FRAMES = 5;
  /** So many stances are needed to tell. */
  private static final int FEWEST = 2;

  private StandingGround() {}

  /**
   * Whether the feet stand still where the network says that they stand.
   *
   * @param plane the athlete, sides right, in a plane that should stand still
   */
  public static boolean stays(Track plane, Proposal net) {
    List<Course.Stand> stands = Course.of(net, plane.medianStep());
    double[] slide = new double[stands.size()];
    double[] against = new double[stands.size()];
    int n = 0;
    for (Course.Stand s : stands) {
      double foot = change(plane, s, i -> foot(plane, s, i));
      double hips = change(plane, s, i -> hips(plane, i));
      if (s.last() - s.first() + 1 >= FEWEST_FRAMES && !Double.isNaN(foot) && !Double.isNaN(hips)) {
        slide[n] = Math.abs(foot);
        against[n++] = Math.abs(foot - hips);
      }
    }
    return n < FEWEST || !(median(slide, n) > Math.max(LEAST_MS, SLIDES * median(against, n)));
  }

  /** Speed from the middle place of the early part to that of the late part. */
  private static double change(Track plane, Course.Stand s, IntToDoubleFunction x) {
    double[] early = middle(plane, s, x, EARLY);
    double[] late = middle(plane, s, x, LATE);
    return (late[0] - early[0]) / (late[1] - early[1]);
  }

  /** Median place and mean time of a part. */
  private static double[] middle(Track plane, Course.Stand s, IntToDoubleFunction x, double[] part) {
    int length = s.last() - s.first();
    int from = s.first() + (int) Math.floor(part[0] * length);
    int to = s.first() + (int) Math.ceil(part[1] * length);
    double[] v = IntStream.rangeClosed(from, to).mapToDouble(x).filter(d -> !Double.isNaN(d)).sorted().toArray();
    return new double[] {v.length == 0 ? Double.NaN : v[v.length / 2], (plane.time(from) + plane.time(to)) / 2};
  }

  private static double foot(Track t, Course.Stand s, int i) {
    return (t.spot(BodyPoint.of(Joint.ANKLE, s.foot()), i).x() + t.spot(BodyPoint.of(Joint.TOE, s.foot()), i).x()) / 2;
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
