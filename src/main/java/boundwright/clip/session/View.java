package boundwright.clip.session;

/** The background as one aim of the camera shows it: the slow mean of what was seen there, and how much it flickers. */
final class View {
  private Aim aim;
  private final int width;
  private final int height;
  private final float[] mean;
  private final float[] noise;

  /** Of a picture, red, green and blue row by row. */
  View(Aim aim, byte[] rgb, int width, int height) {
    this.aim = aim;
    this.width = width;
    this.height = height;
    mean = new float[3 * width * height];
    noise = new float[width * height];
    for (int i = 0; i < mean.length; i++) {
      mean[i] = rgb[i] & 0xff;
    }
  }

  Aim aim() {
    return aim;
  }

  /** The lens is known better. */
  void through(double lens) {
    aim = aim.through(lens);
  }

  /** Takes over what another view knows, {@code unsure} where it knows nothing. */
  void knows(View other, float unsure) {
    double[] m = aim.to(other.aim, width, height);
    for (int p = 0; p < noise.length; p++) {
      int q = pixel(m, p % width, Math.floorDiv(p, width), width, height);
      noise[p] = q < 0 ? unsure : other.noise[q];
      if (q >= 0) {
        between(m, p, other.mean);
      }
    }
  }

  /** The colour between the pixels of another view. */
  private void between(double[] m, int p, float[] from) {
    int x = p % width;
    int y = Math.floorDiv(p, width);
    double z = m[6] * x + m[7] * y + m[8];
    double u = Math.max(0, Math.min(width - 1.001, (m[0] * x + m[1] * y + m[2]) / z));
    double v = Math.max(0, Math.min(height - 1.001, (m[3] * x + m[4] * y + m[5]) / z));
    float fx = (float) (u - (int) u);
    float fy = (float) (v - (int) v);
    int i = 3 * (((int) v) * width + (int) u);
    for (int c = 0; c < 3; c++) {
      int k = i + c;
      float top = (1 - fx) * from[k] + fx * from[k + 3];
      float low = (1 - fx) * from[k + 3 * width] + fx * from[k + 3 * width + 3];
      mean[3 * p + c] = (1 - fy) * top + fy * low;
    }
  }

  /** The pixel to which a map of pictures brings one; -1 outside. */
  static int pixel(double[] m, int x, int y, int width, int height) {
    double z = m[6] * x + m[7] * y + m[8];
    int u = (int) Math.floor((m[0] * x + m[1] * y + m[2]) / z + 0.5);
    int v = (int) Math.floor((m[3] * x + m[4] * y + m[5]) / z + 0.5);
    return z > 0 && u >= 0 && v >= 0 && u < width && v < height ? v * width + u : -1;
  }

  /** Largest difference of a colour of a pixel [of 255] from a pixel of the background. */
  float off(byte[] rgb, int pixel, int from) {
    float most = 0;
    for (int c = 0; c < 3; c++) {
      most = Math.max(most, Math.abs((rgb[3 * pixel + c] & 0xff) - mean[3 * from + c]));
    }
    return most;
  }

  /** The same for whichever neighbour fits best: a turn is known to a pixel, and no edge moves because of that. */
  float leastNear(byte[] rgb, int pixel, int from) {
    int x = from % width;
    int y = Math.floorDiv(from, width);
    float least = Float.MAX_VALUE;
    for (int v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
      for (int u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
        least = Math.min(least, off(rgb, pixel, v * width + u));
      }
    }
    return least;
  }

  float noise(int at) {
    return noise[at];
  }

  /** Follows what a pixel shows by a share of the difference. */
  void follow(byte[] rgb, int pixel, int at, float share) {
    for (int c = 0; c < 3; c++) {
      mean[3 * at + c] += share * ((rgb[3 * pixel + c] & 0xff) - mean[3 * at + c]);
    }
  }

  void flickers(int at, float off, float share) {
    noise[at] += share * (off - noise[at]);
  }

  Shades shades() {
    float[] grey = new float[noise.length];
    for (int i = 0; i < grey.length; i++) {
      grey[i] = mean[3 * i + 1];
    }
    return new Shades(grey, width, height);
  }
}
