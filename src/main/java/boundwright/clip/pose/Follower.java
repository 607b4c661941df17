package boundwright.clip.pose;

import boundwright.clip.film.Picture;
import boundwright.clip.track.Track;
import java.util.Comparator;
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

  private final PoseNet landmarks;
  private final PersonFinder finder;
  private Region region;
  private int lost;
  private int blind;
  private int again;

  /** A follower who begins at a region, see {@link PersonFinder}. */
  public Follower(PoseNet landmarks, PersonFinder finder, Region start) {
    this.landmarks = landmarks;
    this.finder = finder;
    region = start;
  }

  /**
   * Puts the points of the next picture into a frame of a track; the frame stays without points when the athlete is not
   * seen.
   *
   * @return whether the athlete was seen
   */
  public boolean follow(Picture picture, Track.Builder into, int frame) {
    Optional<Pose> pose = follow(picture);
    pose.ifPresent(p -> p.fill(into, frame, picture));
    return pose.isPresent();
  }

  /** The points of the next picture; empty when the athlete is not seen. */
  public Optional<Pose> follow(Picture picture) {
    Pose pose = see(picture);
    if (pose == null) {
      lost++;
      blind++;
      return Optional.empty();
    }
    again += lost > 0 ? 1 : 0;
    lost = 0;
    region = pose.next();
    return Optional.of(pose);
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
        .filter(r -> away(r) <= REACH * region.side() * (1 + lost))
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
