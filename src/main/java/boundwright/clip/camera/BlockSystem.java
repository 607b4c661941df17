package boundwright.clip.camera;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * A symmetric, positive system of 4 x 4 blocks of which few are not zero, solved by L D L' in an order that keeps it so, with the
 * blocks of its inverse where the factor has blocks (Takahashi's recursion; from memory, checked against the dense inverse).
 */
final class BlockSystem {
  private static final int B = 4;

  /** Blocks below the diagonal, by column and row in the order of elimination. */
  private final Map<Integer, TreeMap<Integer, double[]>> below = new HashMap<>();
  private final double[][] diagonal;
  private final int[] place;
  private final double[][] inverted;
  private double[][] covariance = new double[0][];
  private final Map<Long, double[]> cross = new HashMap<>();

  /** {@code place[i]} says when unknown i is eliminated. */
  BlockSystem(int[] place) {
    this.place = place.clone();
    diagonal = new double[place.length][B * B];
    inverted = new double[place.length][];
  }

  /** Adds to the block of an unknown with itself. */
  void add(int i, double[] block) {
    plus(diagonal[place[i]], block, 1);
  }

  /** Adds to the block of row i and column j, and its mirror; i is not j. */
  void add(int i, int j, double[] block) {
    int r = place[i];
    int c = place[j];
    double[] to = below.computeIfAbsent(Math.min(r, c), k -> new TreeMap<>()).computeIfAbsent(Math.max(r, c), k -> new double[B * B]);
    plus(to, r > c ? block : mirror(block), 1);
  }

  /** Factors; afterwards the system can be solved. */
  void factor() {
    int n = diagonal.length;
    for (int j = 0; j < n; j++) {
      inverted[j] = inverse(diagonal[j]);
      TreeMap<Integer, double[]> column = below.get(j);
      if (column == null) {
        continue;
      }
      Integer[] rows = column.keySet().toArray(new Integer[0]);
      double[][] l = new double[rows.length][];
      for (int a = 0; a < rows.length; a++) {
        l[a] = times(block(column, rows[a]), inverted[j]);
      }
      for (int a = 0; a < rows.length; a++) {
        double[] of = block(column, rows[a]);
        for (int b = 0; b <= a; b++) {
          double[] change = timesMirror(of, l[b]);
          if (a == b) {
            plus(diagonal[rows[a]], change, -1);
          } else {
            plus(below.computeIfAbsent(rows[b], k -> new TreeMap<>()).computeIfAbsent(rows[a], k -> new double[B * B]), change, -1);
          }
        }
      }
      for (int a = 0; a < rows.length; a++) {
        column.put(rows[a], l[a]);
      }
    }
  }

  private static double[] block(Map<Integer, double[]> column, int row) {
    double[] b = column.get(row);
    if (b == null) {
      throw new IllegalStateException("no block in row " + row);
    }
    return b;
  }

  /** Solves; four numbers for each unknown. */
  double[] solve(double[] right) {
    int n = diagonal.length;
    double[] x = new double[B * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(right, B * i, x, B * place[i], B);
    }
    for (int j = 0; j < n; j++) {
      for (Map.Entry<Integer, double[]> e : below.getOrDefault(j, new TreeMap<>()).entrySet()) {
        apply(e.getValue(), false, x, j, e.getKey());
      }
    }
    for (int j = n - 1; j >= 0; j--) {
      double[] d = new double[B];
      for (int a = 0; a < B; a++) {
        for (int b = 0; b < B; b++) {
          d[a] += inverted[j][B * a + b] * x[B * j + b];
        }
      }
      System.arraycopy(d, 0, x, B * j, B);
      for (Map.Entry<Integer, double[]> e : below.getOrDefault(j, new TreeMap<>()).entrySet()) {
        apply(e.getValue(), true, x, e.getKey(), j);
      }
    }
    double[] out = new double[B * n];
    for (int i = 0; i < n; i++) {
      System.arraycopy(x, B * place[i], out, B * i, B);
    }
    return out;
  }

  private static void apply(double[] l, boolean mirrored, double[] x, int from, int to) {
    for (int a = 0; a < B; a++) {
      double s = 0;
      for (int b = 0; b < B; b++) {
        s += (mirrored ? l[B * b + a] : l[B * a + b]) * x[B * from + b];
      }
      x[B * to + a] -= s;
    }
  }

  /** The block of the inverse of an unknown with itself. */
  double[] covariance(int i) {
    if (covariance.length == 0) {
      invert();
    }
    return covariance[place[i]];
  }

  /** The block of the inverse of row i and column j; only where the system or its factor has a block. */
  double[] covariance(int i, int j) {
    covariance(i);
    int r = place[i];
    int c = place[j];
    double[] low = cross.get(key(Math.max(r, c), Math.min(r, c)));
    if (low == null) {
      throw new IllegalArgumentException("no block of " + i + " and " + j);
    }
    return r > c ? low : mirror(low);
  }

  private void invert() {
    int n = diagonal.length;
    covariance = new double[n][];
    for (int j = n - 1; j >= 0; j--) {
      TreeMap<Integer, double[]> column = below.getOrDefault(j, new TreeMap<>());
      double[] own = inverted[j].clone();
      for (int i : column.keySet()) {
        double[] z = new double[B * B];
        for (Map.Entry<Integer, double[]> m : column.entrySet()) {
          plus(z, times(at(i, m.getKey()), m.getValue()), -1);
        }
        cross.put(key(i, j), z);
      }
      for (Map.Entry<Integer, double[]> m : column.entrySet()) {
        plus(own, times(mirror(m.getValue()), block(cross, key(m.getKey(), j))), -1);
      }
      covariance[j] = own;
    }
  }

  private static double[] block(Map<Long, double[]> all, long key) {
    double[] b = all.get(key);
    if (b == null) {
      throw new IllegalStateException("the factor's pattern is not closed");
    }
    return b;
  }

  private double[] at(int r, int c) {
    return r == c ? covariance[r] : r > c ? block(cross, key(r, c)) : mirror(block(cross, key(c, r)));
  }

  private static long key(int r, int c) {
    return ((long) r << 32) | c;
  }

  private static void plus(double[] to, double[] what, double times) {
    for (int i = 0; i < B * B; i++) {
      to[i] += times * what[i];
    }
  }

  private static double[] mirror(double[] a) {
    double[] out = new double[B * B];
    for (int i = 0; i < B; i++) {
      for (int j = 0; j < B; j++) {
        out[B * j + i] = a[B * i + j];
      }
    }
    return out;
  }

  private static double[] times(double[] a, double[] b) {
    double[] out = new double[B * B];
    for (int i = 0; i < B; i++) {
      for (int k = 0; k < B; k++) {
        double v = a[B * i + k];
        for (int j = 0; j < B; j++) {
          out[B * i + j] += v * b[B * k + j];
        }
      }
    }
    return out;
  }

  private static double[] timesMirror(double[] a, double[] b) {
    return times(a, mirror(b));
  }

  /** Of a symmetric positive block. */
  private static double[] inverse(double[] a) {
    double[][] m = new double[B][2 * B];
    for (int i = 0; i < B; i++) {
      System.arraycopy(a, B * i, m[i], 0, B);
      m[i][B + i] = 1;
    }
    for (int c = 0; c < B; c++) {
      double p = m[c][c];
      if (!(p > 0)) {
        throw new ArithmeticException("the system is not positive");
      }
      for (int j = 0; j < 2 * B; j++) {
        m[c][j] /= p;
      }
      for (int r = 0; r < B; r++) {
        if (r != c) {
          double f = m[r][c];
          for (int j = 0; j < 2 * B; j++) {
            m[r][j] -= f * m[c][j];
          }
        }
      }
    }
    double[] out = new double[B * B];
    for (int i = 0; i < B; i++) {
      System.arraycopy(m[i], B, out, B * i, B);
    }
    return out;
  }
}
