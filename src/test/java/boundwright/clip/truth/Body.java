package boundwright.clip.truth;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;

/** All body points at one moment: forward, up, towards the athlete's right [m]. */
@SuppressWarnings({"ArrayRecordComponent", "EnumOrdinal"}) // indexed by the network's own order, never compared
public record Body(double[][] points) {
  static Body empty() {
    return new Body(new double[BodyPoint.COUNT][3]);
  }

  void put(BodyPoint p, double x, double y, double z) {
    points[p.ordinal()] = new double[] {x, y, z};
  }

  /** Forward, up, towards the right. */
  public double[] at(BodyPoint p) {
    return points[p.ordinal()];
  }

  /** Forward and up. */
  public Spot spot(BodyPoint p) {
    return new Spot(at(p)[0], at(p)[1]);
  }
}
