package boundwright.clip.truth;

/**
 * A made-up athletics ground as seen all round from one place, painted once: sky, trees far behind, grass, a runway with its
 * lines and the place's own speckle. What a camera at that place sees in any direction is looked up in it.
 */
final class Scenery {
  /** Pixels of it per unit of the tangent. */
  private static final double SCALE = 800;
  private static final double FAR = 2.6;
  private static final double UP = 1.0;
  /** Trees stand this far behind the runway's line [m]. */
  static final double TREES_M = 45;
  /** Details finer than this are left out, so that nothing flickers [rad]. */
  private static final double FINEST = 0.0035;

  private final int width = (int) (2 * FAR * SCALE);
  private final int height = (int) (2 * UP * SCALE);
  private final byte[] rgb = new byte[3 * width * height];
  private final double eye;
  private final double distance;
  private final double contrast;
  private final boolean wall;

  /**
   * Paints it.
   *
   * @param eye height of the camera [m]
   * @param distance from the athlete's line [m]
   * @param contrast of everything that can be held on to; 1 is a usual ground, 0 none at all
   * @param wall whether a plain wall stands just behind the runway
   */
  Scenery(double eye, double distance, double contrast, boolean wall) {
    this.eye = eye;
    this.distance = distance;
    this.contrast = contrast;
    this.wall = wall;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        paint(3 * (y * width + x), (x + 0.5 - width / 2.0) / SCALE, (y + 0.5 - height / 2.0) / SCALE);
      }
    }
  }

  private void paint(int at, double u, double v) {
    double light;
    double[] colour;
    double depth = v > 0.001 ? eye / v : 1e9;
    double behind = wall ? distance + 2 : distance + TREES_M;
    if (depth < behind) {
      double along = u * depth;
      double across = depth - distance;
      boolean runway = Math.abs(across) < 0.61;
      colour = runway ? new double[] {152, 72, 54} : new double[] {104, 132, 72};
      light = 1 + contrast * (runway ? 0.16 : 0.30) * speckle(along, depth, eye / (depth * depth));
      double pixel = FINEST * depth;
      double line = Math.max(0, 1 - Math.abs(Math.abs(across) - 0.63) / Math.max(0.03, FINEST * depth * depth / eye / 2));
      double cross = runway ? Math.max(0, 1 - Math.abs(along - Math.rint(along)) / Math.max(0.03, pixel / 2)) : 0;
      double white = contrast * Math.max(0.9 * line, 0.5 * cross);
      light = light * (1 - Math.min(1, white)) + 2.2 * Math.min(1, white);
    } else if (wall) {
      colour = new double[] {190, 186, 176};
      light = 1;
    } else {
      double height_m = eye - v * (distance + TREES_M);
      double along = u * (distance + TREES_M);
      double top = 4 + 3 * noise(along / 2.5, 7);
      colour = height_m < top ? new double[] {70, 94, 58} : new double[] {168, 192, 218};
      light = height_m < top ? 1 + contrast * 0.45 * speckle(along, height_m, 1 / (distance + TREES_M)) : 1;
      if (height_m < top && contrast == 0) {
        colour = new double[] {168, 192, 218};
        light = 1;
      }
    }
    for (int c = 0; c < 3; c++) {
      rgb[at + c] = (byte) (int) Math.max(0, Math.min(255, colour[c] * light));
    }
  }

  /** Noise of several sizes; those finer than can be seen are left out. {@code flat} is the angle of a metre away from the camera [rad]. */
  private double speckle(double x, double y, double flat) {
    double sum = 0;
    int k = 0;
    for (double size = 0.04; size < 8; size *= 2) {
      double seen = size * Math.min(flat, 1.0);
      double share = Math.max(0, Math.min(1, seen / FINEST - 1));
      sum += share * (noise2(x / size, y / size, ++k) - 0.5);
    }
    return 1.3 * sum;
  }

  private static double noise(double x, int seed) {
    return noise2(x, 0.5, seed);
  }

  /** Smooth noise, 0 to 1. */
  private static double noise2(double x, double y, int seed) {
    int x0 = (int) Math.floor(x);
    int y0 = (int) Math.floor(y);
    double fx = x - x0;
    double fy = y - y0;
    fx = fx * fx * (3 - 2 * fx);
    fy = fy * fy * (3 - 2 * fy);
    double top = hash(x0, y0, seed) * (1 - fx) + hash(x0 + 1, y0, seed) * fx;
    double low = hash(x0, y0 + 1, seed) * (1 - fx) + hash(x0 + 1, y0 + 1, seed) * fx;
    return top * (1 - fy) + low * fy;
  }

  private static double hash(int x, int y, int seed) {
    int h = x * 0x27d4eb2d ^ y * 0x165667b1 ^ seed * 0x9e3779b9;
    h ^= h >>> 15;
    h *= 0x85ebca6b;
    h ^= h >>> 13;
    h *= 0xc2b2ae35;
    h ^= h >>> 16;
    return (h & 0xffffff) / (double) 0x1000000;
  }

  /** How far away in depth what is seen in a direction stands [m]; u right and v down over depth. */
  double depth(double v) {
    double ground = v > 0.001 ? eye / v : 1e9;
    return Math.min(ground, wall ? distance + 2 : distance + TREES_M);
  }

  /** Looks up a direction, u right and v down over depth; writes red, green, blue. */
  void look(double u, double v, byte[] to, int at) {
    double x = u * SCALE + width / 2.0 - 0.5;
    double y = v * SCALE + height / 2.0 - 0.5;
    int x0 = (int) Math.max(0, Math.min(width - 2, x));
    int y0 = (int) Math.max(0, Math.min(height - 2, y));
    int fx = (int) (256 * Math.max(0, Math.min(1, x - x0)));
    int fy = (int) (256 * Math.max(0, Math.min(1, y - y0)));
    int p = 3 * (y0 * width + x0);
    int q = p + 3 * width;
    for (int c = 0; c < 3; c++) {
      int top = (rgb[p + c] & 0xff) * (256 - fx) + (rgb[p + 3 + c] & 0xff) * fx;
      int low = (rgb[q + c] & 0xff) * (256 - fx) + (rgb[q + 3 + c] & 0xff) * fx;
      to[at + c] = (byte) ((top * (256 - fy) + low * fy + 32768) >> 16);
    }
  }
}
