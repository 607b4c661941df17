package boundwright.clip.learn;

import boundwright.clip.propose.ContactNet;
import boundwright.clip.propose.Convolution;

/**
 * The contact network forward, with everything kept, and backward: how the loss changes with each weight. The layers and the
 * order of their weights are those of {@link ContactNet#arrays}.
 */
final class Gradient {
  private static final int CHANNELS = ContactNet.CHANNELS;
  private static final int KERNEL = ContactNet.KERNEL;
  /** Arrays of one block: scale, shift, convolution, its biases, mixture, its biases. */
  private static final int A_BLOCK = 6;

  private final float[][] weights;
  private final int[] dilations = ContactNet.dilations();
  private final float[][][] into;
  private final float[][][] scaled;
  private final float[][][] active;
  private float[][] input = new float[0][];
  private float[][] last = new float[0][];

  /**
   * Forward and backward with these weights.
   *
   * @param weights looked at anew in each pass
   */
  Gradient(float[][] weights) {
    this.weights = weights;
    into = new float[dilations.length + 1][][];
    scaled = new float[dilations.length][][];
    active = new float[dilations.length][][];
  }

  /** Log-odds before temperatures, as {@link ContactNet#pass}. */
  float[][] forward(float[][] features) {
    input = features;
    int n = features[0].length;
    int k = 0;
    into[0] = Convolution.of(features, weights[k++], weights[k++], CHANNELS, KERNEL, 1);
    for (int b = 0; b < dilations.length; b++) {
      scaled[b] = scaled(into[b], weights[k++], weights[k++]);
      active[b] = positive(Convolution.of(scaled[b], weights[k++], weights[k++], CHANNELS, KERNEL, dilations[b]));
      float[][] out = Convolution.of(active[b], weights[k++], weights[k++], CHANNELS, 1, 1);
      for (int c = 0; c < CHANNELS; c++) {
        for (int i = 0; i < n; i++) {
          out[c][i] += into[b][c][i];
        }
      }
      into[b + 1] = out;
    }
    last = positive(scaled(into[dilations.length], weights[k++], weights[k++]));
    return Convolution.of(last, weights[k++], weights[k], ContactNet.OUTPUTS, 1, 1);
  }

  /**
   * Adds the gradient of the last {@link #forward}.
   *
   * @param slope of the loss in each of its log-odds
   * @param sum one array for each of the weights
   */
  void backward(float[][] slope, float[][] sum) {
    int k = weights.length - 1;
    sumRows(slope, sum[k--]);
    outer(slope, last, 1, 1, sum[k]);
    float[][] down = through(slope, weights[k--]);
    stop(down, last);
    down = unscaled(down, into[dilations.length], weights[k - 1], sum[k - 1], sum[k]);
    k -= 2;
    for (int b = dilations.length - 1; b >= 0; b--) {
      int first = k - A_BLOCK + 1;
      sumRows(down, sum[first + 5]);
      outer(down, active[b], 1, 1, sum[first + 4]);
      float[][] inner = through(down, weights[first + 4]);
      stop(inner, active[b]);
      sumRows(inner, sum[first + 3]);
      outer(inner, scaled[b], KERNEL, dilations[b], sum[first + 2]);
      inner = Convolution.of(inner, turned(weights[first + 2]), new float[CHANNELS], CHANNELS, KERNEL, dilations[b]);
      inner = unscaled(inner, into[b], weights[first], sum[first], sum[first + 1]);
      for (int c = 0; c < CHANNELS; c++) {
        for (int i = 0; i < inner[c].length; i++) {
          down[c][i] += inner[c][i];
        }
      }
      k = first - 1;
    }
    sumRows(down, sum[1]);
    outer(down, input, KERNEL, 1, sum[0]);
  }

  private static float[][] scaled(float[][] x, float[] by, float[] plus) {
    float[][] out = new float[x.length][x[0].length];
    for (int c = 0; c < x.length; c++) {
      for (int i = 0; i < x[c].length; i++) {
        out[c][i] = by[c] * x[c][i] + plus[c];
      }
    }
    return out;
  }

  private static float[][] positive(float[][] x) {
    for (float[] row : x) {
      for (int i = 0; i < row.length; i++) {
        row[i] = Math.max(0, row[i]);
      }
    }
    return x;
  }

  /** What was cut off at 0 has no slope. */
  private static void stop(float[][] slope, float[][] positive) {
    for (int c = 0; c < slope.length; c++) {
      for (int i = 0; i < slope[c].length; i++) {
        if (!(positive[c][i] > 0)) {
          slope[c][i] = 0;
        }
      }
    }
  }

  private static float[][] unscaled(float[][] slope, float[][] x, float[] by, float[] sumBy, float[] sumPlus) {
    float[][] out = new float[x.length][x[0].length];
    for (int c = 0; c < x.length; c++) {
      float a = 0;
      float b = 0;
      for (int i = 0; i < x[c].length; i++) {
        a += slope[c][i] * x[c][i];
        b += slope[c][i];
        out[c][i] = slope[c][i] * by[c];
      }
      sumBy[c] += a;
      sumPlus[c] += b;
    }
    return out;
  }

  private static void sumRows(float[][] slope, float[] sum) {
    for (int c = 0; c < slope.length; c++) {
      float s = 0;
      for (float v : slope[c]) {
        s += v;
      }
      sum[c] += s;
    }
  }

  /** Slopes of the inputs of a mixture of channels. */
  private static float[][] through(float[][] slope, float[] weight) {
    float[][] out = new float[CHANNELS][slope[0].length];
    for (int o = 0; o < slope.length; o++) {
      float[] from = slope[o];
      for (int c = 0; c < CHANNELS; c++) {
        float w = weight[o * CHANNELS + c];
        float[] to = out[c];
        for (int i = 0; i < to.length; i++) {
          to[i] += w * from[i];
        }
      }
    }
    return out;
  }

  /** The convolution that carries slopes back: inputs for outputs, the kernel from its end. */
  private static float[] turned(float[] weight) {
    float[] out = new float[weight.length];
    for (int o = 0; o < CHANNELS; o++) {
      for (int c = 0; c < CHANNELS; c++) {
        for (int k = 0; k < KERNEL; k++) {
          out[(c * CHANNELS + o) * KERNEL + KERNEL - 1 - k] = weight[(o * CHANNELS + c) * KERNEL + k];
        }
      }
    }
    return out;
  }

  /** Slopes of a convolution's weights, sample by sample: all inputs that one sample sees lie side by side. */
  private static void outer(float[][] slope, float[][] x, int kernel, int dilation, float[] sum) {
    int n = x[0].length;
    int wide = x.length * kernel;
    float[] seen = new float[wide];
    for (int i = 0; i < n; i++) {
      for (int c = 0; c < x.length; c++) {
        for (int k = 0; k < kernel; k++) {
          int j = i + (k - kernel / 2) * dilation;
          seen[c * kernel + k] = j >= 0 && j < n ? x[c][j] : 0;
        }
      }
      for (int o = 0; o < slope.length; o++) {
        add(sum, o * wide, seen, slope[o][i]);
      }
    }
  }

  private static void add(float[] sum, int at, float[] seen, float by) {
    for (int w = 0; w < seen.length; w++) {
      sum[at + w] += by * seen[w];
    }
  }
}
