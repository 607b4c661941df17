package boundwright.clip.truth;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;

/** All body points at one moment: forward, up, towards the athlete's right [m]. */
@SuppressWarnings({"ArrayRecordComponent", "EnumOrdinal"}) // indexed by the network's own order, never compared
public record Body(double[][] points) {
  static Body empty() {
    return new Body(new double[BodyPoint.COUNT][3]);
  }

  void put(BodyPoint p, double x, double y, double z) {
    points[p.ordinal()] = new double[] {x, y, z};
  }

  /** Begins a body from measured points: forward, up, towards the right [m]. */
  public static Maker maker(double[] nose) {
    Body out = empty();
    Skeleton.face(out, nose[0] - 0.11, nose[1] + 0.01);
    for (BodyPoint p : BodyPoint.values()) {
      double[] w = out.at(p);
      out.put(p, w[0], w[1], w[2] + (w[1] == 0 ? 0 : nose[2]));
    }
    return new Maker(out);
  }

  /** A body in the making. */
  public static final class Maker {
    private final Body body;

    private Maker(Body body) {
      this.body = body;
    }

    /** Sets a joint. */
    public void put(Joint j, Foot f, double[] at) {
      body.put(BodyPoint.of(j, f), at[0], at[1], at[2]);
    }

    /** Sets the fingers beyond the wrists, in line with the forearms. */
    public Body withFingers() {
      for (Foot f : Foot.values()) {
        double[] e = body.at(BodyPoint.of(Joint.ELBOW, f));
        double[] w = body.at(BodyPoint.of(Joint.WRIST, f));
        double l = Math.max(0.05, Math.hypot(Math.hypot(w[0] - e[0], w[1] - e[1]), w[2] - e[2]));
        for (Joint j : new Joint[] {Joint.PINKY, Joint.INDEX, Joint.THUMB}) {
          double out = (j == Joint.THUMB ? 0.04 : 0.08) / l;
          put(j, f, new double[] {w[0] + out * (w[0] - e[0]), w[1] + out * (w[1] - e[1]), w[2] + out * (w[2] - e[2])});
        }
      }
      return body;
    }
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
