package boundwright.clip.camera;

import java.util.Arrays;
import java.util.List;

/** The corners of many links in plain arrays, as the solution runs through them, counted from the middle of the picture. */
final class Pairs {
  /** Earlier and later picture of each link. */
  final int[] from;

  final int[] to;
  /** Number of each link's first corner; the last entry is how many corners there are. */
  final int[] first;
  /** x and y of each corner in the earlier picture [small px from the middle]. */
  final double[] a;
  /** The same in the later one. */
  final double[] b;

  /** At most {@code most} corners of each link, spread evenly over those it has. */
  Pairs(List<Link> links, int width, int height, int most) {
    int m = links.stream().mapToInt(l -> Math.min(most, l.size())).sum();
    from = new int[links.size()];
    to = new int[links.size()];
    first = new int[links.size() + 1];
    a = new double[2 * m];
    b = new double[2 * m];
    int at = 0;
    for (int k = 0; k < links.size(); k++) {
      Link l = links.get(k);
      from[k] = l.from();
      to[k] = l.to();
      first[k] = at;
      int n = Math.min(most, l.size());
      for (int i = 0; i < n; i++) {
        int j = i * l.size() / n;
        a[2 * at] = l.a()[2 * j] - (width - 1) / 2.0;
        a[2 * at + 1] = l.a()[2 * j + 1] - (height - 1) / 2.0;
        b[2 * at] = l.b()[2 * j] - (width - 1) / 2.0;
        b[2 * at + 1] = l.b()[2 * j + 1] - (height - 1) / 2.0;
        at++;
      }
    }
    first[links.size()] = at;
  }

  /** The middle shift of a link's corners, across (0) or down (1) [small px]. */
  double middleShift(int link, int axis) {
    double[] d = new double[first[link + 1] - first[link]];
    for (int i = 0; i < d.length; i++) {
      int at = 2 * (first[link] + i) + axis;
      d[i] = b[at] - a[at];
    }
    return median(d);
  }

  /** The median; 0 of none. */
  static double median(double[] v) {
    double[] s = v.clone();
    Arrays.sort(s);
    return s.length == 0 ? 0 : s[s.length / 2];
  }
}
