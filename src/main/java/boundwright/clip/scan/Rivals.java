package boundwright.clip.scan;

import boundwright.clip.film.Picture;
import boundwright.clip.pose.Follower;
import boundwright.clip.pose.Pose;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Several people in one picture: each is followed for a moment, then whoever moves the legs most is the athlete. The size in the
 * picture does not tell: a helper beside the runway is often the larger one.
 */
final class Rivals {
  /** So long everybody is followed [s]: a step and a half of a walk (judgement). */
  private static final double LOOK_S = 0.6;
  /** Nobody more is followed; each costs a network pass a frame. */
  private static final int MOST = 4;

  private final List<Follower> people;
  private final List<List<@Nullable Pose>> poses = new ArrayList<>();
  private final List<Double> times = new ArrayList<>();

  /** The first is the one to be taken where the legs do not tell. */
  Rivals(List<Follower> people) {
    this.people = List.copyOf(people.subList(0, Math.min(MOST, people.size())));
    this.people.forEach(p -> poses.add(new ArrayList<>()));
  }

  /** Looks at a frame; how many network passes that took. */
  int look(Picture picture, double time_s) {
    times.add(time_s);
    for (int k = 0; k < people.size(); k++) {
      poses.get(k).add(people.get(k).follow(picture, time_s).orElse(null));
    }
    return people.size();
  }

  /** The first pose that the last frame gave, or null. */
  @Nullable Pose any() {
    for (List<@Nullable Pose> p : poses) {
      if (p.get(p.size() - 1) != null) {
        return p.get(p.size() - 1);
      }
    }
    return null;
  }

  /** Whether there was enough to decide by. */
  boolean ready() {
    return times.get(times.size() - 1) - times.get(0) >= LOOK_S;
  }

  /** Who the athlete is, by number. */
  int best() {
    return LegSpeed.quickest(poses.stream().mapToDouble(p -> LegSpeed.of(times, p, 0, times.size())).toArray());
  }

  Follower follower(int k) {
    return people.get(k);
  }

  List<@Nullable Pose> poses(int k) {
    return poses.get(k);
  }
}
