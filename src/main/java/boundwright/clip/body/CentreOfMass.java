package boundwright.clip.body;

import boundwright.clip.body.DeLeva.Part;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Centre of mass from the 33 body points. They have neither vertex nor C7, so the head's mass sits midway between the
 * ears, which is where Dempster's head-and-neck centre lies (ear canal; read); a hand reaches from the wrist to midway
 * between the knuckles of the index and the little finger.
 */
public final class CentreOfMass {
  private CentreOfMass() {}

  /** The name of the model as shown: table and head variant. */
  public static String label(DeLeva model) {
    return model.label() + ", head at the ears";
  }

  /**
   * The centre of mass [m], NaN when a point is unknown.
   *
   * @param points place of a body point [m], NaN where unknown
   */
  public static Spot of(DeLeva model, Function<BodyPoint, Spot> points) {
    return Segment.centre(parts(model, points));
  }

  /** Midway between the two sides of a joint. */
  public static Spot mid(Joint joint, Function<BodyPoint, Spot> points) {
    return points.apply(BodyPoint.of(joint, Foot.LEFT)).towards(points.apply(BodyPoint.of(joint, Foot.RIGHT)), 0.5);
  }

  private static List<Segment> parts(DeLeva model, Function<BodyPoint, Spot> points) {
    List<Segment> out = new ArrayList<>();
    Spot ears = points.apply(BodyPoint.LEFT_EAR).towards(points.apply(BodyPoint.RIGHT_EAR), 0.5);
    out.add(new Segment(ears, ears, model.mass(Part.HEAD), 0));
    out.add(part(model, Part.TRUNK, mid(Joint.SHOULDER, points), mid(Joint.HIP, points)));
    for (Foot side : Foot.values()) {
      Function<Joint, Spot> at = j -> points.apply(BodyPoint.of(j, side));
      out.add(part(model, Part.UPPER_ARM, at.apply(Joint.SHOULDER), at.apply(Joint.ELBOW)));
      out.add(part(model, Part.FOREARM, at.apply(Joint.ELBOW), at.apply(Joint.WRIST)));
      out.add(part(model, Part.HAND, at.apply(Joint.WRIST), at.apply(Joint.PINKY).towards(at.apply(Joint.INDEX), 0.5)));
      out.add(part(model, Part.THIGH, at.apply(Joint.HIP), at.apply(Joint.KNEE)));
      out.add(part(model, Part.SHANK, at.apply(Joint.KNEE), at.apply(Joint.ANKLE)));
      out.add(part(model, Part.FOOT, at.apply(Joint.HEEL), at.apply(Joint.TOE)));
    }
    return out;
  }

  private static Segment part(DeLeva model, Part part, Spot from, Spot to) {
    return new Segment(from, to, model.mass(part), model.centre(part));
  }
}
