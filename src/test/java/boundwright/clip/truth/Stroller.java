package boundwright.clip.truth;

import boundwright.clip.track.Joint;
import boundwright.footfall.Foot;

/**
 * Somebody who walks forward evenly, or stands: one foot always on the ground, both for a quarter of a step, heel first, the swinging foot
 * low (common practice of gait teaching; sizes are judgement).
 */
public final class Stroller {
  /** Of a cycle of two steps a foot stands so much. */
  private static final double STANCE = 0.62;

  private final double speed;
  private final double step;
  private final double x0;

  /**
   * @param x0 where the hips are at time 0 [m]
   * @param speed [m/s]; 0 stands
   */
  public Stroller(double x0, double speed) {
    this.x0 = x0;
    this.speed = speed;
    step = 0.45 + 0.2 * speed;
  }

  /** The body at a time [s]. */
  public Body at(double t) {
    Body out = Body.empty();
    double hx = x0 + speed * t;
    double phase = speed == 0 ? 0 : speed * t / step;
    double hy = speed == 0 ? 0.93 : 0.88 - 0.018 * Math.cos(2 * Math.PI * phase);
    double lean = Math.toRadians(speed == 0 ? 1 + Math.sin(0.7 * t) : 3);
    double sx = hx + Skeleton.TRUNK * Math.sin(lean);
    double sy = hy + Skeleton.TRUNK * Math.cos(lean);
    Skeleton.face(out, sx + 0.03, sy + 0.22);
    for (Foot f : Foot.values()) {
      double s = f == Foot.RIGHT ? 1 : -1;
      double swing = speed == 0 ? 0.06 * Math.sin(0.9 * t + s) : 0.42 * Math.sin(Math.PI * phase + (f == Foot.RIGHT ? Math.PI : 0));
      Skeleton.put(out, Joint.SHOULDER, f, sx, sy, s * 0.18);
      Skeleton.put(out, Joint.HIP, f, hx, hy, s * 0.09);
      Skeleton.arm(out, f, swing - (speed == 0 ? Math.toRadians(35) : Math.toRadians(25)), s);
      Skeleton.leg(out, f, foot(hx, phase, f), s);
    }
    return out;
  }

  /** Toe x, toe y, pitch of a foot. */
  private double[] foot(double hx, double phase, Foot f) {
    if (speed == 0) {
      return new double[] {hx + 0.14 + (f == Foot.RIGHT ? 0.05 : -0.05), FootCourse.TOE_UP, 0};
    }
    // the hips' middle of this foot's stance is at whole even or odd numbers of steps
    double own = (phase + (f == Foot.RIGHT ? 0 : 1)) / 2;
    double turn = Math.floor(own + STANCE / 2);
    double in = own - turn + STANCE / 2;
    double stood = hx + ((turn - own) * 2) * step + 0.16;
    if (in < STANCE) {
      double share = in / STANCE;
      double pitch = share < 0.15 ? Math.toRadians(18) * (1 - share / 0.15) : share > 0.6 ? -Math.toRadians(48) * Math.pow((share - 0.6) / 0.4, 2) : 0;
      double lift = pitch > 0 ? FootCourse.LENGTH * Math.sin(pitch) : 0;
      return new double[] {stood, FootCourse.TOE_UP + lift, pitch};
    }
    double share = (in - STANCE) / (1 - STANCE);
    double eased = share * share * (3 - 2 * share);
    double pitch = Math.toRadians(-48 + 66 * eased);
    double lift = 0.05 * Math.sin(Math.PI * share) + Math.max(0, FootCourse.LENGTH * Math.sin(pitch));
    return new double[] {stood + 2 * step * eased, FootCourse.TOE_UP + lift, pitch};
  }
}
