package boundwright.picture.film;

import boundwright.clip.Coherent;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;

/** Where the athlete is in one frame, as limbs in metres: how far a place is from the body tells whether it shows them. */
final class Figure {
  /** Limbs are at most so thick to each side, clothes and shoes with them [m] (judgement). */
  private static final double BODY_M = 0.15;
  /** From there the picture of the athlete fades into the place's [m]. */
  private static final double FADE_M = 0.14;
  private static final Joint[][] LIMBS = {
    {Joint.SHOULDER, Joint.ELBOW}, {Joint.ELBOW, Joint.WRIST}, {Joint.WRIST, Joint.INDEX}, {Joint.SHOULDER, Joint.HIP}, {Joint.HIP, Joint.KNEE},
    {Joint.KNEE, Joint.ANKLE}, {Joint.ANKLE, Joint.HEEL}, {Joint.HEEL, Joint.TOE}, {Joint.ANKLE, Joint.TOE}
  };

  private final List<double[]> limbs = new ArrayList<>();
  private double left = Double.POSITIVE_INFINITY;
  private double right = Double.NEGATIVE_INFINITY;
  private double top = Double.NEGATIVE_INFINITY;
  private double bottom = Double.POSITIVE_INFINITY;

  private final Coherent athlete;
  private final int frame;

  Figure(Coherent athlete, int frame) {
    this.athlete = athlete;
    this.frame = frame;
    for (Joint[] limb : LIMBS) {
      for (Foot f : Foot.values()) {
        add(spot(BodyPoint.of(limb[0], f)), spot(BodyPoint.of(limb[1], f)), 0);
      }
    }
    for (Foot f : Foot.values()) {
      if (!spot(BodyPoint.of(Joint.ELBOW, f)).known()) {
        add(spot(BodyPoint.of(Joint.SHOULDER, f)), spot(BodyPoint.of(Joint.WRIST, f)), 0.05);
      }
    }
    Spot shoulders = middle(BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER);
    Spot hips = middle(BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
    Spot ears = middle(BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR);
    Spot head = ears.known() ? ears : spot(BodyPoint.NOSE);
    add(shoulders, hips, 0.05);
    if (head.known()) {
      add(shoulders.known() ? shoulders : head, new Spot(head.x(), head.y() + 0.06), 0.04);
    }
  }

  /** As seen, or where that is missing as the smoothed movement has it. */
  private Spot spot(BodyPoint p) {
    Spot seen = athlete.metres().spot(p, frame);
    return seen.known() ? seen : athlete.motion().at(p, athlete.metres().time(frame));
  }

  private Spot middle(BodyPoint a, BodyPoint b) {
    Spot p = spot(a);
    Spot q = spot(b);
    return !p.known() ? q : !q.known() ? p : p.towards(q, 0.5);
  }

  private void add(Spot a, Spot b, double thicker) {
    if (!a.known() || !b.known()) {
      return;
    }
    limbs.add(new double[] {a.x(), a.y(), b.x() - a.x(), b.y() - a.y(), thicker});
    for (Spot s : new Spot[] {a, b}) {
      left = Math.min(left, s.x());
      right = Math.max(right, s.x());
      top = Math.max(top, s.y());
      bottom = Math.min(bottom, s.y());
    }
  }

  boolean seen() {
    return limbs.size() > 4;
  }

  double top() {
    return top;
  }

  double bottom() {
    return bottom;
  }

  double middle() {
    return (left + right) / 2;
  }

  /** How far along the runway a place lies outside the athlete [m]; 0 within. */
  double aside(double x) {
    return Math.max(0, Math.max(left - x, x - right));
  }

  /** How much of the athlete a place shows, 0 to 1. */
  double shows(double x, double y) {
    double reach = BODY_M + FADE_M + 0.05;
    if (x < left - reach || x > right + reach || y > top + reach || y < bottom - reach) {
      return 0;
    }
    double least = Double.POSITIVE_INFINITY;
    for (double[] l : limbs) {
      double length = l[2] * l[2] + l[3] * l[3];
      double along = length == 0 ? 0 : Math.max(0, Math.min(1, ((x - l[0]) * l[2] + (y - l[1]) * l[3]) / length));
      double dx = x - l[0] - along * l[2];
      double dy = y - l[1] - along * l[3];
      least = Math.min(least, Math.sqrt(dx * dx + dy * dy) - l[4]);
    }
    double share = (BODY_M + FADE_M - least) / FADE_M;
    double s = Math.max(0, Math.min(1, share));
    return s * s * (3 - 2 * s);
  }
}
