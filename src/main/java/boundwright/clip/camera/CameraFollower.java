package boundwright.clip.camera;

import boundwright.clip.Box;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Follows the camera through a film. As long as the background stays where it was, it only looks ten times a second; from the
 * first movement on every picture is linked to the one before it and to a key picture. Pictures come in order.
 */
public final class CameraFollower {
  /** While the camera stands it is looked at this often [s]. */
  private static final double EVERY_S = 0.1;
  /** Pictures closer in time than this are not linked; the camera's turning in between is drawn through [s]. */
  private static final double CLOSEST_S = 1 / 66.0;
  /**
   * The background moved when half of its corners lie this far from where they were, as a share of the picture's long side
   * (judgement: below it a stand that sinks into the grass is at most 2 cm on a runway, and slowly).
   */
  private static final double MOVED = 0.0014;
  /** Corners for the look whether it moved, for the link to the picture before, and for the link to the key. */
  private static final int FEW = 60;
  private static final int SOME = 50;
  private static final int ALL = 120;
  private static final int FEWEST = 12;
  /** A new key when less of the key's picture is in sight than this share, or fewer of its corners follow. */
  private static final double OVERLAP = 0.6;
  private static final double KEPT = 0.4;
  private static final double[] SAME = {1, 0, 0, 0, 1, 0, 0, 0, 1};

  private record Waiting(Gray picture, double time, @Nullable Box hidden) {}

  private final Corners corners;
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private final Followed followed = new Followed();
  private Corners.@Nullable Seen key;
  private Corners.@Nullable Seen before;
  private int keyAt;
  private int keyCorners;
  private int keyFitting;
  private int keyLow;
  private double[] keyToBefore = SAME;
  private double[] lastStep = SAME;
  private boolean moved;
  private double looked = Double.NEGATIVE_INFINITY;
  private int looks;
  private int plainLooks;
  private @Nullable Gray first;

  /** A follower that uses the library. */
  public CameraFollower() {
    this(new BoofCorners());
  }

  CameraFollower(Corners corners) {
    this.corners = corners;
  }

  /** Whether a picture at this time [s] is wanted after one that was taken at another [s], or is too close to it. */
  public static boolean wants(double time, double taken) {
    return time - taken >= CLOSEST_S;
  }

  /**
   * Takes a picture.
   *
   * @param time [s], growing
   * @param athlete box round the athlete [px of the film], or null where nobody is seen
   */
  public void take(Gray picture, double time, @Nullable Box athlete) {
    Waiting now = new Waiting(picture, time, small(picture, athlete));
    if (first == null) {
      first = picture;
    }
    if (moved) {
      follow(now);
      return;
    }
    waiting.add(now);
    if (time - looked >= EVERY_S) {
      looked = time;
      look(now);
    }
  }

  private static @Nullable Box small(Gray g, @Nullable Box b) {
    if (b == null) {
      return null;
    }
    double k = g.smaller();
    double room = 0.12 * Math.max(b.width(), b.height()) / k;
    return new Box(g.small(b.x()) - room, g.small(b.y()) - room, b.width() / k + 2 * room, b.height() / k + 2 * room);
  }

  /** Whether the background is still where it was in the first picture. */
  private void look(Waiting now) {
    looks++;
    Corners.Seen seen = corners.see(now.picture, now.hidden);
    Corners.Seen still = key;
    if (still == null) {
      if (corners.corners(seen) < FEWEST) {
        plainLooks++;
        return;
      }
      key = seen;
      keyAt = 0;
      keyCorners = corners.corners(seen);
      followed.start(now.time);
      waiting.clear();
      return;
    }
    Corners.Found found = corners.again(still, seen, FEW, SAME, false);
    double[] off = new double[found.fits().length];
    for (int i = 0; i < off.length; i++) {
      off[i] = Math.hypot(found.a()[2 * i] - found.b()[2 * i], found.a()[2 * i + 1] - found.b()[2 * i + 1]);
    }
    Arrays.sort(off);
    if (off.length >= FEWEST && off[off.length / 2] <= MOVED * Math.max(now.picture.width(), now.picture.height())) {
      followed.stoodUntil(now.time);
      waiting.clear();
      return;
    }
    moved = true;
    before = still;
    keyToBefore = SAME;
    for (Waiting w : waiting) {
      follow(w);
    }
    waiting.clear();
  }

  private void follow(Waiting now) {
    Corners.Seen was = before;
    Corners.Seen from = key;
    if (was == null || from == null) {
      return;
    }
    Corners.Seen seen = corners.see(now.picture, now.hidden);
    int at = followed.add(now.time);
    Corners.Found near = corners.again(was, seen, was == from ? ALL : SOME, lastStep, false);
    double[] step = near.map();
    if (step != null && was != from) {
      followed.link(at - 1, at, near, now.hidden);
    }
    double[] guess = Maps.times(step == null ? lastStep : step, keyToBefore);
    Corners.Found far = was == from ? near : corners.again(from, seen, ALL, guess, step != null);
    double[] map = far.map();
    if (map != null) {
      followed.link(keyAt, at, far, now.hidden);
    }
    if (map == null && step == null) {
      // nothing follows: the ways before and after are joined by the last turning alone
      followed.lost(at, lastStep, now.picture);
    }
    keyFitting = Math.max(keyFitting, far.fitting());
    keyLow = Math.max(keyLow, Followed.low(far, now.hidden));
    boolean fresh = map == null || far.fitting() < KEPT * Math.min(keyCorners, Math.max(keyFitting, FEWEST)) || overlap(map, now.picture) < OVERLAP
            || Followed.low(far, now.hidden) < KEPT * keyLow;
    lastStep = step == null ? SAME : step;
    before = seen;
    keyToBefore = map == null ? guess : map;
    followed.judge(at, far, now.picture, now.hidden);
    followed.latest(keyAt, at, far);
    followed.step(at, near);
    if (fresh) {
      followed.key(at);
      keyCorners = corners.corners(seen);
      key = seen;
      keyAt = at;
      keyFitting = 0;
      keyLow = 0;
      keyToBefore = SAME;
    }
  }

  private static double overlap(double[] map, Gray g) {
    int in = 0;
    for (int i = 0; i < 100; i++) {
      double x = (i % 10 + 0.5) * g.width() / 10;
      double y = (Math.floorDiv(i, 10) + 0.5) * g.height() / 10;
      double[] o = Maps.apply(map, x, y);
      in += o[0] >= 0 && o[1] >= 0 && o[0] < g.width() && o[1] < g.height() ? 1 : 0;
    }
    return in / 100.0;
  }

  /**
   * What the camera did.
   *
   * @param width of the film's picture [px]
   * @param height of it [px]
   * @param times of all frames of the clip's track [s]
   */
  public CameraPath path(int width, int height, double[] times) {
    Gray small = first;
    if (looks == 0 || small == null) {
      return CameraPath.of(CameraPath.Kind.PLAIN);
    }
    if (key == null) {
      return CameraPath.of(CameraPath.Kind.PLAIN);
    }
    if (!moved) {
      // the last look may be a tenth of a second old: what came after it is looked at now
      Waiting last = waiting.peekLast();
      if (last != null) {
        look(last);
      }
      if (!moved) {
        return CameraPath.stood();
      }
    }
    return followed.path(small, width, height, times);
  }

  /** Of how many looks none found anything to hold on to. */
  int plainLooks() {
    return plainLooks;
  }

  List<String> signs() {
    return new ArrayList<>(followed.signs());
  }
}
