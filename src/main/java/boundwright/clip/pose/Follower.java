package boundwright.clip.pose;

import boundwright.clip.film.Picture;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Follows one athlete from picture to picture: each is looked at where the body was in the one before. When the network
 * no longer sees a body there, the athlete is searched near that place, then in the whole picture. Pictures must come in
 * order. Uses the networks but does not close them.
 */
public final class Follower {
  /** A search of the whole picture takes many passes, so it is made in every so manyth lost picture. */
  private static final int PATIENCE = 8;
  /** Somebody farther away than so many sides of the region, for each lost picture, is another person (judgement). */
  private static final double REACH = 0.5;
  /**
   * Presence at which the landmark network is believed alone: it says 0.99 and more of a painted athlete, and up to 0.98 of the
   * empty scenery where one was just before (own output). Below, the detector must see somebody there too.
   */
  private static final double SURE = 0.99;
  /** No more lost pictures than so many widen the reach: later it is somebody else (judgement). */
  private static final int WIDEST = 4;
  /**
   * Where the body should be now is drawn on from where it was between these times before [s]. Off by more than {@link #TURNED} sides
   * the network may have passed to somebody whom the athlete passed: no hips change their way by half a metre in a fifth of a second.
   */
  private static final double FROM_S = 0.45;
  private static final double TO_S = 0.13;
  private static final double TURNED = 0.2;
  /** Two bodies' regions are at least so many sides apart to count as two (judgement). */
  private static final double APART = 0.15;

  private final PoseNet landmarks;
  private final PersonFinder finder;
  private Region region;
  private int lost;
  private int blind;
  private int again;
  private double now;
  private double mistakenFrom = Double.NaN;
  private final Deque<At> way = new ArrayDeque<>();

  /** Where the body was [s, px]. */
  private record At(double time, double x, double y) {}

  /** A follower who begins at a region, see {@link PersonFinder}. */
  public Follower(PoseNet landmarks, PersonFinder finder, Region start) {
    this.landmarks = landmarks;
    this.finder = finder;
    region = start;
  }

  /**
   * The points of the next picture; empty when the athlete is not seen.
   *
   * @param time_s its time [s]
   */
  public Optional<Pose> follow(Picture picture, double time_s) {
    now = time_s;
    mistakenFrom = Double.NaN;
    while (!way.isEmpty() && way.getFirst().time < now - FROM_S) {
      way.removeFirst();
    }
    At expected = expected();
    Pose pose = see(picture);
    Pose own = pose == null || expected == null ? null : passedOver(picture, pose, expected);
    if (own != null) {
      // what was taken for the athlete since was somebody else
      mistakenFrom = now - TO_S;
      way.removeIf(a -> a.time > mistakenFrom);
      pose = own;
    }
    if (pose == null) {
      lost++;
      blind++;
      return Optional.empty();
    }
    again += lost > 0 ? 1 : 0;
    lost = 0;
    region = pose.next();
    way.addLast(new At(now, region.x(), region.y()));
    return Optional.of(pose);
  }

  /** From which time on the pictures before showed somebody else [s]; NaN where the last one told nothing of the kind. */
  public double mistakenFrom() {
    return mistakenFrom;
  }

  /** The athlete's pose where the network stayed with somebody whom the athlete passed; null where it did not. */
  private @Nullable Pose passedOver(Picture picture, Pose pose, At expected) {
    Region found = pose.next();
    if (Math.hypot(found.x() - expected.x, found.y() - expected.y) <= TURNED * found.side()) {
      return null;
    }
    Pose there = landmarks.look(picture, new Region(expected.x, expected.y, found.side(), 0));
    Region other = there.next();
    boolean two = Math.hypot(other.x() - found.x(), other.y() - found.y()) > APART * found.side();
    boolean nearer = Math.hypot(other.x() - expected.x, other.y() - expected.y) < TURNED * found.side();
    return there.presence() >= SURE && two && nearer ? there : null;
  }

  /** Where the way of {@link #FROM_S} to {@link #TO_S} before leads now, by a straight line; null where it is too short. */
  private @Nullable At expected() {
    double n = 0;
    double t = 0;
    double x = 0;
    double y = 0;
    double tt = 0;
    double tx = 0;
    double ty = 0;
    for (At a : way) {
      double s = a.time - now;
      if (s <= -TO_S) {
        n++;
        t += s;
        x += a.x;
        y += a.y;
        tt += s * s;
        tx += s * a.x;
        ty += s * a.y;
      }
    }
    double spread = n * tt - t * t;
    if (n < 4 || spread < 1e-9) {
      return null;
    }
    double vx = (n * tx - t * x) / spread;
    double vy = (n * ty - t * y) / spread;
    return new At(now, (x - vx * t) / n, (y - vy * t) / n);
  }

  /** For how many pictures on end the athlete has not been seen. */
  public int lost() {
    return lost;
  }

  private @Nullable Pose see(Picture picture) {
    Pose pose = landmarks.look(picture, region);
    if (pose.presence() >= SURE) {
      return pose;
    }
    Optional<Region> found = nearest(finder.near(picture, region));
    if (pose.presence() >= PoseNet.PRESENT && found.isPresent()) {
      return pose;
    }
    if (found.isEmpty() && lost % PATIENCE == 0) {
      found = nearest(finder.people(picture));
    }
    if (found.isEmpty()) {
      return null;
    }
    Pose there = landmarks.look(picture, found.get());
    return there.presence() >= PoseNet.PRESENT ? there : null;
  }

  private Optional<Region> nearest(List<Region> people) {
    return people.stream()
        .filter(r -> away(r) <= REACH * region.side() * Math.min(WIDEST, 1 + lost))
        .min(Comparator.comparingDouble(this::away));
  }

  private double away(Region r) {
    return Math.hypot(r.x() - region.x(), r.y() - region.y());
  }

  /** Where the athlete is looked for in the next picture. */
  public Region region() {
    return region;
  }

  /** In how many pictures so far the athlete was not seen. */
  public int unseen() {
    return blind;
  }

  /** Sentences for the coach about the pictures so far; empty when there is nothing to say. */
  public List<String> remarks() {
    if (blind == 0) {
      return List.of();
    }
    return List.of(
        String.format(
            Locale.ROOT,
            "In %d %s the athlete was not seen; after a gap the athlete was found again %d %s. Look at those pictures and set the points by"
                + " hand where they matter.",
            blind, blind == 1 ? "picture" : "pictures", again, again == 1 ? "time" : "times"));
  }
}
