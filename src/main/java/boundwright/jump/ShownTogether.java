package boundwright.jump;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The vertical speeds that an athlete has shown in one and the same jump, and every mixture of such jumps: the convex hull of the shown
 * triples, kept as its furthest reach across its faces and in evenly spread directions (support function of a convex set; worked). The
 * highest hop of one jump with the highest step of another was never shown and lies outside, so nobody is told to jump higher
 * everywhere.
 */
final class ShownTogether {
  private static final int DIRECTIONS = 300;
  private static final double GOLDEN = Math.PI * (3 - Math.sqrt(5));
  private static final double FLAT = 1e-9;

  private final double[] from = new double[3];
  private final double[] width = new double[3];
  /** Unit directions in parts of the widths, how far the jumps reach in each, and how far half a cell's corner does. */
  private final List<double[]> direction = new ArrayList<>();
  private final double[] reach;
  private final double[] corner;

  /**
   * A hull.
   *
   * @param shown vertical take-off speeds of hop, step and jump of each jump [m/s], at least one
   */
  ShownTogether(List<JumpProfile.Ups> shown) {
    for (int i = 0; i < 3; i++) {
      int k = i;
      from[i] = shown.stream().mapToDouble(u -> u.of(k)).min().orElseThrow();
      width[i] = shown.stream().mapToDouble(u -> u.of(k)).max().orElseThrow() - from[i];
    }
    List<double[]> points = shown.stream().map(u -> scaled(new double[] {u.hop(), u.step(), u.jump()})).toList();
    TreeSet<Integer> outer = new TreeSet<>();
    for (int d = 0; d < DIRECTIONS; d++) {
      double z = 1 - (2 * d + 1.0) / DIRECTIONS;
      double r = Math.sqrt(1 - z * z);
      double[] way = {r * Math.cos(GOLDEN * d), r * Math.sin(GOLDEN * d), z};
      direction.add(way);
      outer.add(furthest(way, points));
    }
    faces(outer.stream().map(points::get).toList());
    reach = direction.stream().mapToDouble(way -> dot(way, points.get(furthest(way, points)))).toArray();
    corner = direction.stream().mapToDouble(way -> Math.abs(way[0]) + Math.abs(way[1]) + Math.abs(way[2])).toArray();
  }

  /** Each phase counts by its own width; a phase that never varied counts for nothing. */
  private double[] scaled(double[] up) {
    double[] out = new double[3];
    for (int i = 0; i < 3; i++) {
      out[i] = width[i] > 0 ? (up[i] - from[i]) / width[i] : 0;
    }
    return out;
  }

  private static int furthest(double[] way, List<double[]> points) {
    int best = 0;
    for (int i = 1; i < points.size(); i++) {
      if (dot(way, points.get(i)) > dot(way, points.get(best))) {
        best = i;
      }
    }
    return best;
  }

  /** Adds the normals of the faces: planes through three points with all others on one side. */
  private void faces(List<double[]> points) {
    int n = points.size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        for (int k = j + 1; k < n; k++) {
          double[] normal = normal(points.get(i), points.get(j), points.get(k));
          if (normal.length == 0) {
            continue;
          }
          double at = dot(normal, points.get(i));
          boolean above = false;
          boolean below = false;
          for (int p = 0; p < n && !(above && below); p++) {
            double side = dot(normal, points.get(p)) - at;
            above |= side > FLAT;
            below |= side < -FLAT;
          }
          if (!above) {
            direction.add(normal);
          }
          if (!below) {
            direction.add(new double[] {-normal[0], -normal[1], -normal[2]});
          }
        }
      }
    }
  }

  /** The unit normal of the plane through three points, empty where they lie in a line. */
  private static double[] normal(double[] a, double[] b, double[] c) {
    double[] u = {b[0] - a[0], b[1] - a[1], b[2] - a[2]};
    double[] v = {c[0] - a[0], c[1] - a[1], c[2] - a[2]};
    double[] x = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
    double length = Math.sqrt(dot(x, x));
    return length < FLAT ? new double[0] : new double[] {x[0] / length, x[1] / length, x[2] / length};
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /**
   * Whether these speeds lie within it.
   *
   * @param up hop, step, jump [m/s]
   * @param cell what half a cell of the search's grid is of each phase's width: a point of the grid stands for its cell
   */
  boolean holds(double[] up, double cell) {
    double[] at = scaled(up);
    for (int d = reach.length - 1; d >= 0; d--) { // the faces first: they decide soonest
      if (dot(direction.get(d), at) > reach[d] + cell * corner[d] + FLAT) {
        return false;
      }
    }
    return true;
  }

  /** Whether these speeds lie within {@code cell} of its surface, as in {@link #holds}. */
  boolean onSurface(double[] up, double cell) {
    return !holds(up, -cell);
  }
}
