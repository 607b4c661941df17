package boundwright.clip.propose;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A dilated convolution over time, {@value #CHANNELS} wide, in plain Java. Trained by {@code training/contacts/train.py};
 * the weights are a resource of this program, checked by recipe and SHA-256 when they are loaded.
 */
final class ContactNet {
  private static final String FILE = "/clip/contacts.bin";
  private static final String SUM = "007d9303e83f45bdb78a2e9f8a3c81b557925b04cff0c53b01562e1aa5099e3a";
  /** What the weights were made for: inputs, layers and their order. */
  private static final int RECIPE = 2;
  private static final int MAGIC = 0x4257434e;
  private static final int CHANNELS = 56;
  private static final int KERNEL = 5;
  private static final int OUTPUTS = 3;
  private static final int[] DILATIONS = {1, 2, 4, 8, 16, 24, 4, 2, 1};

  private final float[][] arrays;
  private final float contactHeat;
  private final float exchangeHeat;

  private ContactNet(byte[] file) throws IOException {
    DataInputStream in = new DataInputStream(new ByteArrayInputStream(file));
    if (in.readInt() != MAGIC || in.readInt() != RECIPE) {
      throw new IllegalStateException("the weights of the contact network are of another recipe than " + RECIPE);
    }
    int all = in.readInt();
    contactHeat = in.readFloat();
    exchangeHeat = in.readFloat();
    int[] sizes = sizes();
    arrays = new float[sizes.length][];
    int sum = 0;
    for (int k = 0; k < sizes.length; k++) {
      arrays[k] = new float[sizes[k]];
      for (int i = 0; i < sizes[k]; i++) {
        arrays[k][i] = in.readFloat();
      }
      sum += sizes[k];
    }
    if (sum != all || in.read() != -1) {
      throw new IllegalStateException("the weights of the contact network are " + all + " numbers, not " + sum);
    }
  }

  private static int[] sizes() {
    int[] out = new int[2 + 6 * DILATIONS.length + 4];
    int k = 0;
    out[k++] = CHANNELS * StepFeatures.COUNT * KERNEL;
    out[k++] = CHANNELS;
    for (int d = 0; d < DILATIONS.length; d++) {
      for (int size : new int[] {CHANNELS, CHANNELS, CHANNELS * CHANNELS * KERNEL, CHANNELS, CHANNELS * CHANNELS, CHANNELS}) {
        out[k++] = size;
      }
    }
    for (int size : new int[] {CHANNELS, CHANNELS, OUTPUTS * CHANNELS, OUTPUTS}) {
      out[k++] = size;
    }
    return out;
  }

  /** The network as shipped. */
  static ContactNet shipped() {
    return Holder.NET;
  }

  private static final class Holder {
    private static final ContactNet NET = load();
  }

  private static ContactNet load() {
    try (InputStream in = ContactNet.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException("the weights of the contact network are missing from the program");
      }
      byte[] file = in.readAllBytes();
      String found = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
      if (!found.equals(SUM)) {
        throw new IllegalStateException("the weights of the contact network have the sum " + found + ", not " + SUM);
      }
      return new ContactNet(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Log-odds of left stands, right stands, legs exchanged, for every sample, made honest by their temperatures: the mean
   * over the clip and the clip with left and right renamed.
   */
  float[][] logOdds(StepSamples samples) {
    float[][] out = raw(samples);
    for (int k = 0; k < OUTPUTS; k++) {
      for (int i = 0; i < samples.size(); i++) {
        out[k][i] *= k < 2 ? contactHeat : exchangeHeat;
      }
    }
    return out;
  }

  /** The same before temperatures. */
  float[][] raw(StepSamples samples) {
    float[][] plain = pass(StepFeatures.of(samples));
    float[][] other = pass(StepFeatures.of(samples.renamed()));
    float[][] out = new float[OUTPUTS][samples.size()];
    for (int i = 0; i < samples.size(); i++) {
      out[0][i] = 0.5f * (plain[0][i] + other[1][i]);
      out[1][i] = 0.5f * (plain[1][i] + other[0][i]);
      out[2][i] = 0.5f * (plain[2][i] + other[2][i]);
    }
    return out;
  }

  /** Log-odds of the clip as named only, before temperatures: half the work. */
  float[][] pass(float[][] input) {
    int n = input[0].length;
    int k = 0;
    float[][] x = convolved(input, arrays[k++], arrays[k++], CHANNELS, KERNEL, 1);
    for (int dilation : DILATIONS) {
      float[][] h = scaled(x, arrays[k++], arrays[k++], false);
      h = convolved(h, arrays[k++], arrays[k++], CHANNELS, KERNEL, dilation);
      for (float[] row : h) {
        positive(row);
      }
      h = convolved(h, arrays[k++], arrays[k++], CHANNELS, 1, 1);
      for (int c = 0; c < CHANNELS; c++) {
        for (int i = 0; i < n; i++) {
          x[c][i] += h[c][i];
        }
      }
    }
    return convolved(scaled(x, arrays[k++], arrays[k++], true), arrays[k++], arrays[k], OUTPUTS, 1, 1);
  }

  private static void positive(float[] row) {
    for (int i = 0; i < row.length; i++) {
      row[i] = Math.max(0, row[i]);
    }
  }

  private static float[][] scaled(float[][] x, float[] by, float[] plus, boolean positive) {
    float[][] out = new float[x.length][];
    for (int c = 0; c < x.length; c++) {
      float[] row = new float[x[c].length];
      for (int i = 0; i < row.length; i++) {
        row[i] = by[c] * x[c][i] + plus[c];
      }
      if (positive) {
        positive(row);
      }
      out[c] = row;
    }
    return out;
  }

  /** Weights ordered by output, input, place in the kernel; zeros beyond the ends. */
  private static float[][] convolved(float[][] x, float[] weight, float[] bias, int outputs, int kernel, int dilation) {
    int n = x[0].length;
    float[][] out = new float[outputs][n];
    for (int o = 0; o < outputs; o++) {
      float[] row = out[o];
      java.util.Arrays.fill(row, bias[o]);
      if (kernel == 1) {
        pointwise(row, x, weight, o * x.length);
        continue;
      }
      for (int c = 0; c < x.length; c++) {
        five(row, x[c], weight, (o * x.length + c) * KERNEL, dilation);
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
    for (int k = 0; k < KERNEL; k++) {
      int j = i + (k - KERNEL / 2) * dilation;
      out += j >= 0 && j < from.length ? weight[at + k] * from[j] : 0;
    }
    return out;
  }
}
