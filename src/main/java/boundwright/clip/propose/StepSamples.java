package boundwright.clip.propose;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;

/**
 * The points of a clip as the network wants them: 17 of them, up counted upwards, so many samples a step, gaps filled.
 *
 * @param times of the samples [s]
 * @param points for each sample x and y of the nose and of left and right of shoulder, elbow, wrist, hip, knee, ankle, heel, toe
 * @param density log of the film's frames a sample
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
public record StepSamples(double[] times, float[][] points, double density) {
  /** Samples a step. */
  public static final int PER_STEP = 40;
  /** Numbers of one sample. */
  public static final int WIDTH = 34;

  private static final List<BodyPoint> ORDER = order();

  /** The points in their order. */
  public static List<BodyPoint> ofNetwork() {
    return ORDER;
  }

  private static List<BodyPoint> order() {
    List<BodyPoint> out = new ArrayList<>(List.of(BodyPoint.NOSE));
    for (Joint j : List.of(Joint.SHOULDER, Joint.ELBOW, Joint.WRIST, Joint.HIP, Joint.KNEE, Joint.ANKLE, Joint.HEEL, Joint.TOE)) {
      out.add(BodyPoint.of(j, Foot.LEFT));
      out.add(BodyPoint.of(j, Foot.RIGHT));
    }
    return List.copyOf(out);
  }

  /**
   * Samples a clip in picture points.
   *
   * @param period of a step, as far as it is known [s]
   */
  public static StepSamples of(Track track, double period) {
    double step = period / PER_STEP;
    int[] seen = range(track);
    double from = track.time(seen[0]);
    int n = Math.max(1, (int) Math.floor((track.time(seen[1]) - from) / step) + 1);
    double[] times = new double[n];
    for (int i = 0; i < n; i++) {
      times[i] = from + i * step;
    }
    float[][] points = new float[n][WIDTH];
    for (int p = 0; p < ORDER.size(); p++) {
      BodyPoint point = shown(track, p);
      Series x = Series.of(track, point, seen, false);
      Series y = Series.of(track, point, seen, true);
      for (int i = 0; i < n; i++) {
        points[i][2 * p] = (float) x.at(times[i], step);
        points[i][2 * p + 1] = (float) -y.at(times[i], step);
      }
    }
    return new StepSamples(times, points, Math.log(step / track.medianStep()));
  }

  /** The point itself, or the next one up the leg or the arm where the clip never shows it. */
  private static BodyPoint shown(Track track, int p) {
    int q = p;
    while (q > 2 && !anywhere(track, ORDER.get(q))) {
      q -= q >= 15 ? 4 : 2; // heel and toe both hang on the ankle
    }
    return ORDER.get(q);
  }

  private static boolean anywhere(Track track, BodyPoint p) {
    for (int i = 0; i < track.frames(); i++) {
      if (track.seen(p, i)) {
        return true;
      }
    }
    return false;
  }

  /** First and last frame that show the hips. */
  static int[] range(Track track) {
    int first = -1;
    int last = -1;
    for (int i = 0; i < track.frames(); i++) {
      if (track.seen(BodyPoint.LEFT_HIP, i) || track.seen(BodyPoint.RIGHT_HIP, i)) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return new int[] {Math.max(0, first), Math.max(0, last)};
  }

  /** The same with left and right renamed. */
  public StepSamples renamed() {
    float[][] out = new float[points.length][];
    for (int i = 0; i < out.length; i++) {
      out[i] = points[i].clone();
      for (int p = 1; p < ORDER.size(); p++) {
        int from = p % 2 == 1 ? p + 1 : p - 1;
        out[i][2 * p] = points[i][2 * from];
        out[i][2 * p + 1] = points[i][2 * from + 1];
      }
    }
    return new StepSamples(times, out, density);
  }

  /** How many samples. */
  public int size() {
    return points.length;
  }

  /** One coordinate of a point where it was seen; between its samples on the straight line, before and after them the nearest. */
  private record Series(double[] t, double[] v, int n) {
    static Series of(Track track, BodyPoint p, int[] range, boolean up) {
      double[] t = new double[range[1] - range[0] + 1];
      double[] v = new double[t.length];
      int n = 0;
      for (int i = range[0]; i <= range[1]; i++) {
        if (track.seen(p, i)) {
          t[n] = track.time(i);
          v[n++] = up ? track.spot(p, i).y() : track.spot(p, i).x();
        }
      }
      return new Series(t, v, n);
    }

    double at(double time, double step) {
      if (n == 0) {
        return 0;
      }
      int after = java.util.Arrays.binarySearch(t, 0, n, time);
      after = after < 0 ? -after - 1 : after;
      // a film denser than the samples is averaged over each
      double sum = 0;
      int count = 0;
      for (int i = after - 1; i >= 0 && t[i] > time - step / 2; i--) {
        sum += v[i];
        count++;
      }
      for (int i = after; i < n && t[i] < time + step / 2; i++) {
        sum += v[i];
        count++;
      }
      if (count > 1) {
        return sum / count;
      }
      if (after == 0 || after == n) {
        return v[after == 0 ? 0 : n - 1];
      }
      double u = (time - t[after - 1]) / (t[after] - t[after - 1]);
      return v[after - 1] + u * (v[after] - v[after - 1]);
    }
  }
}
