package boundwright.athlete.growth;

import java.util.List;
import java.util.Random;

/**
 * An invented person whose height is the sum of three logistic waves (the form of Bock and Thissen's triple logistic model, from memory; all
 * numbers are the makers' judgement): a second kind of growth, of another form than {@link GrownUp}'s.
 *
 * @param waves size [cm], rate [1/y] and middle [y] of each, the spurt last
 */
record ThreeWaves(List<Wave> waves) implements Growing {
  /** One wave. */
  record Wave(double size_cm, double rate, double middle_y) {
    double share(double age) {
      return 1 / (1 + Math.exp(-rate * (age - middle_y)));
    }
  }

  static ThreeWaves drawn(Random r, boolean girl) {
    double adult = (girl ? 164 : 177) + 6.3 * r.nextGaussian();
    Wave spurt = new Wave(
        (girl ? 21 : 27) * Math.exp(0.12 * r.nextGaussian()), (girl ? 1.15 : 1.2) * Math.exp(0.12 * r.nextGaussian()),
        (girl ? 11.6 : 13.7) + r.nextGaussian());
    double rest = adult - spurt.size_cm;
    Wave child = new Wave(0.45 * rest, 0.36 * Math.exp(0.08 * r.nextGaussian()), (girl ? 5.3 : 6.0) + 0.4 * r.nextGaussian());
    return new ThreeWaves(List.of(new Wave(0.55 * rest, 1, 0.2), child, spurt));
  }

  @Override
  public double height_cm(double age) {
    return waves.stream().mapToDouble(w -> w.size_cm * w.share(age)).sum();
  }

  @Override
  public double speed_cm_y(double age) {
    return waves.stream().mapToDouble(w -> w.size_cm * w.rate * w.share(age) * (1 - w.share(age))).sum();
  }

  @Override
  public double peak() {
    double about = waves.get(2).middle_y;
    double best = about - 2;
    for (double age = about - 2; age < about + 2; age += 0.01) {
      best = speed_cm_y(age) > speed_cm_y(best) ? age : best;
    }
    return best;
  }
}
