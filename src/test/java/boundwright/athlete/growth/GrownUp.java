package boundwright.athlete.growth;

import java.util.Random;

/**
 * An invented person who grows by the first model of Preece and Baines (1978, Ann Hum Biol 5:1-24): {@code h(t) = h1 - 2 (h1 - hc) / (exp(s0 (t -
 * c)) + exp(s1 (t - c)))}. Its means for boys and girls are from memory, how people differ is the makers' judgement; the form shares nothing with
 * a local linear trend.
 *
 * @param adult_cm height at the end
 * @param spurt_cm height at {@code spurt_y}
 * @param slow rate before the spurt [1/y]
 * @param fast rate of the spurt [1/y]
 * @param spurt_y age about which the spurt lies [y]
 */
record GrownUp(double adult_cm, double spurt_cm, double slow, double fast, double spurt_y) implements Growing {
  static GrownUp drawn(Random r) {
    return drawn(r, r.nextBoolean());
  }

  static GrownUp drawn(Random r, boolean girl) {
    return of(girl, r.nextGaussian(), r.nextGaussian(), r.nextGaussian(), r.nextGaussian(), r.nextGaussian());
  }

  /** Who is so many standard deviations off the usual: in height, in what is left of it at the spurt, in both rates and in the spurt's age. */
  static GrownUp of(boolean girl, double... off) {
    double adult = (girl ? 163.4 : 174.6) + 6.5 * off[0];
    double left = (girl ? 10.7 : 11.7) + 1.0 * off[1];
    double slow = (girl ? 0.132 : 0.1124) * Math.exp(0.10 * off[2]);
    double fast = (girl ? 1.18 : 1.24) * Math.exp(0.10 * off[3]);
    double spurt = (girl ? 12.5 : 14.6) + 0.9 * off[4];
    return new GrownUp(adult, adult - left, slow, fast, spurt);
  }

  @Override
  public double height_cm(double age) {
    double x = age - spurt_y;
    return adult_cm - 2 * (adult_cm - spurt_cm) / (Math.exp(slow * x) + Math.exp(fast * x));
  }

  @Override
  public double speed_cm_y(double age) {
    double x = age - spurt_y;
    double a = Math.exp(slow * x);
    double b = Math.exp(fast * x);
    return 2 * (adult_cm - spurt_cm) * (slow * a + fast * b) / ((a + b) * (a + b));
  }

  @Override
  public double peak() {
    double best = spurt_y - 3;
    for (double age = spurt_y - 3; age < spurt_y + 2; age += 0.01) {
      best = speed_cm_y(age) > speed_cm_y(best) ? age : best;
    }
    return best;
  }
}
