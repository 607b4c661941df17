package boundwright.takeoffs;

import boundwright.flight.Projectile;
import boundwright.footfall.Foot;
import boundwright.footfall.RunJumps;
import java.util.Random;

/**
 * An invented athlete who runs and jumps by mechanics and not by the model's straight lines: every take-off gives up forward speed for a
 * vertical one, the body flies freely, and running steps win speed back. Own constants; nothing of it is measured.
 */
final class InventedJumper {
  private final Random random;
  private final double quick;
  private final double lost;
  private final double up;
  private final double side;
  private final double stepTime;
  private final double wins;
  private final double reach;
  private final double scatter;
  private final double drift;
  private double level = 1;
  private double day;

  InventedJumper(long seed, double spread) {
    random = new Random(seed);
    quick = 1 + 0.06 * random.nextGaussian();
    lost = Math.max(0.2, 0.6 + 0.15 * random.nextGaussian());
    up = 2.3 + 0.25 * random.nextGaussian();
    side = 0.05 * random.nextGaussian();
    stepTime = 0.235 + 0.012 * random.nextGaussian();
    wins = 0.13 + 0.02 * random.nextGaussian();
    reach = 0.55 + 0.08 * random.nextGaussian();
    drift = 0.01 * random.nextGaussian();
    scatter = spread * Math.exp(0.3 * random.nextGaussian());
  }

  /** A new day with its own form, after some days in which they got better or worse. */
  void sleep(int days) {
    level += drift * days / 30 + 0.008 * Math.sqrt(days / 30.0) * random.nextGaussian();
    day = 0.02 * scatter * random.nextGaussian();
  }

  /** Places of take-offs 2 to the last and of the landing, from the mark [m]. */
  double[] rep(RunJumps pattern, int steps, boolean inSand) {
    double form = level + day + 0.02 * scatter * random.nextGaussian();
    double full = 8.7 * quick;
    double speed = full - (full - 3.6) * Math.exp(-steps / 5.0);
    double at = (steps == 0 ? 0.01 : 0.05 + 0.008 * steps) * random.nextGaussian();
    double[] out = new double[pattern.jumps()];
    for (int jump = 1; jump <= pattern.jumps(); jump++) {
      boolean ends = jump == pattern.jumps();
      double own = 1 + 0.045 * scatter * random.nextGaussian();
      double vy = up * (1 + (pattern.foot(jump) == Foot.RIGHT ? side : -side)) * (ends && inSand ? 1.08 : 1);
      double low = ends && inSand ? 0.65 : 1.08;
      Projectile flight = new Projectile(Math.max(2, speed - lost), vy, 1.18, low);
      at += form * own * (0.30 + flight.distance() + (ends && inSand ? reach : 0.25));
      speed -= lost;
      if (!ends) {
        for (int place = 1; place <= pattern.running(); place++) {
          speed += wins * (full - speed);
          at += form * speed * stepTime * (1 + 0.045 * scatter * random.nextGaussian());
        }
      }
      out[jump - 1] = at;
    }
    return out;
  }
}
