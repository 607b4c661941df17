package boundwright.runway;

import boundwright.athlete.Level;
import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Sequence;
import java.util.Random;

/**
 * An athlete on their first day, who jumps by a process of its own and knows nothing of the model: the speed goes from that of the
 * approach towards the speed that this athlete can hold in bounds, a share of the way at every contact; a flight is a projectile
 * (form: science section 2) and a reach; pushes scatter from contact to contact, the form from rep to rep. How strong, quick and long
 * they are is drawn anew for each, and of one in four the coach names the level next to the true one. All numbers are invented
 * around an ordinary squad: no evidence about athletes.
 */
final class Newcomer {
  private static final double G = 9.81;

  /** The level that the coach says. */
  final Level said;

  private final Random random;
  private final double standing;
  private final double top;
  private final double held;
  private final double keeps;
  private final double up;
  private final double reach;
  private final double jump;
  private final double hop;
  private final double wild;

  Newcomer(Level said, Random random) {
    this.said = said;
    this.random = random;
    int grade = said == Level.BEGINNER ? 0 : said == Level.INTERMEDIATE ? 1 : 2;
    int wrong = random.nextInt(4) == 0 ? (random.nextBoolean() ? 1 : -1) : 0;
    int is = Math.max(0, Math.min(2, grade + wrong));
    double size = Math.exp(0.07 * random.nextGaussian());
    standing = size * (2.3 + 0.3 * is + 0.2 * random.nextGaussian());
    top = size * (6.9 + 0.8 * is + 0.4 * random.nextGaussian());
    held = size * (3.9 + 0.75 * is + 0.35 * random.nextGaussian());
    keeps = 0.55 + 0.2 * random.nextDouble();
    up = size * (1.55 + 0.15 * is + 0.12 * random.nextGaussian());
    reach = size * (0.62 + 0.07 * random.nextGaussian());
    jump = 1.25 + 0.12 * random.nextGaussian();
    hop = 0.97 + 0.04 * random.nextGaussian();
    wild = (0.06 - 0.01 * is) * Math.exp(0.25 * random.nextGaussian());
  }

  /** Positions of contacts 1 to n and of the landing from the mark [m]. */
  double[] rep(Sequence sequence, int steps) {
    double form = 1 + wild / 2 * random.nextGaussian();
    double speed = form * (steps == 0 ? standing : top - (top - standing) * Math.exp(-steps / 4.8));
    double[] out = new double[sequence.size() + 1];
    out[0] = steps == 0 ? 0 : 0.08 * random.nextGaussian();
    for (Flight f : sequence.flights()) {
      boolean last = f.kind() == FlightKind.JUMP;
      double vy = Math.max(0.7, up * form * (1 + wild * random.nextGaussian()));
      double t = (vy + Math.sqrt(vy * vy + 2 * G * 0.12)) / G;
      double length = (speed * t + reach) * (last ? jump : f.kind() == FlightKind.HOP ? hop : 1) * (1 + wild / 2 * random.nextGaussian());
      out[f.order()] = out[f.order() - 1] + length;
      speed = held * form + keeps * (speed - held * form);
    }
    return out;
  }
}
