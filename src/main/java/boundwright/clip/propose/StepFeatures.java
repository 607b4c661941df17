package boundwright.clip.propose;

import java.util.Arrays;

/**
 * What the network is fed: the body from the hips over its size, turned so that it faces right, with its speeds and the
 * heights of the feet over a rolling low. The same numbers as in {@code training/contacts/network.py}, line by line.
 */
public final class StepFeatures {
  /** Numbers of one sample. */
  public static final int COUNT = 71;

  private static final int HIP = 7;
  private static final int ANKLE = 11;
  private static final int HEEL = 13;
  private static final int TOE = 15;
  private static final int KNEE = 9;

  private StepFeatures() {}

  /** One row a number, one column a sample. */
  public static float[][] of(StepSamples samples) {
    int n = samples.size();
    float[][] p = new float[n][];
    double size = size(samples);
    double way = median(samples, s -> x(s, TOE) - x(s, HEEL) + x(s, TOE + 1) - x(s, HEEL + 1)) < 0 ? -1 : 1;
    for (int i = 0; i < n; i++) {
      p[i] = samples.points()[i].clone();
      for (int k = 0; k < p[i].length; k++) {
        p[i][k] *= (float) ((k % 2 == 0 ? way : 1) / size);
      }
    }
    double[] hipX = new double[n];
    double[] hipY = new double[n];
    double[] low = new double[n];
    for (int i = 0; i < n; i++) {
      hipX[i] = (x(p[i], HIP) + x(p[i], HIP + 1)) / 2;
      hipY[i] = (y(p[i], HIP) + y(p[i], HIP + 1)) / 2;
      low[i] = Math.min(Math.min(y(p[i], HEEL), y(p[i], HEEL + 1)), Math.min(y(p[i], TOE), y(p[i], TOE + 1)));
    }
    int half = StepSamples.PER_STEP;
    double[] ground = rollingMean(rollingLeast(low, half), half / 2);
    double[] calm = rollingMean(hipY, half);
    float[][] out = new float[COUNT][n];
    for (int i = 0; i < n; i++) {
      int row = 0;
      for (int k = 0; k < StepSamples.WIDTH; k++) {
        out[row++][i] = (float) ((p[i][k] - (k % 2 == 0 ? hipX[i] : hipY[i])) * 1.5);
      }
      for (int k = 2 * KNEE; k < StepSamples.WIDTH; k++) {
        double[] hip = k % 2 == 0 ? hipX : hipY;
        out[row++][i] = i == 0 || i == n - 1 ? 0 : (float) rate((p[i + 1][k] - hip[i + 1]) - (p[i - 1][k] - hip[i - 1]));
      }
      for (int k = 2 * ANKLE; k < StepSamples.WIDTH; k++) {
        out[row++][i] = i == 0 || i == n - 1 ? 0 : (float) (0.5 * clamp(rate(p[i + 1][k] - p[i - 1][k]), -4, 4));
      }
      for (double[] hip : new double[][] {hipX, hipY}) {
        out[row++][i] = i == 0 || i == n - 1 ? 0 : (float) rate(hip[i + 1] - hip[i - 1]);
      }
      for (int j = HEEL; j <= TOE + 1; j++) {
        out[row++][i] = (float) (clamp(y(p[i], j) - ground[i], -0.3, 1.2) * 3);
      }
      out[row++][i] = (float) clamp((hipY[i] - calm[i]) * 5, -2, 2);
      out[row++][i] = (float) samples.density();
      out[row][i] = 1;
    }
    for (float[] row : out) {
      for (int i = 0; i < n; i++) {
        row[i] = (float) clamp(row[i], -6, 6);
      }
    }
    return out;
  }

  private static float x(float[] p, int joint) {
    return p[2 * joint];
  }

  private static float y(float[] p, int joint) {
    return p[2 * joint + 1];
  }

  private static double far(float[] p, int a, int b) {
    return Math.hypot(x(p, a) - x(p, b), y(p, a) - y(p, b));
  }

  private static double size(StepSamples samples) {
    double out =
        median(
            samples,
            p -> {
              double trunk = Math.hypot((x(p, 1) + x(p, 2) - x(p, HIP) - x(p, HIP + 1)) / 2, (y(p, 1) + y(p, 2) - y(p, HIP) - y(p, HIP + 1)) / 2);
              return trunk + Math.max(far(p, HIP, KNEE) + far(p, KNEE, ANKLE), far(p, HIP + 1, KNEE + 1) + far(p, KNEE + 1, ANKLE + 1));
            });
    return Math.max(out, 1e-6);
  }

  /** The lower median, as the training framework takes it. */
  private static double median(StepSamples samples, java.util.function.ToDoubleFunction<float[]> of) {
    double[] v = Arrays.stream(samples.points()).mapToDouble(of).sorted().toArray();
    return v[(v.length - 1) / 2];
  }

  private static double rate(double twoSteps) {
    return twoSteps / 2 * (StepSamples.PER_STEP / 4.0);
  }

  private static double clamp(double v, double least, double most) {
    return Math.max(least, Math.min(most, v));
  }

  private static double[] rollingLeast(double[] v, int half) {
    double[] out = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      double least = Double.POSITIVE_INFINITY;
      for (int k = Math.max(0, i - half); k <= Math.min(v.length - 1, i + half); k++) {
        least = Math.min(least, v[k]);
      }
      out[i] = least;
    }
    return out;
  }

  private static double[] rollingMean(double[] v, int half) {
    double[] sum = new double[v.length + 1];
    for (int i = 0; i < v.length; i++) {
      sum[i + 1] = sum[i] + v[i];
    }
    double[] out = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      int from = Math.max(0, i - half);
      int to = Math.min(v.length, i + half + 1);
      out[i] = (sum[to] - sum[from]) / (to - from);
    }
    return out;
  }
}
