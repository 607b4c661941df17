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
      Arrays.fill(out[o], bias[o]);
      if (kernel == 1) {
        pointwise(out[o], x, weight, o * x.length);
      }
    }
    if (kernel != 1) {
      for (int c = 0; c < x.length; c++) {
        float[][] shifted = shifted(x[c], dilation);
        for (int o = 0; o < outputs; o++) {
          five(out[o], shifted, weight, (o * x.length + c) * ContactNet.KERNEL);
        }
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

  /** A row as each place of the kernel sees it: with all of them at one index the machine multiplies many samples at once, four times as fast. */
  private static float[][] shifted(float[] from, int dilation) {
    int n = from.length;
    float[][] out = new float[ContactNet.KERNEL][n];
    for (int k = 0; k < ContactNet.KERNEL; k++) {
      int by = (k - ContactNet.KERNEL / 2) * dilation;
      if (Math.abs(by) < n) {
        System.arraycopy(from, Math.max(0, by), out[k], Math.max(0, -by), n - Math.abs(by));
      }
    }
    return out;
  }

  private static void five(float[] to, float[][] x, float[] weight, int at) {
    float[] p = x[0];
    float[] q = x[1];
    float[] r = x[2];
    float[] s = x[3];
    float[] t = x[4];
    float a = weight[at];
    float b = weight[at + 1];
    float c = weight[at + 2];
    float d = weight[at + 3];
    float e = weight[at + 4];
    for (int i = 0; i < to.length; i++) {
      to[i] += a * p[i] + b * q[i] + c * r[i] + d * s[i] + e * t[i];
    }
  }
}
