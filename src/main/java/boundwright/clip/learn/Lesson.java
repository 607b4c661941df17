package boundwright.clip.learn;

import boundwright.clip.propose.StepFeatures;
import boundwright.clip.propose.StepSamples;

/**
 * What the network shall answer to one clip.
 *
 * @param samples body points
 * @param goal for left stands, right stands, legs exchanged: the chance in each sample, 0 to 1
 * @param worth how much each sample counts for the feet, 0 to 1
 * @param legs the same for exchanged legs
 */
@SuppressWarnings("ArrayRecordComponent") // numbers on their way between neighbours, never compared
record Lesson(StepSamples samples, float[][] goal, float[] worth, float[] legs) {
  /** Exchanged legs count so much beside the feet, as in {@code training/contacts/train.py}. */
  private static final double LEGS = 0.25;

  /** The same with left and right renamed. */
  Lesson renamed() {
    return new Lesson(samples.renamed(), new float[][] {goal[1], goal[0], goal[2]}, worth, legs);
  }

  /** What the network is fed. */
  float[][] features() {
    return StepFeatures.of(samples);
  }

  /**
   * The mean binary cross-entropy over the samples that count, and its slope.
   *
   * @param odds log-odds that the network answered
   * @param slope filled; null if it is not wanted
   */
  static double loss(float[][] odds, float[][] goal, float[] worth, float[] legs, float @org.jspecify.annotations.Nullable [][] slope) {
    double all = 1e-9;
    for (float w : worth) {
      all += w;
    }
    double sum = 0;
    for (int k = 0; k < odds.length; k++) {
      for (int i = 0; i < worth.length; i++) {
        double w = k < 2 ? worth[i] / 2 : LEGS * legs[i];
        double z = odds[k][i];
        sum += w * (Math.max(z, 0) - z * goal[k][i] + Math.log1p(Math.exp(-Math.abs(z))));
        if (slope != null) {
          slope[k][i] = (float) (w * (1 / (1 + Math.exp(-z)) - goal[k][i]) / all);
        }
      }
    }
    return sum / all;
  }

  double loss(float[][] odds) {
    return loss(odds, goal, worth, legs, null);
  }
}
