package boundwright.clip.truth;

import boundwright.clip.body.CentreOfMass;
import boundwright.clip.body.DeLeva;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * The whole athlete at any time: feet from their courses, knees by the two-bone solution, trunk and arms by smooth
 * angles, and the hip placed so that the centre of mass (de Leva) is where mechanics puts it.
 */
public final class Skeleton {
  static final double THIGH = 0.43;
  static final double SHANK = 0.43;
  static final double TRUNK = 0.50;
  private static final double UPPER_ARM = 0.30;
  private static final double FOREARM = 0.26;

  private final MassCourse mass;
  private final Pair<FootCourse> feet;
  private final PolynomialSplineFunction lean;
  private final Pair<PolynomialSplineFunction> arm;

  /**
   * An athlete.
   *
   * @param sequence contacts after the run-up
   * @param approachSteps running steps before them
   * @param speed into the first contact [m/s]
   * @param startX where the centre of mass is at the first touchdown [m]
   */
  public Skeleton(Sequence sequence, int approachSteps, double speed, double startX, Random random) {
    mass = new MassCourse(sequence, approachSteps, speed, startX, random);
    feet = new Pair<>(new FootCourse(mass, Foot.RIGHT, random), new FootCourse(mass, Foot.LEFT, random));
    List<Double> t = new ArrayList<>(List.of(-1.5));
    double base = 3 + 2 * random.nextGaussian();
    List<Double> a = new ArrayList<>(List.of(base));
    Pair<List<Double>> angle = new Pair<>(new ArrayList<>(List.of(0.0)), new ArrayList<>(List.of(0.0)));
    List<Double> ta = new ArrayList<>(List.of(-1.5));
    TrueContact first = mass.contacts().get(0);
    for (double lead : new double[] {-0.9, -0.45}) {
      ta.add(lead + first.up() - 0.25);
      double swing = lead < -0.5 ? -50 : 45;
      angle.of(first.foot()).add(swing);
      angle.of(first.foot().other()).add(-swing - 5);
    }
    Foot before = null;
    double tb = 0;
    for (TrueContact c : mass.contacts()) {
      t.add(c.down());
      a.add(base + 2.5 * random.nextGaussian());
      if (before == c.foot()) {
        ta.add((tb + c.up()) / 2);
        for (Foot f : Foot.values()) {
          angle.of(f).add(f == c.foot() ? 45.0 : -50.0);
        }
      }
      ta.add(c.up());
      for (Foot f : Foot.values()) {
        angle.of(f).add(f == c.foot() ? -50.0 : 45.0);
      }
      before = c.foot();
      tb = c.up();
    }
    t.add(mass.landingTime() + 1);
    a.add(30.0);
    ta.add(mass.landingTime() + 1);
    angle.of(Foot.RIGHT).add(40.0);
    angle.of(Foot.LEFT).add(40.0);
    lean = spline(t, a);
    arm = new Pair<>(spline(ta, angle.right()), spline(ta, angle.left()));
  }

  private static PolynomialSplineFunction spline(List<Double> t, List<Double> v) {
    return new SplineInterpolator().interpolate(
        t.stream().mapToDouble(d -> d).toArray(), v.stream().mapToDouble(d -> d).toArray());
  }

  public MassCourse mass() {
    return mass;
  }

  /** From the ankle to the heel point, foot turned by {@code pitch} from standing. */
  static double[] ankleToHeel(double pitch) {
    double dx = -0.055;
    double dy = -(0.085 - FootCourse.HEEL_UP);
    return new double[] {dx * Math.cos(pitch) - dy * Math.sin(pitch), dx * Math.sin(pitch) + dy * Math.cos(pitch)};
  }

  /** Trunk lean, forward positive [degrees]. */
  public double leanDeg(double t) {
    return lean.value(Math.max(-1.5, Math.min(mass.landingTime() + 1, t)));
  }

  /** Centre of mass [m]. */
  public Spot centreOfMass(double t) {
    double[] m = mass.at(t);
    return new Spot(m[0], m[1]);
  }

  /** How much longer than a leg the reach from hip to ankle is, as a share; not above 0 where the leg is long enough. */
  public double stretch(Foot f, double t) {
    Body body = at(t);
    return body.spot(BodyPoint.of(Joint.HIP, f)).to(body.spot(BodyPoint.of(Joint.ANKLE, f))) / (THIGH + SHANK) - 1;
  }

  /** Every body point: forward, up, towards the athlete's right [m]. */
  public Body at(double t) {
    double[] m = mass.at(t);
    double hx = m[0] - 0.02;
    double hy = m[1] - 0.07;
    Body out = Body.empty();
    for (int round = 0; round < 12; round++) {
      out = pose(t, hx, hy);
      Spot c = CentreOfMass.of(DeLeva.MALE, out::spot);
      hx += m[0] - c.x();
      hy += m[1] - c.y();
    }
    return out;
  }

  private Body pose(double t, double hx, double hy) {
    Body out = Body.empty();
    double l = Math.toRadians(leanDeg(t));
    double sx = hx + TRUNK * Math.sin(l);
    double sy = hy + TRUNK * Math.cos(l);
    double ex = sx + 0.03 + 0.22 * Math.sin(l / 2);
    double ey = sy + 0.22 * Math.cos(l / 2);
    face(out, ex, ey);
    double end = mass.landingTime() + 1;
    double ta = Math.max(-1.5, Math.min(end, t));
    double turn = 0.002 * (arm.of(Foot.RIGHT).value(ta) - arm.of(Foot.LEFT).value(ta)) / 2;
    for (Foot f : Foot.values()) {
      double s = f == Foot.RIGHT ? 1 : -1;
      put(out, Joint.SHOULDER, f, sx + s * turn * 0.5, sy, s * 0.18);
      put(out, Joint.HIP, f, hx - s * turn * 0.25, hy, s * 0.09);
      arm(out, f, Math.toRadians(arm.of(f).value(ta)) + l, s);
      leg(out, f, feet.of(f).at(t), s);
    }
    return out;
  }

  static void face(Body out, double ex, double ey) {
    out.put(BodyPoint.LEFT_EAR, ex, ey, -0.075);
    out.put(BodyPoint.RIGHT_EAR, ex, ey, 0.075);
    out.put(BodyPoint.NOSE, ex + 0.11, ey - 0.01, 0);
    BodyPoint[] eyes = {
      BodyPoint.LEFT_EYE_INNER, BodyPoint.LEFT_EYE, BodyPoint.LEFT_EYE_OUTER, BodyPoint.RIGHT_EYE_INNER, BodyPoint.RIGHT_EYE,
      BodyPoint.RIGHT_EYE_OUTER
    };
    for (int i = 0; i < 6; i++) {
      int k = i % 3;
      out.put(eyes[i], ex + 0.09 - 0.01 * k, ey + 0.025, (i < 3 ? -1 : 1) * (0.015 + 0.015 * k));
    }
    out.put(BodyPoint.LEFT_MOUTH, ex + 0.085, ey - 0.05, -0.025);
    out.put(BodyPoint.RIGHT_MOUTH, ex + 0.085, ey - 0.05, 0.025);
  }

  static void arm(Body out, Foot f, double angle, double s) {
    double[] sh = out.at(BodyPoint.of(Joint.SHOULDER, f));
    double elx = sh[0] + UPPER_ARM * Math.sin(angle);
    double ely = sh[1] - UPPER_ARM * Math.cos(angle);
    double fore = angle + Math.toRadians(85);
    double wx = elx + FOREARM * Math.sin(fore);
    double wy = ely - FOREARM * Math.cos(fore);
    double z = s * 0.22;
    put(out, Joint.ELBOW, f, elx, ely, z);
    put(out, Joint.WRIST, f, wx, wy, z * 0.8);
    put(out, Joint.PINKY, f, wx + 0.08 * Math.sin(fore) + 0.01, wy - 0.08 * Math.cos(fore) - 0.02, z * 0.8);
    put(out, Joint.INDEX, f, wx + 0.08 * Math.sin(fore) - 0.01, wy - 0.08 * Math.cos(fore) + 0.02, z * 0.7);
    put(out, Joint.THUMB, f, wx + 0.04 * Math.sin(fore) - 0.02, wy - 0.04 * Math.cos(fore) + 0.03, z * 0.7);
  }

  static void leg(Body out, Foot f, double[] foot, double s) {
    double[] hip = out.at(BodyPoint.of(Joint.HIP, f));
    double[] along = FootCourse.turned(foot[2]);
    double[] down = ankleToHeel(foot[2]);
    double heelX = foot[0] - along[0];
    double heelY = foot[1] - along[1];
    double ax = heelX - down[0];
    double ay = heelY - down[1];
    // feet land nearly under the middle: the measured run in the shared data has a step width near nothing
    double z = s * 0.025;
    put(out, Joint.TOE, f, foot[0], foot[1], z);
    put(out, Joint.HEEL, f, heelX, heelY, z);
    put(out, Joint.ANKLE, f, ax, ay, z);
    double dx = ax - hip[0];
    double dy = ay - hip[1];
    double d = Math.hypot(dx, dy);
    double cos = Math.min(1, (THIGH * THIGH + d * d - SHANK * SHANK) / (2 * THIGH * d));
    double reach = Math.max(THIGH, d * THIGH / (THIGH + SHANK));
    double a = Math.atan2(dx, -dy) + Math.acos(cos);
    put(out, Joint.KNEE, f, hip[0] + reach * Math.sin(a), hip[1] - reach * Math.cos(a), s * 0.06);
  }

  static void put(Body out, Joint j, Foot f, double x, double y, double z) {
    out.put(BodyPoint.of(j, f), x, y, z);
  }
}
