package boundwright.clip.propose;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * A dilated convolution over time, {@value #CHANNELS} wide, in plain Java. Trained by {@code training/contacts/train.py};
 * the weights are a resource of this program, checked by recipe and SHA-256 when they are loaded. A coach's own clips can
 * train it further, see {@code boundwright.clip.learn}.
 */
public final class ContactNet {
  private static final String FILE = "/clip/contacts.bin";
  /** SHA-256 of the weights as shipped. */
  public static final String SUM = "007d9303e83f45bdb78a2e9f8a3c81b557925b04cff0c53b01562e1aa5099e3a";
  /** What the weights were made for: inputs, layers and their order. */
  public static final int RECIPE = 2;
  private static final int MAGIC = 0x4257434e;
  /** Width of every layer. */
  public static final int CHANNELS = 56;
  /** Samples that a convolution over time sees. */
  public static final int KERNEL = 5;
  /** Left stands, right stands, legs exchanged. */
  public static final int OUTPUTS = 3;
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

  private ContactNet(float[][] arrays, float contactHeat, float exchangeHeat) {
    this.arrays = arrays;
    this.contactHeat = contactHeat;
    this.exchangeHeat = exchangeHeat;
  }

  /** The network as shipped. */
  public static ContactNet shipped() {
    return Holder.NET;
  }

  /**
   * A network from {@link #bytes}.
   *
   * @throws IOException if they are of another recipe or damaged
   */
  public static ContactNet of(byte[] bytes) throws IOException {
    try {
      return new ContactNet(bytes);
    } catch (IllegalStateException e) {
      throw new IOException(e.getMessage(), e);
    }
  }

  /** The weights in the order of the file. */
  public byte[] bytes() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeInt(MAGIC);
      out.writeInt(RECIPE);
      out.writeInt(Arrays.stream(arrays).mapToInt(a -> a.length).sum());
      out.writeFloat(contactHeat);
      out.writeFloat(exchangeHeat);
      for (float[] array : arrays) {
        for (float v : array) {
          out.writeFloat(v);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** How far apart the samples are that each block sees. */
  public static int[] dilations() {
    return DILATIONS.clone();
  }

  /**
   * A copy of the weights: of the first convolution its weights (by output, input, place in the kernel) and biases; of each block
   * scale, shift, convolution and biases, mixture and biases; of the last layer the same without a convolution.
   */
  public float[][] arrays() {
    float[][] out = new float[arrays.length][];
    Arrays.setAll(out, k -> arrays[k].clone());
    return out;
  }

  /** The same network with other weights, as many as {@link #arrays} has. */
  public ContactNet with(float[][] weights) {
    float[][] own = new float[weights.length][];
    for (int k = 0; k < weights.length; k++) {
      if (weights[k].length != arrays[k].length) {
        throw new IllegalArgumentException(weights[k].length + " weights in array " + k + " of " + arrays[k].length);
      }
      own[k] = weights[k].clone();
    }
    return new ContactNet(own, contactHeat, exchangeHeat);
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
  public float[][] pass(float[][] input) {
    int n = input[0].length;
    int k = 0;
    float[][] x = Convolution.of(input, arrays[k++], arrays[k++], CHANNELS, KERNEL, 1);
    for (int dilation : DILATIONS) {
      float[][] h = scaled(x, arrays[k++], arrays[k++], false);
      h = Convolution.of(h, arrays[k++], arrays[k++], CHANNELS, KERNEL, dilation);
      for (float[] row : h) {
        positive(row);
      }
      h = Convolution.of(h, arrays[k++], arrays[k++], CHANNELS, 1, 1);
      for (int c = 0; c < CHANNELS; c++) {
        for (int i = 0; i < n; i++) {
          x[c][i] += h[c][i];
        }
      }
    }
    return Convolution.of(scaled(x, arrays[k++], arrays[k++], true), arrays[k++], arrays[k], OUTPUTS, 1, 1);
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
}
