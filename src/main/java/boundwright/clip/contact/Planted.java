package boundwright.clip.contact;

import boundwright.clip.signal.Smoother;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The coarse course of a rep: in flight, on the right, on the left, on both, for every frame, as the best path over the
 * whole clip (Viterbi). A foot counts as planted while its heel or its toe is low and hardly moves over the ground by its
 * smoothed path, or lies still by most of its samples ({@link StandingStill}). The smoothed path knows better when a contact
 * begins and ends, the samples know better that there is one.
 */
final class Planted {
  /** Speed over the ground [m/s] and height above the standing height [m] at which a point no longer looks planted (judgement). */
  private static final double SPEED = 1.5;
  private static final double HEIGHT_M = 0.06;
  private static final double FIRST_HEIGHT_M = 0.03;
  /** What a change costs, in frames of 1/120 s of clear evidence. */
  private static final double CHANGE = 2.0;
  private static final double CHANGE_FOOT_TO_FOOT = 4.0;
  private static final double UNSEEN_S = 0.1;
  /**
   * The beginning and the end are the smoothed path's if they are no further than this from what the samples say [s]; a foot
   * that comes down is still earlier in the samples than one that leaves (own output of made-up and painted clips).
   */
  private static final double SAME_BEGINNING_S = 0.025;
  private static final double SAME_END_S = 0.015;

  private static final int FLIGHT = 0;
  private static final int RIGHT = 1;
  private static final int LEFT = 2;
  private static final int BOTH = 3;

  private Planted() {}

  /**
   * A stretch of frames with one foot on the ground.
   *
   * @param foot which
   * @param first first frame
   * @param last last frame
   */
  record Stretch(Foot foot, int first, int last) {
    int overlap(Stretch o) {
      return Math.min(last, o.last) - Math.max(first, o.first) + 1;
    }

    int frames() {
      return last - first + 1;
    }
  }

  /**
   * The stretches in order of their beginning.
   *
   * @param metres samples, sides right
   * @param motion the same, smoothed
   */
  static List<Stretch> stretches(Track metres, Motion motion) {
    StandingStill samples = new StandingStill(metres);
    double[] height = new double[4];
    Arrays.fill(height, FIRST_HEIGHT_M);
    int[] path = best(motion, null, height);
    // once more with each point's own standing height: marks and points are never exactly on the ground
    for (Foot foot : Foot.values()) {
      for (Joint joint : List.of(Joint.HEEL, Joint.TOE)) {
        standingHeight(motion, path, foot, joint, height);
      }
    }
    List<Stretch> smooth = cut(best(motion, null, height));
    List<Stretch> out = new ArrayList<>();
    for (Stretch s : cut(best(motion, samples, height))) {
      out.add(ends(s, smooth, samples, motion));
    }
    out.sort(Comparator.comparingInt(Stretch::first));
    return out;
  }

  private static Stretch ends(Stretch s, List<Stretch> smooth, StandingStill samples, Motion motion) {
    int first = samples.first(s);
    int last = samples.last(s);
    for (Stretch o : smooth) {
      if (o.foot == s.foot && o.overlap(s) > 0) {
        first = Math.abs(motion.time(o.first) - motion.time(s.first)) < SAME_BEGINNING_S ? o.first : first;
        last = Math.abs(motion.time(o.last) - motion.time(s.last)) < SAME_END_S ? o.last : last;
      }
    }
    return first < last ? new Stretch(s.foot, first, last) : s;
  }

  private static List<Stretch> cut(int[] path) {
    List<Stretch> out = new ArrayList<>();
    for (Foot foot : Foot.values()) {
      int state = foot == Foot.RIGHT ? RIGHT : LEFT;
      int first = -1;
      for (int i = 0; i <= path.length; i++) {
        boolean on = i < path.length && (path[i] == state || path[i] == BOTH);
        if (on && first < 0) {
          first = i;
        } else if (!on && first >= 0) {
          out.add(new Stretch(foot, first, i - 1));
          first = -1;
        }
      }
    }
    return out;
  }

  private static int slot(Foot foot, Joint joint) {
    return (foot == Foot.RIGHT ? 0 : 2) + (joint == Joint.HEEL ? 0 : 1);
  }

  private static void standingHeight(Motion motion, int[] path, Foot foot, Joint joint, double[] height) {
    Smoother.Path p = motion.path(BodyPoint.of(joint, foot));
    if (p == null) {
      return;
    }
    int state = foot == Foot.RIGHT ? RIGHT : LEFT;
    double[] low = new double[path.length];
    int n = 0;
    for (int i = 0; i < path.length; i++) {
      if ((path[i] == state || path[i] == BOTH) && Math.hypot(p.vx()[i], p.vy()[i]) < 0.8) {
        low[n++] = p.y()[i];
      }
    }
    if (n >= 5) {
      Arrays.sort(low, 0, n);
      height[slot(foot, joint)] = Math.max(-0.06, Math.min(0.1, low[n / 2]));
    }
  }

  private static int[] best(Motion motion, @Nullable StandingStill samples, double[] height) {
    int n = motion.frames();
    double[][] cost = new double[n][4];
    int[][] from = new int[n][4];
    for (int i = 0; i < n; i++) {
      double dt = i == 0 ? motion.time(1) - motion.time(0) : motion.time(i) - motion.time(i - 1);
      double r = score(motion, samples, Foot.RIGHT, i, height) * dt * 120;
      double l = score(motion, samples, Foot.LEFT, i, height) * dt * 120;
      double[] here = {0, -r, -l, -r - l};
      for (int to = 0; to < 4; to++) {
        double least = Double.POSITIVE_INFINITY;
        for (int f = 0; f < 4; f++) {
          double c = i == 0 ? (f == to ? 0 : Double.POSITIVE_INFINITY) : cost[i - 1][f] + change(f, to);
          if (c < least) {
            least = c;
            from[i][to] = f;
          }
        }
        cost[i][to] = least + here[to];
      }
    }
    int[] out = new int[n];
    for (int s = 1; s < 4; s++) {
      out[n - 1] = cost[n - 1][s] < cost[n - 1][out[n - 1]] ? s : out[n - 1];
    }
    for (int i = n - 1; i > 0; i--) {
      out[i - 1] = from[i][out[i]];
    }
    return out;
  }

  private static double change(int from, int to) {
    if (from == to) {
      return 0;
    }
    boolean swap = (from == RIGHT && to == LEFT) || (from == LEFT && to == RIGHT);
    return swap || (from == FLIGHT && to == BOTH) || (from == BOTH && to == FLIGHT) ? CHANGE_FOOT_TO_FOOT : CHANGE;
  }

  /** Evidence in one frame that the foot is planted: 1 for clearly, down to -2 for clearly not. */
  private static double score(Motion motion, @Nullable StandingStill samples, Foot foot, int i, double[] height) {
    double best = -2;
    for (Joint joint : List.of(Joint.HEEL, Joint.TOE)) {
      BodyPoint point = BodyPoint.of(joint, foot);
      double standing = height[slot(foot, joint)];
      if (samples != null) {
        best = Math.max(best, samples.score(point, BodyPoint.of(joint, foot.other()), i, standing, HEIGHT_M, -2));
      }
      Smoother.Path p = motion.path(point);
      if (p == null || motion.gap(point, i) > UNSEEN_S) {
        best = Math.max(best, -0.5);
        continue;
      }
      double speed = Math.hypot(p.vx()[i], p.vy()[i]) / SPEED;
      double up = Math.max(0, p.y()[i] - standing) / HEIGHT_M;
      best = Math.max(best, 1 - speed * speed - up * up);
    }
    return best;
  }
}
