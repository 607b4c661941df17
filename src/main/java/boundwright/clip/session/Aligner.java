package boundwright.clip.session;

import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * Finds how the camera turned between two small pictures by their grey values: what moves in them is outvoted. Gauss and Newton from
 * coarse to fine on rotation and zoom (direct alignment after Lucas and Kanade), robust.
 */
final class Aligner {
  private static final int ROUNDS = 6;
  /** A guess is good to a few pixels: the halved picture is coarse enough. */
  private static final int COARSEST = 1;
  /** A grey value farther off than this tells nothing (judgement: what moves in front of the ground). */
  private static final double OUT = 40;
  /** And counts as much as one that is off by this. */
  private static final double MOST = 24;
  /** Roll and zoom from look to look are small: weight of that against the picture's own (judgement). */
  private static final double STEADY = 20;
  /** What a grey value is off by where nothing moves, beside coding and blur (judgement). */
  private static final double GREY_SD = 12;
  private static final double LENS_STEP = 1.02;
  /** Less of the picture in common tells nothing. */
  private static final double LEAST_COMMON = 0.33;

  private final int width;
  private final int height;

  Aligner(int width, int height) {
    this.width = width;
    this.height = height;
  }

  /** The aim of the second picture, found from a guess. */
  Aim align(Shades from, Aim fromAim, Shades to, Aim guess) {
    Aim best = guess;
    for (int level = COARSEST; level >= 0; level--) {
      for (int round = 0; round < ROUNDS; round++) {
        double[] step = solved(step(from, fromAim, to, best, level, 4), best.focal(width, height), 4);
        best = best.further(step[0], step[1], step[2], step[3]);
        double moved = Math.hypot(step[0], step[1]) * best.focal(width, height);
        if (moved < 0.02 * (1 << level)) {
          break;
        }
      }
    }
    return best;
  }

  /**
   * What two pictures that are aligned tell of the lens: by how much the logarithm of its focal length is off, and the inverse of that
   * number's variance.
   */
  double[] lens(Shades from, Aim fromAim, Shades to, Aim aim) {
    double[][] all = step(from, fromAim, to, aim, 0, 5);
    double f = aim.focal(width, height);
    double[] off = solved(all, f, 5);
    double[] unit = solved(new double[][] {all[0], all[1], all[2], all[3], all[4], {0, 0, 0, 0, 1}}, f, 5);
    return new double[] {off[4], 1 / (GREY_SD * GREY_SD * unit[4])};
  }

  /** The normal equations, their right side in the last row: turns, zoom and, as the fifth, the lens. */
  private double[][] step(Shades from, Aim fromAim, Shades to, Aim aim, int level, int unknowns) {
    int w = from.width(level);
    int h = from.height(level);
    float[] a = from.level(level);
    float[] b = to.level(level);
    double size = 1 << level;
    double[] m = fromAim.to(aim, width, height);
    double f = aim.focal(width, height);
    double cx = (width - 1) / 2.0;
    double cy = (height - 1) / 2.0;
    double[] other = fromAim.through(LENS_STEP * aim.lens()).to(aim.through(LENS_STEP * aim.lens()), width, height);
    double[][] n = new double[unknowns + 1][unknowns];
    double[] j = new double[unknowns];
    int every = level == 0 ? 2 : 1;
    for (int y = 1; y < h - 1; y += every) {
      for (int x = 1; x < w - 1; x += every) {
        double px = (x + 0.5) * size - 0.5;
        double py = (y + 0.5) * size - 0.5;
        double z = m[6] * px + m[7] * py + m[8];
        double u = (m[0] * px + m[1] * py + m[2]) / z;
        double v = (m[3] * px + m[4] * py + m[5]) / z;
        double lu = (u + 0.5) / size - 0.5;
        double lv = (v + 0.5) / size - 0.5;
        if (!(z > 0) || lu < 1 || lv < 1 || lu >= w - 2 || lv >= h - 2) {
          continue;
        }
        double off = at(b, w, lu, lv) - a[y * w + x];
        if (Math.abs(off) >= OUT) {
          continue;
        }
        double gx = (at(b, w, lu + 1, lv) - at(b, w, lu - 1, lv)) / (2 * size);
        double gy = (at(b, w, lu, lv + 1) - at(b, w, lu, lv - 1)) / (2 * size);
        double p = (u - cx) / f;
        double q = (v - cy) / f;
        j[0] = f * (gx * p * q + gy * (1 + q * q));
        j[1] = -f * (gx * (1 + p * p) + gy * p * q);
        j[2] = f * (gx * q - gy * p);
        j[3] = f * (gx * p + gy * q);
        if (unknowns > 4) {
          double oz = other[6] * px + other[7] * py + other[8];
          double ou = (other[0] * px + other[1] * py + other[2]) / oz;
          double ov = (other[3] * px + other[4] * py + other[5]) / oz;
          j[4] = (gx * (ou - u) + gy * (ov - v)) / Math.log(LENS_STEP);
        }
        double weight = 1 - off * off / (OUT * OUT);
        weight *= weight;
        for (int i = 0; i < unknowns; i++) {
          n[unknowns][i] -= weight * j[i] * off;
          for (int k = 0; k <= i; k++) {
            n[i][k] += weight * j[i] * j[k];
          }
        }
      }
    }
    return n;
  }

  private static double[] solved(double[][] equations, double f, int unknowns) {
    double[][] n = new double[unknowns][unknowns];
    for (int i = 0; i < unknowns; i++) {
      for (int k = 0; k <= i; k++) {
        n[i][k] = equations[i][k];
        n[k][i] = equations[i][k];
      }
    }
    for (int i = 0; i < 4; i++) {
      n[i][i] += f * f * (i < 2 ? 1 : STEADY);
    }
    return new LUDecomposition(new Array2DRowRealMatrix(n, false)).getSolver().solve(new ArrayRealVector(equations[unknowns], false)).toArray();
  }

  private static double at(float[] p, int w, double x, double y) {
    int ix = (int) x;
    int iy = (int) y;
    double fx = x - ix;
    double fy = y - iy;
    int i = iy * w + ix;
    return (1 - fy) * ((1 - fx) * p[i] + fx * p[i + 1]) + fy * ((1 - fx) * p[i + w] + fx * p[i + w + 1]);
  }

  /** Mean difference of the grey values where both show something; infinite where that is too little. */
  double cost(Shades from, Aim fromAim, Shades to, Aim aim) {
    double[] m = fromAim.to(aim, width, height);
    float[] a = from.level(0);
    float[] b = to.level(0);
    double sum = 0;
    int n = 0;
    int asked = 0;
    for (int y = 0; y < height; y += 2) {
      for (int x = 0; x < width; x += 2) {
        asked++;
        double z = m[6] * x + m[7] * y + m[8];
        double u = (m[0] * x + m[1] * y + m[2]) / z;
        double v = (m[3] * x + m[4] * y + m[5]) / z;
        if (z > 0 && u >= 0 && v >= 0 && u < width - 1 && v < height - 1) {
          sum += Math.min(MOST, Math.abs(at(b, width, u, v) - a[y * width + x]));
          n++;
        }
      }
    }
    return n < LEAST_COMMON * asked ? Double.POSITIVE_INFINITY : sum / n + 1e-3;
  }

  /** The aim of the second picture by the best whole shift of the coarse pictures, at most so far as a share of the width; empty where none fits better. */
  Optional<Aim> shifted(Shades from, Aim fromAim, Shades to, double reach) {
    int level = Shades.LEVELS - 1;
    int w = from.width(level);
    int h = from.height(level);
    int far = (int) Math.ceil(reach * w);
    double least = Double.POSITIVE_INFINITY;
    int bestX = 0;
    int bestY = 0;
    for (int dy = -Math.min(4, h / 4); dy <= Math.min(4, h / 4); dy++) {
      for (int dx = -far; dx <= far; dx++) {
        double c = cost(from.level(level), to.level(level), w, h, dx, dy);
        if (c < least) {
          least = c;
          bestX = dx;
          bestY = dy;
        }
      }
    }
    if (bestX == 0 && bestY == 0) {
      return Optional.empty();
    }
    double f = fromAim.focal(width, height);
    return Optional.of(fromAim.further(bestY * (1 << level) / f, -bestX * (1 << level) / f, 0, 0));
  }

  private static double cost(float[] a, float[] b, int w, int h, int dx, int dy) {
    double sum = 0;
    int n = 0;
    for (int y = Math.max(0, -dy); y < Math.min(h, h - dy); y++) {
      int ra = y * w;
      int rb = (y + dy) * w + dx;
      for (int x = Math.max(0, -dx); x < Math.min(w, w - dx); x++) {
        sum += Math.min(MOST, Math.abs(a[ra + x] - b[rb + x]));
        n++;
      }
    }
    return n < LEAST_COMMON * w * h ? Double.POSITIVE_INFINITY : sum / n + 1e-3;
  }
}
