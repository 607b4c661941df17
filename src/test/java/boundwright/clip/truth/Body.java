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

  /** Every point through this. */
  private Body each(java.util.function.BiFunction<BodyPoint, double[], double[]> map) {
    Body out = empty();
    for (BodyPoint p : BodyPoint.values()) {
      double[] to = map.apply(p, at(p));
      out.put(p, to[0], to[1], to[2]);
    }
    return out;
  }

  /** Moved along and sideways [m]. */
  public Body moved(double forward, double right) {
    return each((p, w) -> new double[] {w[0] + forward, w[1], w[2] + right});
  }

  /** Facing the other way about {@code x} [m] along the runway. */
  public Body turned(double x) {
    return each((p, w) -> new double[] {2 * x - w[0], w[1], -w[2]});
  }

  /** On the way to another posture. */
  public Body towards(Body other, double share) {
    return each(
        (p, w) -> {
          double[] v = other.at(p);
          return new double[] {w[0] + share * (v[0] - w[0]), w[1] + share * (v[1] - w[1]), w[2] + share * (v[2] - w[2])};
        });
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
