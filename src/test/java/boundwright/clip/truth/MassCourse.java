package boundwright.clip.truth;

import boundwright.flight.Projectile;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Where the centre of mass goes, contact by contact: a projectile in flight; on the ground a smooth curve that joins the
 * speeds and starts and ends with gravity alone. Contact time follows from speed and from how far ahead the foot lands
 * and how far behind it leaves.
 */
public final class MassCourse {
  static final double HEIGHT_DOWN = 0.945;
  static final double HEIGHT_UP = 1.0;
  private final List<TrueContact> contacts = new ArrayList<>();
  private final List<Quintic> onGroundX = new ArrayList<>();
  private final List<Quintic> onGroundY = new ArrayList<>();
  private final double landingTime;
  private final double landingX;

  MassCourse(Sequence sequence, int approachSteps, double speed, double startX, Random random) {
    double t = 0.25;
    double vx = speed;
    double vy = -0.9;
    double x = startX;
    int n = approachSteps + sequence.size();
    for (int i = 0; i < n; i++) {
      int k = i - approachSteps;
      Foot foot = k >= 0 ? sequence.contacts().get(k) : (approachSteps - i) % 2 == 0 ? sequence.contacts().get(0) : sequence.contacts().get(0).other();
      double up = upward(sequence, k, random);
      double ahead = 0.40 + 0.03 * random.nextGaussian();
      double behind = 0.40 + 0.02 * random.nextGaussian();
      double loss = k < 0 ? -0.1 : -1.05 + 0.33 * (up - vy) + 0.08 * random.nextGaussian();
      double out = Math.max(3.2, vx - loss);
      double tc = (ahead + behind) / ((vx + out) / 2);
      double strike = strike(random);
      contacts.add(
          new TrueContact(
              foot, k < 0, t, t + tc, x + ahead, vx, vy, out, up, x, x + ahead + behind, strike,
              0.6 + 0.7 * random.nextGaussian(), -2.0 + 0.3 * random.nextGaussian()));
      onGroundX.add(Quintic.of(t, x, vx, 0, t + tc, x + ahead + behind, out, 0));
      onGroundY.add(Quintic.of(t, HEIGHT_DOWN, vy, -Projectile.G, t + tc, HEIGHT_UP, up, -Projectile.G));
      t += tc;
      boolean last = i == n - 1;
      Projectile p = new Projectile(out, up, HEIGHT_UP, last ? 0.70 : HEIGHT_DOWN);
      x += ahead + behind + p.distance();
      vx = out;
      vy = p.touchdownVy();
      t += p.time();
    }
    landingTime = t;
    landingX = x + 0.42;
  }

  private static double upward(Sequence s, int k, Random random) {
    double mean =
        k < 0 ? 0.85 : switch (s.flights().get(k).kind()) {
          case HOP -> 1.95;
          case BOUND -> 1.75;
          case JUMP -> 2.2;
        };
    return mean + (k < 0 ? 0.05 : 0.15) * random.nextGaussian();
  }

  private static double strike(Random random) {
    double kind = random.nextDouble();
    return kind < 0.6 ? 15 + 3 * random.nextGaussian() : kind < 0.8 ? 3 + 1.5 * random.nextGaussian() : -8 + 3 * random.nextGaussian();
  }

  public List<TrueContact> contacts() {
    return contacts;
  }

  /** When both feet land [s]. */
  public double landingTime() {
    return landingTime;
  }

  /** Where both heels land [m]. */
  public double landingX() {
    return landingX;
  }

  private int contactAt(double t) {
    for (int i = 0; i < contacts.size(); i++) {
      if (t >= contacts.get(i).down() && t <= contacts.get(i).up()) {
        return i;
      }
    }
    return -1;
  }

  private int lastBefore(double t) {
    int last = -1;
    for (int i = 0; i < contacts.size(); i++) {
      last = t > contacts.get(i).up() ? i : last;
    }
    return last;
  }

  /** x, y, vx, vy, ax, ay of the centre of mass. */
  double[] at(double t) {
    int c = contactAt(t);
    if (c >= 0) {
      Quintic x = onGroundX.get(c);
      Quintic y = onGroundY.get(c);
      return new double[] {x.at(t), y.at(t), x.speed(t), y.speed(t), x.acceleration(t), y.acceleration(t)};
    }
    int b = lastBefore(t);
    double t0;
    double[] s;
    if (b < 0) {
      TrueContact f = contacts.get(0);
      t0 = f.down();
      s = new double[] {f.xIn(), HEIGHT_DOWN, f.vxIn(), f.vyIn()};
    } else {
      TrueContact f = contacts.get(b);
      t0 = f.up();
      s = new double[] {f.xOut(), HEIGHT_UP, f.vxOut(), f.vyOut()};
    }
    double d = t - t0;
    if (t > landingTime) {
      // after the landing the body sinks and stops; only its beginning is looked at
      double e = t - landingTime;
      double[] l = at(landingTime);
      double stop = 0.12;
      double gone = stop * (1 - Math.exp(-e / stop));
      return new double[] {l[0] + l[2] * gone, Math.max(0.35, l[1] + 0.5 * l[3] * gone), l[2] * Math.exp(-e / stop), 0, 0, 0};
    }
    return new double[] {s[0] + s[2] * d, s[1] + s[3] * d - Projectile.G * d * d / 2, s[2], s[3] - Projectile.G * d, 0, -Projectile.G};
  }
}
