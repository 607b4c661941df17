package boundwright.clip.scan;

import boundwright.clip.film.Picture;
import boundwright.clip.pose.Region;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Whether the camera stood still. Ten times a second the picture, made small and without the athlete, is laid over the first
 * one; where it fits best tells how far the camera turned. Marks only hold when it stood.
 */
final class CameraWatch {
  /** How often it looks [s]. */
  private static final double EVERY_S = 0.1;
  private static final int WIDE = 160;
  /** Farthest shift that is looked for [small px]. */
  private static final int REACH = 8;
  /** Shifts up to this share of the picture's width are within what marks stand (judgement). */
  private static final double STILL = 0.006;

  private int @Nullable [] first;
  private boolean @Nullable [] hidden;
  private int high;
  private double scale = 1;
  private double last = Double.NEGATIVE_INFINITY;
  private double worst;
  private int width;

  void look(Picture picture, double time, Region athlete) {
    if (time - last < EVERY_S) {
      return;
    }
    last = time;
    scale = (double) picture.width() / WIDE;
    high = Math.max(1, (int) (picture.height() / scale));
    width = picture.width();
    int[] now = small(picture);
    boolean[] mask = mask(athlete);
    int[] before = first;
    boolean[] beforeMask = hidden;
    if (before == null || beforeMask == null) {
      first = now;
      hidden = mask;
      return;
    }
    worst = Math.max(worst, shift(before, beforeMask, now, mask) * scale);
  }

  private int[] small(Picture p) {
    int[] out = new int[WIDE * high];
    byte[] rgb = p.rgb();
    for (int y = 0; y < high; y++) {
      for (int x = 0; x < WIDE; x++) {
        int sum = 0;
        // green of a 3 x 3 sample of the block stands for its brightness
        for (int k = 0; k < 9; k++) {
          int px = (int) ((x + (k % 3 + 0.5) / 3) * scale);
          int py = (int) ((y + (Math.floorDiv(k, 3) + 0.5) / 3) * scale);
          sum += rgb[3 * (py * p.width() + px) + 1] & 0xff;
        }
        out[y * WIDE + x] = sum;
      }
    }
    return out;
  }

  private boolean[] mask(Region athlete) {
    boolean[] out = new boolean[WIDE * high];
    double half = 0.5 * athlete.side() / scale;
    for (int y = 0; y < high; y++) {
      for (int x = 0; x < WIDE; x++) {
        out[y * WIDE + x] = Math.abs(x - athlete.x() / scale) < half && Math.abs(y - athlete.y() / scale) < half;
      }
    }
    return out;
  }

  /** Length of the best shift [small px], to a part of a pixel. */
  private double shift(int[] a, boolean[] maskA, int[] b, boolean[] maskB) {
    double[][] cost = new double[2 * REACH + 1][2 * REACH + 1];
    int bestX = 0;
    int bestY = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int dy = -REACH; dy <= REACH; dy++) {
      for (int dx = -REACH; dx <= REACH; dx++) {
        double c = cost(a, maskA, b, maskB, dx, dy);
        cost[dy + REACH][dx + REACH] = c;
        if (c < least) {
          least = c;
          bestX = dx;
          bestY = dy;
        }
      }
    }
    // a picture without contrast fits everywhere: then nothing can be told, and nothing is claimed
    if (cost[REACH][REACH] - least < 1e-9 || least == Double.POSITIVE_INFINITY) {
      return 0;
    }
    return Math.hypot(
        bestX + bottom(cost, bestY + REACH, bestX + REACH, true), bestY + bottom(cost, bestY + REACH, bestX + REACH, false));
  }

  private static double bottom(double[][] cost, int y, int x, boolean alongX) {
    int at = alongX ? x : y;
    if (at == 0 || at == 2 * REACH) {
      return 0;
    }
    double before = alongX ? cost[y][x - 1] : cost[y - 1][x];
    double after = alongX ? cost[y][x + 1] : cost[y + 1][x];
    double bow = before + after - 2 * cost[y][x];
    return bow <= 0 ? 0 : 0.5 * (before - after) / bow;
  }

  private double cost(int[] a, boolean[] maskA, int[] b, boolean[] maskB, int dx, int dy) {
    double sum = 0;
    int n = 0;
    for (int y = REACH; y < high - REACH; y++) {
      for (int x = REACH; x < WIDE - REACH; x++) {
        int i = y * WIDE + x;
        int j = (y + dy) * WIDE + x + dx;
        if (!maskA[i] && !maskB[j]) {
          double d = a[i] - b[j];
          sum += d * d;
          n++;
        }
      }
    }
    return n < 200 ? Double.POSITIVE_INFINITY : sum / n;
  }

  /** A sentence when the camera moved. */
  Optional<String> remark() {
    if (worst <= STILL * width) {
      return Optional.empty();
    }
    return Optional.of(
        String.format(
            Locale.ROOT,
            "The camera moved: by about %.0f pixels, where at most %.0f do no harm. Lengths from marks do not hold; feet and times do. Put the phone on a stand.",
            worst, STILL * width));
  }
}
