package boundwright.clip.scan;

import boundwright.clip.pose.Pose;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Who ran through the picture and when: every frame's pose, cut into passes where the athlete left it or somebody else was taken
 * up. One pass is read; the others are named, never mixed into it.
 */
final class Passes {
  /** A pass that is shown for less than this says little [s] (judgement). */
  private static final double SHORT_S = 0.6;

  private final List<Double> times = new ArrayList<>();
  private final List<@Nullable Pose> poses = new ArrayList<>();
  private final List<Pass> passes = new ArrayList<>();

  /**
   * One pass.
   *
   * @param first frame in which its athlete was followed
   * @param last frame in which the athlete was seen
   * @param ground the camera's way during it
   * @param inFlight how many frames were left out on purpose
   */
  record Pass(int first, int last, GroundWatch ground, int inFlight) {}

  void add(double time_s, @Nullable Pose pose) {
    times.add(time_s);
    poses.add(pose);
  }

  int frames() {
    return times.size();
  }

  double time(int frame) {
    return times.get(frame);
  }

  @Nullable Pose pose(int frame) {
    return poses.get(frame);
  }

  /** Puts the poses of the last frames in the place of what was there. */
  void put(int first, List<@Nullable Pose> of) {
    for (int i = 0; i < of.size(); i++) {
      poses.set(first + i, of.get(i));
    }
  }

  /** Takes out what was seen after a time [s]; nothing where that is NaN. */
  void forget(double after_s) {
    for (int i = poses.size() - 1; i >= 0 && times.get(i) > after_s; i--) {
      poses.set(i, null);
    }
  }

  /** The last frame from {@code first} on that shows somebody, or -1. */
  int lastSeen(int first) {
    for (int i = poses.size() - 1; i >= Math.max(0, first); i--) {
      if (poses.get(i) != null) {
        return i;
      }
    }
    return -1;
  }

  /** How quickly the legs moved from a time on [lengths/s]. */
  double legSpeed(double from_s) {
    int first = times.size();
    while (first > 0 && times.get(first - 1) >= from_s) {
      first--;
    }
    return LegSpeed.of(times, poses, first, times.size());
  }

  /** Ends a pass that was followed from a frame on; nothing is kept where nobody was seen. */
  void end(int first, GroundWatch ground, int inFlight) {
    int last = lastSeen(first);
    if (last >= 0) {
      passes.add(new Pass(first, last, ground, inFlight));
    } else {
      ground.stop();
    }
  }

  boolean none() {
    return passes.isEmpty();
  }

  /** The pass to be read: the first, or a later one whose legs are clearly quicker; with a box always the first. */
  Pass read(boolean boxed) {
    return passes.get(boxed ? 0 : LegSpeed.quickest(passes.stream().mapToDouble(this::speed).toArray()));
  }

  /** Ends what the other passes still do. */
  void stopOthers(Pass read) {
    passes.stream().filter(p -> !p.equals(read)).forEach(p -> p.ground.stop());
  }

  /** What to say of passes that are not read; null where there is none with steps in it. */
  @Nullable String others(Pass read) {
    List<Pass> seen = passes.stream().filter(p -> p.equals(read) || speed(p) > LegSpeed.STANDS).toList();
    if (seen.size() < 2) {
      return null;
    }
    List<String> when = seen.stream().filter(p -> !p.equals(read)).map(this::span).toList();
    return String.format(
        Locale.ROOT, "Somebody goes through the picture %d times. Read is %s; not read %s %s. To have another read, draw a box round the athlete there.",
        seen.size(), span(read), when.size() == 1 ? "is" : "are", String.join(", ", when));
  }

  private String span(Pass p) {
    return String.format(Locale.ROOT, "%.1f to %.1f s", times.get(p.first), times.get(p.last));
  }

  /** The speed of a pass's legs, less where it is short. */
  private double speed(Pass p) {
    double seconds = times.get(p.last) - times.get(p.first);
    return LegSpeed.of(times, poses, p.first, p.last + 1) * Math.min(1, seconds / SHORT_S);
  }
}
