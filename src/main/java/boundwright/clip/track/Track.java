package boundwright.clip.track;

import boundwright.quantity.RefusedException;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.UnaryOperator;

/**
 * The body points of one athlete over a clip. Every frame has its own presentation time; the spacing may be irregular.
 * A point that was not seen is NaN. The unit is pixels (right, down) as found, or metres (forward, up) once a plane map
 * was applied with {@link #map}.
 */
@SuppressWarnings("EnumOrdinal") // the order is the index, and it is the network's own
public final class Track {
  private final double[] times;
  private final double[][] x;
  private final double[][] y;
  private final double[][] confidence;
  private final double medianStep;

  private Track(double[] times, double[][] x, double[][] y, double[][] confidence) {
    this.times = times;
    this.x = x;
    this.y = y;
    this.confidence = confidence;
    this.medianStep = medianStep(times);
  }

  private static double medianStep(double[] times) {
    if (times.length < 2) {
      return Double.NaN;
    }
    double[] steps = new double[times.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = times[i + 1] - times[i];
    }
    Arrays.sort(steps);
    return steps[steps.length / 2];
  }

  /** How many frames. */
  public int frames() {
    return times.length;
  }

  /** Presentation time of a frame [s]. */
  public double time(int frame) {
    return times[frame];
  }

  /** All presentation times [s], a copy. */
  public double[] times() {
    return times.clone();
  }

  /** Median spacing of the frames [s]; NaN of a single frame. */
  public double medianStep() {
    return medianStep;
  }

  /** The frame shown nearest to a time [s], from 0; the earlier of two that are as near. */
  public int nearest(double time) {
    int at = Arrays.binarySearch(times, time);
    if (at >= 0) {
      return at;
    }
    int after = Math.min(-at - 1, times.length - 1);
    int before = Math.max(after - 1, 0);
    return times[after] - time < time - times[before] ? after : before;
  }

  /** Whether the point was seen in the frame. */
  public boolean seen(BodyPoint point, int frame) {
    return !Double.isNaN(x[point.ordinal()][frame]);
  }

  /** The point in a frame; NaN where it was not seen. */
  public Spot spot(BodyPoint point, int frame) {
    return new Spot(x[point.ordinal()][frame], y[point.ordinal()][frame]);
  }

  /** x of a point in every frame, a copy. */
  public double[] xs(BodyPoint point) {
    return x[point.ordinal()].clone();
  }

  /** y of a point in every frame, a copy. */
  public double[] ys(BodyPoint point) {
    return y[point.ordinal()].clone();
  }

  /** How sure the finder was, 0 to 1; 0 where the point was not seen. */
  public double confidence(BodyPoint point, int frame) {
    return confidence[point.ordinal()][frame];
  }

  /** The same track through another plane, for example from pixels to metres. Unseen points stay unseen. */
  public Track map(UnaryOperator<Spot> plane) {
    return map((frame, spot) -> plane.apply(spot));
  }

  /** A map that differs from frame to frame, for example while the camera turns. */
  public interface EachFrame {
    /** Where a point of a frame lies; unknown where it cannot be told. */
    Spot apply(int frame, Spot spot);
  }

  /** The same through a map for each frame. A point whose place cannot be told becomes unseen. */
  public Track map(EachFrame plane) {
    Builder out = edit();
    for (BodyPoint p : BodyPoint.values()) {
      for (int i = 0; i < frames(); i++) {
        if (seen(p, i)) {
          Spot to = plane.apply(i, spot(p, i));
          if (to.known()) {
            out.put(p, i, to, confidence(p, i));
          } else {
            out.erase(p, i);
          }
        }
      }
    }
    return out.build();
  }

  /**
   * The same points at other times, for a film that plays slower than it was filmed.
   *
   * @param times one for each frame [s], growing
   */
  public Track atTimes(double[] times) {
    if (times.length != frames()) {
      throw new IllegalArgumentException(times.length + " times for " + frames() + " frames");
    }
    at(times);
    return new Track(times.clone(), x, y, confidence);
  }

  /** A builder that starts from this track. */
  public Builder edit() {
    return new Builder(times.clone(), copy(x), copy(y), copy(confidence));
  }

  /**
   * A builder without points.
   *
   * @param times presentation times [s], growing
   * @throws RefusedException if there are fewer than 3 frames, or a time does not grow
   */
  public static Builder at(double[] times) {
    if (times.length < 3) {
      throw new RefusedException(
          "The clip has " + times.length + " frames with a body in it; at least 3 are needed. Film the whole rep from the side.");
    }
    for (int i = 1; i < times.length; i++) {
      if (!(times[i] > times[i - 1])) {
        throw new RefusedException(
            String.format(
                Locale.ROOT,
                "Frame %d is shown at %.4f s, not after frame %d at %.4f s. The file's times are damaged: copy it from the phone again.",
                i + 1, times[i], i, times[i - 1]));
      }
    }
    double[][] x = new double[BodyPoint.COUNT][times.length];
    double[][] y = new double[BodyPoint.COUNT][times.length];
    for (int p = 0; p < BodyPoint.COUNT; p++) {
      Arrays.fill(x[p], Double.NaN);
      Arrays.fill(y[p], Double.NaN);
    }
    return new Builder(times.clone(), x, y, new double[BodyPoint.COUNT][times.length]);
  }

  private static double[][] copy(double[][] from) {
    double[][] out = new double[from.length][];
    for (int i = 0; i < from.length; i++) {
      out[i] = from[i].clone();
    }
    return out;
  }

  /** A track in the making. */
  public static final class Builder {
    private final double[] times;
    private final double[][] x;
    private final double[][] y;
    private final double[][] confidence;

    private Builder(double[] times, double[][] x, double[][] y, double[][] confidence) {
      this.times = times;
      this.x = x;
      this.y = y;
      this.confidence = confidence;
    }

    /** Places a point; {@code sure} is 0 to 1. */
    public Builder put(BodyPoint point, int frame, Spot at, double sure) {
      x[point.ordinal()][frame] = at.x();
      y[point.ordinal()][frame] = at.y();
      confidence[point.ordinal()][frame] = sure;
      return this;
    }

    /** Takes a point out of a frame. */
    public Builder erase(BodyPoint point, int frame) {
      return put(point, frame, new Spot(Double.NaN, Double.NaN), 0);
    }

    /** Exchanges left and right of a joint in a frame. */
    public Builder exchange(Joint joint, int frame) {
      int l = joint.leftIndex();
      for (double[][] a : new double[][][] {x, y, confidence}) {
        double kept = a[l][frame];
        a[l][frame] = a[l + 1][frame];
        a[l + 1][frame] = kept;
      }
      return this;
    }

    /** The track. */
    public Track build() {
      return new Track(times.clone(), copy(x), copy(y), copy(confidence));
    }
  }
}
