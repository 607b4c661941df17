package boundwright.clip.session;

import boundwright.clip.film.Picture;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What stands still in small pictures of a film, and what does not. The background is the slow mean of what was seen; when the camera
 * turned since the last look, it is shifted first, so that motion counts against the ground and not against the picture.
 */
final class Backdrop {
  /** The mean follows what is there within this time [s]; where something moves three times slower (judgement). */
  private static final double FOLLOWS_S = 12;
  /** Least difference of a colour that counts, of 255 (judgement). */
  private static final float LEAST = 16;
  /** Farthest turn between two looks that is found, as a share of the width (judgement: a quick pan at five looks a second). */
  private static final double REACH = 0.25;
  /** So long after a turn edges may still lie a pixel off [s]. */
  private static final double UNSTEADY_S = 2;
  private static final int COARSE = 4;
  /** A shift has to fit so much better than none; noise alone fits a little better somewhere. */
  private static final double BETTER = 0.9;
  /** A far turn has to fit so much better than a near one. */
  private static final double FAR = 0.8;
  /** A near turn [small px]. */
  private static final int NEAR = 6;
  /** More than this share of the picture cannot be people: the light changed, or the ground was lost. */
  private static final double MOST = 0.35;

  private final int width;
  private final int height;
  private final float[] mean;
  private final float[] noise;
  private final boolean[] moving;
  private byte @Nullable [] before;
  private int shiftX;
  private int shiftY;
  private long turnedX;
  private long turnedY;
  private boolean lost;
  private double unsteady;

  Backdrop(int width, int height) {
    this.width = width;
    this.height = height;
    mean = new float[3 * width * height];
    noise = new float[width * height];
    moving = new boolean[width * height];
  }

  /** Looks at the next picture, {@code dt} seconds after the last. */
  void look(Picture picture, double dt) {
    byte[] rgb = picture.rgb();
    byte[] last = before;
    if (last == null) {
      for (int i = 0; i < mean.length; i++) {
        mean[i] = rgb[i] & 0xff;
      }
      before = Arrays.copyOf(rgb, mean.length);
      return;
    }
    turn(last, rgb);
    if (shiftX != 0 || shiftY != 0) {
      shift(rgb);
    }
    unsteady = turning() ? UNSTEADY_S : Math.max(0, unsteady - dt);
    int n = 0;
    float follow = (float) Math.min(1, dt / FOLLOWS_S);
    for (int p = 0; p < noise.length; p++) {
      float most = unsteady > 0 ? leastNear(rgb, p) : off(rgb, p, p);
      boolean out = most > LEAST + 3 * noise[p];
      moving[p] = out;
      n += out ? 1 : 0;
      float rate = out ? follow / 3 : follow;
      for (int c = 3 * p; c < 3 * p + 3; c++) {
        mean[c] += rate * ((rgb[c] & 0xff) - mean[c]);
      }
      if (!out) {
        noise[p] += follow * (most - noise[p]);
      }
    }
    lost = n > MOST * noise.length;
    if (lost) {
      for (int i = 0; i < mean.length; i++) {
        mean[i] = rgb[i] & 0xff;
      }
    }
    System.arraycopy(rgb, 0, last, 0, mean.length);
  }

  /** Largest difference of a colour of a pixel from the background at another. */
  private float off(byte[] rgb, int pixel, int from) {
    float most = 0;
    for (int c = 0; c < 3; c++) {
      most = Math.max(most, Math.abs((rgb[3 * pixel + c] & 0xff) - mean[3 * from + c]));
    }
    return most;
  }

  /** The same for whichever neighbour fits best: a turn is known to a pixel, and no edge moves because of that. */
  private float leastNear(byte[] rgb, int pixel) {
    int x = pixel % width;
    int y = Math.floorDiv(pixel, width);
    float least = Float.MAX_VALUE;
    for (int v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++) {
      for (int u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
        least = Math.min(least, off(rgb, pixel, v * width + u));
      }
    }
    return least;
  }

  /** How the ground moved in the picture since the last look [small px]. */
  private void turn(byte[] a, byte[] b) {
    int w = width / COARSE;
    int h = height / COARSE;
    int[] ca = coarse(a, w, h);
    int[] cb = coarse(b, w, h);
    int reach = (int) Math.ceil(REACH * w);
    double none = cost(ca, cb, w, h, 0, 0);
    double least = none;
    int bestX = 0;
    int bestY = 0;
    for (int dy = -Math.min(4, h / 4); dy <= Math.min(4, h / 4); dy++) {
      for (int dx = -reach; dx <= reach; dx++) {
        double c = cost(ca, cb, w, h, dx, dy);
        if (c < least) {
          least = c;
          bestX = dx;
          bestY = dy;
        }
      }
    }
    int[] fa = green(a);
    int[] fb = green(b);
    double fineNone = cost(fa, fb, width, height, 0, 0);
    int[] next = around(fa, fb, 0, 0, 1);
    if (bestX == 0 && bestY == 0 && next[0] == 0 && next[1] == 0) {
      shiftX = 0;
      shiftY = 0;
      return;
    }
    int[] near = around(fa, fb, 0, 0, NEAR);
    int[] going = around(fa, fb, shiftX, shiftY, 3);
    int[] far = around(fa, fb, COARSE * bestX, COARSE * bestY, 3);
    // trees and fences repeat: the camera turned far only if that fits much better than a little, or than it went on as before
    int[] chosen = cost(fa, fb, going) < FAR * cost(fa, fb, near) ? going : near;
    chosen = cost(fa, fb, far) < FAR * cost(fa, fb, chosen) ? far : chosen;
    boolean turned = cost(fa, fb, chosen) < BETTER * fineNone;
    shiftX = turned ? chosen[0] : 0;
    shiftY = turned ? chosen[1] : 0;
    turnedX += shiftX;
    turnedY += shiftY;
  }

  /** The best shift near one. */
  private int[] around(int[] a, int[] b, int x, int y, int reach) {
    int[] best = {x, y};
    double least = Double.POSITIVE_INFINITY;
    for (int dy = y - reach; dy <= y + reach; dy++) {
      for (int dx = x - reach; dx <= x + reach; dx++) {
        double c = cost(a, b, width, height, dx, dy);
        if (c < least) {
          least = c;
          best = new int[] {dx, dy};
        }
      }
    }
    return best;
  }

  private double cost(int[] a, int[] b, int[] shift) {
    return cost(a, b, width, height, shift[0], shift[1]);
  }

  private static int at(byte[] rgb, int pixel) {
    return rgb[3 * pixel + 1] & 0xff;
  }

  private int[] green(byte[] rgb) {
    int[] out = new int[width * height];
    for (int i = 0; i < out.length; i++) {
      out[i] = at(rgb, i);
    }
    return out;
  }

  private int[] coarse(byte[] rgb, int w, int h) {
    int[] out = new int[w * h];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int sum = 0;
        for (int k = 0; k < COARSE * COARSE; k++) {
          sum += at(rgb, (COARSE * y + Math.floorDiv(k, COARSE)) * width + COARSE * x + k % COARSE);
        }
        out[y * w + x] = Math.floorDiv(sum, COARSE * COARSE);
      }
    }
    return out;
  }

  /** Mean difference where both pictures show something; what differs much counts as much as what differs a little more. */
  private static double cost(int[] a, int[] b, int w, int h, int dx, int dy) {
    long sum = 0;
    int n = 0;
    for (int y = Math.max(0, -dy); y < Math.min(h, h - dy); y++) {
      int ra = y * w;
      int rb = (y + dy) * w + dx;
      for (int x = Math.max(0, -dx); x < Math.min(w, w - dx); x++) {
        sum += Math.min(24, Math.abs(a[ra + x] - b[rb + x]));
        n++;
      }
    }
    return n < w * h / 3 ? Double.POSITIVE_INFINITY : (double) sum / n + 1e-3;
  }

  private void shift(byte[] rgb) {
    float[] mean0 = mean.clone();
    float[] noise0 = noise.clone();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int p = y * width + x;
        int fx = x - shiftX;
        int fy = y - shiftY;
        boolean known = fx >= 0 && fy >= 0 && fx < width && fy < height;
        int q = fy * width + fx;
        noise[p] = known ? noise0[q] : LEAST;
        for (int c = 0; c < 3; c++) {
          mean[3 * p + c] = known ? mean0[3 * q + c] : rgb[3 * p + c] & 0xff;
        }
      }
    }
  }

  /** Where something moves, row by row; not copied. */
  boolean[] moving() {
    return moving;
  }

  /** Whether the camera turned since the last look. */
  boolean turning() {
    return shiftX != 0 || shiftY != 0;
  }

  /** Whether so much changed at once that nothing can be told. */
  boolean lost() {
    return lost;
  }

  /** How far the ground has moved in the picture since the beginning, to the right [small px]. */
  long turnedX() {
    return turnedX;
  }

  /** The same down. */
  long turnedY() {
    return turnedY;
  }
}
