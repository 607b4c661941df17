package boundwright.clip.session;

/** A small picture in grey, whole, halved and quartered, for finding how the camera turned. */
final class Shades {
  static final int LEVELS = 3;

  private final int width;
  private final int height;
  private final float[][] levels = new float[LEVELS][];

  /** Of grey values row by row, which are kept. */
  Shades(float[] grey, int width, int height) {
    this.width = width;
    this.height = height;
    levels[0] = grey;
    for (int l = 1; l < LEVELS; l++) {
      levels[l] = halved(levels[l - 1], width >> (l - 1), width >> l, height >> l);
    }
  }

  private static float[] halved(float[] from, int stride, int w, int h) {
    float[] out = new float[w * h];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int q = 2 * y * stride + 2 * x;
        out[y * w + x] = (from[q] + from[q + 1] + from[q + stride] + from[q + stride + 1]) / 4;
      }
    }
    return out;
  }

  int width(int level) {
    return width >> level;
  }

  int height(int level) {
    return height >> level;
  }

  float[] level(int level) {
    return levels[level];
  }
}
