package boundwright.clip.learn;

/**
 * Steps down a gradient: Adam (Kingma and Ba 2015; means of .9 and .999; memory), the gradient's length held to at most 1, and a pull
 * back to where the weights began, beside the gradient and not through it.
 */
final class Adam {
  private static final double FIRST = 0.9;
  private static final double SECOND = 0.999;
  private static final double LEAST = 1e-8;
  private static final double LONGEST = 1;

  private final float[][] weights;
  private final float[][] begin;
  private final float[][] mean;
  private final float[][] square;
  private final double pull;
  private int turn;

  /**
   * Moves these weights.
   *
   * @param weights changed in place
   * @param begin where they are pulled to
   * @param pull share of the way back in one step, over the step's rate
   */
  Adam(float[][] weights, float[][] begin, double pull) {
    this.weights = weights;
    this.begin = begin;
    this.pull = pull;
    mean = like(weights);
    square = like(weights);
  }

  /** Zeros in the same shape. */
  static float[][] like(float[][] weights) {
    float[][] out = new float[weights.length][];
    for (int k = 0; k < out.length; k++) {
      out[k] = new float[weights[k].length];
    }
    return out;
  }

  /** The gradient's length. */
  static double length(float[][] gradient) {
    double sum = 0;
    for (float[] g : gradient) {
      for (float v : g) {
        sum += (double) v * v;
      }
    }
    return Math.sqrt(sum);
  }

  /** One step of about {@code rate} in every weight. */
  void step(float[][] gradient, double rate) {
    turn++;
    double by = Math.min(1, LONGEST / (length(gradient) + 1e-6));
    double first = 1 - Math.pow(FIRST, turn);
    double second = 1 - Math.pow(SECOND, turn);
    for (int k = 0; k < weights.length; k++) {
      for (int i = 0; i < weights[k].length; i++) {
        double g = by * gradient[k][i];
        mean[k][i] = (float) (FIRST * mean[k][i] + (1 - FIRST) * g);
        square[k][i] = (float) (SECOND * square[k][i] + (1 - SECOND) * g * g);
        double go = mean[k][i] / first / (Math.sqrt(square[k][i] / second) + LEAST);
        weights[k][i] -= (float) (rate * (go + pull * (weights[k][i] - begin[k][i])));
      }
    }
  }
}
