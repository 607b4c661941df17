package boundwright.jump.takeoff;

import java.util.random.RandomGenerator;

/**
 * A usual value with the error of that mean.
 *
 * @param mean of the jumps
 * @param error standard error of the mean, same unit; 0 with one jump only, of which nothing more is known
 */
record Usual(double mean, double error) {
  static Usual of(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    double mean = sum / values.length;
    double ss = 0;
    for (double v : values) {
      ss += (v - mean) * (v - mean);
    }
    return new Usual(mean, values.length < 2 ? 0 : Math.sqrt(ss / (values.length - 1) / values.length));
  }

  double draw(RandomGenerator random) {
    return mean + error * random.nextGaussian();
  }
}
