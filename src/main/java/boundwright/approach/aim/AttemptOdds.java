package boundwright.approach.aim;

import boundwright.inference.Normal;

/**
 * Odds of one attempt at a given aim: for each whole centimetre the chance that a legal jump falls in it, and the
 * chance of a foul.
 *
 * <p>With gap G ~ N(m, se2), effective E ~ N(mu, sj2) the official distance D = E - G has density N(mu - m, se2 + sj2),
 * and given D the gap is normal again, so density(D = x and G >= 0) is a product of a normal density and a normal
 * distribution function; each centimetre is integrated by Gauss-Legendre points (worked).
 */
final class AttemptOdds {
  private static final double REACH = 7;
  private static final double[] TWO = {-0.5773502691896257, 0.5773502691896257};
  private static final double[] TWO_W = {1, 1};
  private static final double[] FIVE = {-0.9061798459386640, -0.5384693101056831, 0, 0.5384693101056831, 0.9061798459386640};
  private static final double[] FIVE_W = {
    0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891
  };

  private final int first;
  private final double[] mass;
  private final double foul;

  private AttemptOdds(int first, double[] mass, double foul) {
    this.first = first;
    this.mass = mass;
    this.foul = foul;
  }

  /** Lowest centimetre that any aim up to {@code furthest_m} gives. */
  static int lowest(JumpForm form, double furthest_m) {
    return (int) Math.floor(100 * (form.effectiveMean_m() - furthest_m - REACH * form.officialSd()));
  }

  /** Highest centimetre that any aim from {@code nearest_m} gives. */
  static int highest(JumpForm form, double nearest_m) {
    return (int) Math.ceil(100 * (form.effectiveMean_m() - nearest_m + REACH * form.officialSd()));
  }

  /** Odds on the centimetres {@code first} to {@code last}. */
  static AttemptOdds of(JumpForm form, double aim, int first, int last) {
    double[] mass = new double[last - first + 1];
    double se = form.gapSd_m();
    double s = form.officialSd();
    double middle = form.effectiveMean_m() - aim;
    double pull = se * se / (s * s);
    double left = se * form.effectiveSd_m() / s;
    boolean coarse = s < 0.05;
    double[] at = coarse ? FIVE : TWO;
    double[] weight = coarse ? FIVE_W : TWO_W;
    int from = Math.max(first, (int) Math.floor(100 * (middle - REACH * s)));
    int to = Math.min(last, (int) Math.ceil(100 * (middle + REACH * s)));
    for (int k = from; k <= to; k++) {
      double sum = 0;
      for (int g = 0; g < at.length; g++) {
        double off = 0.01 * k + 0.005 + 0.005 * at[g] - middle;
        sum += weight[g] * Normal.density(off / s) * Normal.below((aim - pull * off) / left);
      }
      mass[k - first] = 0.005 * sum / s;
    }
    return new AttemptOdds(first, mass, form.foulChance(aim));
  }

  int first() {
    return first;
  }

  int size() {
    return mass.length;
  }

  double mass(int i) {
    return mass[i];
  }

  /** Chance of no mark. */
  double foul() {
    return foul;
  }
}
