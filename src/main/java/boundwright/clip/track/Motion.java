package boundwright.clip.track;

import boundwright.clip.signal.Smoother;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One athlete's points in metres, smoothed over the clip without shifting time, gaps filled, each place with its
 * standard deviation. For posture and speeds; contact times are taken from the unsmoothed points, because a foot that
 * stops dead is what smoothing hides.
 */
public final class Motion {
  /** Standard deviation of a sample before it is measured [m] (judgement). */
  private static final double SIGMA_M = 0.02;

  /** A point farther in time from any sample than this is unknown [s]. */
  public static final double LONGEST_GAP_S = 0.1;

  private final double[] times;
  private final Map<BodyPoint, Smoother.Path> paths = new EnumMap<>(BodyPoint.class);
  private final Map<BodyPoint, double[]> gap = new EnumMap<>(BodyPoint.class);

  private Motion(double[] times) {
    this.times = times;
  }

  /** Smooths a track in metres. Points seen in fewer than 5 frames are left out. */
  public static Motion of(Track track) {
    return of(track, EnumSet.allOf(BodyPoint.class));
  }

  /** The same for some points only; the others are unknown. */
  public static Motion of(Track track, Set<BodyPoint> points) {
    Motion out = new Motion(track.times());
    for (BodyPoint p : points) {
      double[] x = track.xs(p);
      if (Arrays.stream(x).filter(v -> !Double.isNaN(v)).count() >= 5) {
        out.paths.put(p, Smoother.run(out.times, x, track.ys(p), SIGMA_M, cutOff(p)));
        out.gap.put(p, distanceToSample(out.times, x));
      }
    }
    return out;
  }

  /** Equivalent cut-off of the smoothing [Hz]: slow trunk, quick feet (common practice: 6-15 Hz). */
  static double cutOff(BodyPoint p) {
    return switch (p) {
      case LEFT_ANKLE, RIGHT_ANKLE, LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE -> 14;
      case LEFT_KNEE, RIGHT_KNEE -> 10;
      case LEFT_HIP, RIGHT_HIP, LEFT_SHOULDER, RIGHT_SHOULDER -> 8;
      default -> 8;
    };
  }

  private static double[] distanceToSample(double[] t, double[] x) {
    double[] out = new double[t.length];
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < t.length; i++) {
      last = Double.isNaN(x[i]) ? last : t[i];
      out[i] = t[i] - last;
    }
    double next = Double.POSITIVE_INFINITY;
    for (int i = t.length - 1; i >= 0; i--) {
      next = Double.isNaN(x[i]) ? next : t[i];
      out[i] = Math.min(out[i], next - t[i]);
    }
    return out;
  }

  /** How many frames. */
  public int frames() {
    return times.length;
  }

  /** Time of a frame [s]. */
  public double time(int frame) {
    return times[frame];
  }

  /** All times [s], a copy. */
  public double[] times() {
    return times.clone();
  }

  /** The smoothed path of a point, or null where it was hardly ever seen. */
  public Smoother.@Nullable Path path(BodyPoint p) {
    return paths.get(p);
  }

  /** Time from a frame to the nearest one in which the point was seen [s]; infinite where it never was. */
  public double gap(BodyPoint p, int frame) {
    double[] g = gap.get(p);
    return g == null ? Double.POSITIVE_INFINITY : g[frame];
  }

  /** The frame at or just before a time; the first or last frame outside. */
  public int frameBefore(double time) {
    int i = Arrays.binarySearch(times, time);
    return i >= 0 ? i : Math.max(0, -i - 2);
  }

  /**
   * Place of a point at a time [m], by the cubic that fits place and speed of the frames on either side; NaN if not seen
   * within {@value #LONGEST_GAP_S} s.
   */
  public Spot at(BodyPoint p, double time) {
    Smoother.Path path = paths.get(p);
    if (path == null || unknownAt(p, time)) {
      return new Spot(Double.NaN, Double.NaN);
    }
    int i = Math.min(frameBefore(time), times.length - 2);
    return new Spot(
        hermite(i, time, path.x(), path.vx()), hermite(i, time, path.y(), path.vy()));
  }

  /** Speed of a point at a time [m/s]; NaN if unknown. */
  public Spot speed(BodyPoint p, double time) {
    Smoother.Path path = paths.get(p);
    if (path == null || unknownAt(p, time)) {
      return new Spot(Double.NaN, Double.NaN);
    }
    int i = Math.min(frameBefore(time), times.length - 2);
    double u = (time - times[i]) / (times[i + 1] - times[i]);
    return new Spot(
        path.vx()[i] + u * (path.vx()[i + 1] - path.vx()[i]), path.vy()[i] + u * (path.vy()[i + 1] - path.vy()[i]));
  }

  private boolean unknownAt(BodyPoint p, double time) {
    if (Double.isNaN(time) || time < times[0] || time > times[times.length - 1]) {
      return true;
    }
    int i = frameBefore(time);
    return Math.min(gap(p, i), gap(p, Math.min(i + 1, times.length - 1))) > LONGEST_GAP_S;
  }

  private double hermite(int i, double time, double[] place, double[] speed) {
    double h = times[i + 1] - times[i];
    double u = (time - times[i]) / h;
    double u2 = u * u;
    double u3 = u2 * u;
    return (2 * u3 - 3 * u2 + 1) * place[i]
        + (u3 - 2 * u2 + u) * h * speed[i]
        + (3 * u2 - 2 * u3) * place[i + 1]
        + (u3 - u2) * h * speed[i + 1];
  }
}
