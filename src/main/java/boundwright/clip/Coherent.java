package boundwright.clip;

import boundwright.clip.scale.GroundMarks;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Outliers;
import boundwright.clip.track.Sides;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;

/**
 * One coherent athlete in metres: sides put right, wild points out, pixels turned into metres, smoothed.
 *
 * @param sides the sides as decided
 * @param pixels the athlete in the picture, sides right, wild points out
 * @param metres the same in the athlete's plane, not smoothed
 * @param motion the same, smoothed, gaps filled
 */
public record Coherent(Sides.Resolved sides, Track pixels, Track metres, Motion motion) {

  /**
   * From points as found to one athlete.
   *
   * @param found body points in pixels
   * @param plane the athlete's plane
   * @throws boundwright.quantity.RefusedException if no leg was seen, or the marks count against the run
   */
  public static Coherent of(Track found, PlaneMap plane) {
    Sides.Resolved sides = Sides.resolve(found);
    Track pixels = Outliers.clean(sides.track()).track();
    Track metres = pixels.map(plane::toPlane);
    GroundMarks.refuseBackwards(travel(metres));
    return new Coherent(sides, pixels, metres, Motion.of(metres));
  }

  /** How far the hips went, by the median of the first and of the last tenth of the clip [m]. */
  private static double travel(Track metres) {
    int n = metres.frames();
    int tenth = Math.max(1, n / 10);
    return median(metres, n - tenth, n) - median(metres, 0, tenth);
  }

  private static double median(Track metres, int from, int to) {
    double[] x = new double[2 * (to - from)];
    int n = 0;
    for (int i = from; i < to; i++) {
      for (BodyPoint p : new BodyPoint[] {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP}) {
        Spot s = metres.spot(p, i);
        if (s.known()) {
          x[n++] = s.x();
        }
      }
    }
    java.util.Arrays.sort(x, 0, n);
    return n == 0 ? 0 : x[n / 2];
  }
}
