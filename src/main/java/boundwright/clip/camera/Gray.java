package boundwright.clip.camera;

import boundwright.clip.film.Picture;

/**
 * A picture made small for following the ground, at most {@value #LONG} pixels on its long side.
 *
 * @param width [px]
 * @param height [px]
 * @param smaller how many times smaller than the film's picture, 1 and more
 * @param light of each pixel, row by row; not copied, never changed
 */
@SuppressWarnings("ArrayRecordComponent")
public record Gray(int width, int height, int smaller, byte[] light) {
  /** Long side [px]: at a film's full size the window of a corner is too small a part of the scene (trial). */
  static final int LONG = 960;

  /** The small picture; the mean of the green of each block stands for its light. */
  public static Gray of(Picture p) {
    int k = Math.max(1, (Math.max(p.width(), p.height()) + LONG - 1) / LONG);
    int w = p.width() / k;
    int h = p.height() / k;
    byte[] out = new byte[w * h];
    byte[] rgb = p.rgb();
    int row = 3 * p.width();
    int half = k * k / 2;
    int[] sum = new int[w];
    for (int y = 0; y < h; y++) {
      java.util.Arrays.fill(sum, half);
      for (int v = 0; v < k; v++) {
        int at = (y * k + v) * row + 1;
        for (int x = 0; x < w; x++) {
          int s = 0;
          for (int u = 0; u < k; u++) {
            s += rgb[at] & 0xff;
            at += 3;
          }
          sum[x] += s;
        }
      }
      for (int x = 0; x < w; x++) {
        out[y * w + x] = (byte) (sum[x] / (k * k));
      }
    }
    return new Gray(w, h, k, out);
  }

  /** A place of the film's picture in this one [px]. */
  double small(double film) {
    return (film - (smaller - 1) / 2.0) / smaller;
  }
}
