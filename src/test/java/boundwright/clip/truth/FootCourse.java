package boundwright.clip.truth;

import boundwright.footfall.Foot;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Toe tip and pitch of one foot over the rep. On the ground: heel or toe lands, gives softly, the foot goes flat, then
 * turns over the toe. In the air: through key poses round the hip (trailing, heel to the seat, knee up, reach), joined
 * by curves without a jump in acceleration except at take-off itself.
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
final class FootCourse {
  static final double LENGTH = 0.24;
  /** Heights of the two body points above the sole [m]: the standing angle is not 0. */
  static final double HEEL_UP = 0.030;
  static final double TOE_UP = 0.018;
  /** How softly heel and shoe give, chosen so that the braking's middle lags touchdown by 3.1 ms (Handsaker et al. 2016; read). */
  private static final double SOFT_S = 0.0031;
  private static final double FLAT_S = 0.03;
  /** The strike begins so long before touchdown [s] (judgement). */
  private static final double STRIKE_S = 0.16;

  private record Piece(double from, double to, Quintic x, Quintic y, Quintic pitch) {}

  private record Stand(TrueContact c, Quintic flatten, Quintic rise, double toeX, double toeY, double ax, double ay, double leaveRate) {}

  private final List<Piece> pieces = new ArrayList<>();
  private final List<Stand> stands = new ArrayList<>();
  private final MassCourse mass;

  FootCourse(MassCourse mass, Foot foot, Random random) {
    this.mass = mass;
    for (TrueContact c : mass.contacts()) {
      if (c.foot() == foot) {
        stands.add(stand(c, random));
      }
    }
    double first = stands.isEmpty() ? mass.landingTime() : stands.get(0).c.down();
    enter(first, random);
    for (int i = 0; i < stands.size(); i++) {
      swing(stands.get(i), i + 1 < stands.size() ? stands.get(i + 1) : null, random);
    }
  }

  private static Stand stand(TrueContact c, Random random) {
    double theta = Math.toRadians(c.strikeDeg());
    double tc = c.up() - c.down();
    double flat = c.down() + Math.min(FLAT_S, 0.3 * tc);
    double rate = theta > 0 ? -2.5 : 1.0;
    Quintic flatten = Quintic.of(c.down(), theta, rate, 0, flat, 0, 0, 0);
    double rise0 = Math.max(flat, c.down() + 0.42 * tc);
    double leaveRate = -9 - random.nextDouble();
    Quintic rise = Quintic.of(rise0, 0, 0, 0, c.up(), Math.toRadians(-58 + 4 * random.nextGaussian()), leaveRate, 0);
    double sink = c.drop() * SOFT_S * (1 - Math.exp(-tc / SOFT_S));
    return new Stand(
        c, flatten, rise, c.toeX(), TOE_UP + sink, 12 + 5 * random.nextGaussian(), 36 + 5 * random.nextGaussian(), leaveRate);
  }

  /** Heel to toe for a foot turned by {@code pitch} from standing. */
  static double[] turned(double pitch) {
    double dx = LENGTH;
    double dy = TOE_UP - HEEL_UP;
    return new double[] {dx * Math.cos(pitch) - dy * Math.sin(pitch), dx * Math.sin(pitch) + dy * Math.cos(pitch)};
  }

  /** Toe x, toe y, pitch while on the ground. */
  private static double[] onGround(Stand s, double t) {
    TrueContact c = s.c;
    if (t >= s.rise.t0()) {
      return new double[] {s.toeX, s.toeY, s.rise.at(t)};
    }
    double left = SOFT_S * Math.exp(-(t - c.down()) / SOFT_S);
    double offX = -c.sweep() * left;
    double offY = -c.drop() * left;
    if (c.strikeDeg() <= 0) {
      double pitch = t < s.flatten.t1() ? s.flatten.at(t) : 0;
      return new double[] {s.toeX + offX, s.toeY + offY, pitch};
    }
    double pitch = t < s.flatten.t1() ? s.flatten.at(t) : 0;
    double[] flat = turned(0);
    double[] now = turned(pitch);
    return new double[] {s.toeX - flat[0] + now[0] + offX, s.toeY - flat[1] + now[1] + offY, pitch};
  }

  private double[] hip(double t) {
    double[] m = mass.at(t);
    return new double[] {m[0] - 0.02, m[1] - 0.07, m[2], m[3], m[4], m[5]};
  }

  /** A key pose: share of the swing, ankle from the hip [m], pitch [degrees]. */
  private record Key(double share, double dx, double dy, double pitchDeg) {}

  /** Trailing, heel to the seat, knee up; in a long swing the knee-up pose is held until the strike begins. */
  private static List<Key> keys(double swing, Random random) {
    double trail = Math.min(0.12, 0.28 * swing);
    double seat = Math.min(0.27, 0.52 * swing);
    double knee = Math.min(0.42, 0.76 * swing);
    double strike = swing - STRIKE_S;
    double v = 0.02;
    List<Key> out = new ArrayList<>();
    out.add(new Key(trail / swing, -0.45, -0.54 + v * random.nextGaussian(), -80));
    out.add(new Key(seat / swing, -0.08, -0.39 + v * random.nextGaussian(), -42));
    out.add(new Key(knee / swing, 0.34, -0.45 + v * random.nextGaussian(), 4));
    if (strike > knee + 0.1) {
      out.add(new Key(strike / swing, 0.38, -0.46 + v * random.nextGaussian(), 6));
    }
    return out;
  }

  private static double[] toeFromAnkle(double ax, double ay, double pitch) {
    double[] heel = Skeleton.ankleToHeel(pitch);
    double[] foot = turned(pitch);
    return new double[] {ax + heel[0] + foot[0], ay + heel[1] + foot[1]};
  }

  private record Knot(double t, double[] p, double[] v, double[] a) {}

  private void enter(double firstDown, Random random) {
    double span = 0.6;
    // where the other foot works before, this leg swings through with its contacts, else it comes in as from a run
    List<Knot> knots = new ArrayList<>(free(Double.NEGATIVE_INFINITY, firstDown - STRIKE_S));
    if (knots.isEmpty()) {
      knots.addAll(inner(firstDown - span, firstDown, keys(0.4, random)));
    } else if (firstDown - STRIKE_S > knots.get(knots.size() - 1).t + 0.05) {
      knots.add(withHip(firstDown - STRIKE_S, toeFromAnkle(0.38, -0.46, Math.toRadians(6)), 6, 0));
    }
    knots.add(stands.isEmpty() ? landing(firstDown) : down(stands.get(0)));
    Knot first = knots.get(0);
    knots.add(0, new Knot(first.t - 1, new double[] {first.p[0] - first.v[0], first.p[1], first.p[2]}, new double[] {first.v[0], 0, 0}, new double[3]));
    join(knots);
  }

  /**
   * While only the other foot works, the free leg swings back in each flight and forward in each contact, heel to the seat as
   * it passes, so that it clears the ground.
   */
  private List<Knot> free(double from, double until) {
    List<Knot> out = new ArrayList<>();
    for (TrueContact c : mass.contacts()) {
      if (c.down() > from && c.up() < until) {
        double swing = 0.64 / (c.up() - c.down());
        out.add(withHip(c.down(), toeFromAnkle(-0.32, -0.42, Math.toRadians(-66)), -66, 0.3 * swing));
        out.add(withHip((c.down() + c.up()) / 2, toeFromAnkle(0.0, -0.36, Math.toRadians(-32)), -32, 1.3 * swing));
        out.add(withHip(c.up(), toeFromAnkle(0.34, -0.45, Math.toRadians(4)), 4, 0.3 * swing));
      }
    }
    return out;
  }

  private Knot withHip(double t, double[] toe, double pitchDeg, double forward) {
    double[] h = hip(t);
    return new Knot(
        t, new double[] {h[0] + toe[0], h[1] + toe[1], Math.toRadians(pitchDeg)}, new double[] {h[2] + forward, h[3], 0}, new double[] {0, h[5], 0});
  }

  private void swing(Stand from, @org.jspecify.annotations.Nullable Stand to, Random random) {
    double t0 = from.c.up();
    double t1 = to == null ? mass.landingTime() : to.c.down();
    List<Knot> knots = new ArrayList<>();
    double[] p = onGround(from, t0);
    knots.add(new Knot(t0, p, new double[] {0, 0, from.leaveRate}, new double[] {from.ax, from.ay, 0}));
    List<Knot> inner = inner(t0, t1, keys(t1 - t0, random));
    knots.addAll(inner);
    if (inner.size() > 3) {
      // knee up is followed by the strike only after the other foot's contacts
      knots.addAll(knots.size() - 1, free(inner.get(2).t + 0.1, inner.get(3).t - 0.08));
    }
    knots.add(to == null ? landing(t1) : down(to));
    join(knots);
  }

  private List<Knot> inner(double t0, double t1, List<Key> keys) {
    int n = keys.size();
    double[] ts = new double[n];
    double[][] rel = new double[n][];
    for (int i = 0; i < n; i++) {
      Key k = keys.get(i);
      ts[i] = t0 + k.share * (t1 - t0);
      double pitch = Math.toRadians(k.pitchDeg);
      double[] toe = toeFromAnkle(k.dx, k.dy, pitch);
      rel[i] = new double[] {toe[0], toe[1], pitch};
    }
    List<Knot> out = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double[] h = hip(ts[i]);
      double[] v = new double[3];
      int a = Math.max(0, i - 1);
      int b = Math.min(n - 1, i + 1);
      for (int d = 0; d < 3; d++) {
        v[d] = (rel[b][d] - rel[a][d]) / (ts[b] - ts[a]) * (i == 0 || i == n - 1 ? 0.7 : 1);
      }
      out.add(
          new Knot(
              ts[i], new double[] {h[0] + rel[i][0], h[1] + rel[i][1], rel[i][2]}, new double[] {h[2] + v[0], h[3] + v[1], v[2]},
              new double[] {0, h[5], 0}));
    }
    return out;
  }

  /** Toe at touchdown, from the contacting point's speed and the pitch's rate. */
  private static Knot down(Stand s) {
    TrueContact c = s.c;
    double[] p = onGround(s, c.down());
    double rate = s.flatten.speed(c.down());
    double vx = c.sweep();
    double vy = c.drop();
    if (c.strikeDeg() > 0) {
      double[] foot = turned(p[2]);
      vx -= rate * foot[1];
      vy += rate * foot[0];
    }
    return new Knot(c.down(), p, new double[] {vx, vy, rate}, new double[] {-45, -8, 0});
  }

  private Knot landing(double t) {
    double pitch = Math.toRadians(25);
    double[] foot = turned(pitch);
    return new Knot(
        t, new double[] {mass.landingX() + foot[0], HEEL_UP + foot[1], pitch}, new double[] {2.0, -2.5, 0}, new double[] {-20, 0, 0});
  }

  private void join(List<Knot> knots) {
    for (int i = 0; i + 1 < knots.size(); i++) {
      Knot a = knots.get(i);
      Knot b = knots.get(i + 1);
      pieces.add(new Piece(a.t, b.t, q(a, b, 0), q(a, b, 1), q(a, b, 2)));
    }
  }

  private static Quintic q(Knot a, Knot b, int d) {
    return Quintic.of(a.t, a.p[d], a.v[d], a.a[d], b.t, b.p[d], b.v[d], b.a[d]);
  }

  /** Toe x, toe y, pitch. */
  double[] at(double t) {
    for (Stand s : stands) {
      if (t >= s.c.down() && t <= s.c.up()) {
        return onGround(s, t);
      }
    }
    for (Piece p : pieces) {
      if (t >= p.from && t <= p.to) {
        return new double[] {p.x.at(t), p.y.at(t), p.pitch.at(t)};
      }
    }
    Piece end = pieces.get(pieces.size() - 1);
    if (t > end.to) {
      double left = 0.006 * (1 - Math.exp(-(t - end.to) / 0.006));
      return new double[] {end.x.at(end.to) + left, end.y.at(end.to) - 2.5 * left, end.pitch.at(end.to)};
    }
    Piece begin = pieces.get(0);
    return new double[] {begin.x.at(begin.from), begin.y.at(begin.from), begin.pitch.at(begin.from)};
  }
}
