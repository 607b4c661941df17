package boundwright.clip.propose;

import java.util.Arrays;

/** Convolutions over time, so written that the machine works on many samples at once. */
public final class Convolution {
  private Convolution() {}

  /**
   * A convolution over time; zeros beyond the ends.
   *
   * @param x one row an input, one column a sample; with a kernel of 1 a multiple of four inputs
   * @param weight ordered by output, input, place in the kernel
   * @param kernel {@link ContactNet#KERNEL} or 1
   * @param dilation samples from one place in the kernel to the next
   */
  public static float[][] of(float[][] x, float[] weight, float[] bias, int outputs, int kernel, int dilation) {
    int n = x[0].length;
    float[][] out = new float[outputs][n];
    for (int o = 0; o < outputs; o++) {
      float[] row = out[o];
      Arrays.fill(row, bias[o]);
      if (kernel == 1) {
        pointwise(row, x, weight, o * x.length);
        continue;
      }
      for (int c = 0; c < x.length; c++) {
        five(row, x[c], weight, (o * x.length + c) * ContactNet.KERNEL, dilation);
      }
    }
    return out;
  }

  /** Four inputs at a time: the sum is stored once for all of them. */
  private static void pointwise(float[] to, float[][] x, float[] weight, int at) {
    for (int c = 0; c < x.length; c += 4) {
      float[] a = x[c];
      float[] b = x[c + 1];
      float[] d = x[c + 2];
      float[] e = x[c + 3];
      float wa = weight[at + c];
      float wb = weight[at + c + 1];
      float wd = weight[at + c + 2];
      float we = weight[at + c + 3];
      for (int i = 0; i < to.length; i++) {
        to[i] += wa * a[i] + wb * b[i] + wd * d[i] + we * e[i];
      }
    }
  }

  private static void five(float[] to, float[] from, float[] weight, int at, int dilation) {
    int n = to.length;
    int reach = 2 * dilation;
    if (n <= 2 * reach) {
      for (int i = 0; i < n; i++) {
        to[i] += five(from, weight, at, dilation, i);
      }
      return;
    }
    for (int i = 0; i < reach; i++) {
      to[i] += five(from, weight, at, dilation, i);
      to[n - 1 - i] += five(from, weight, at, dilation, n - 1 - i);
    }
    float a = weight[at];
    float b = weight[at + 1];
    float c = weight[at + 2];
    float d = weight[at + 3];
    float e = weight[at + 4];
    for (int i = reach; i < n - reach; i++) {
      to[i] += a * from[i - reach] + b * from[i - dilation] + c * from[i] + d * from[i + dilation] + e * from[i + reach];
    }
  }

  private static float five(float[] from, float[] weight, int at, int dilation, int i) {
    float out = 0;
    for (int k = 0; k < ContactNet.KERNEL; k++) {
      int j = i + (k - ContactNet.KERNEL / 2) * dilation;
      out += j >= 0 && j < from.length ? weight[at + k] * from[j] : 0;
    }
    return out;
  }
}
