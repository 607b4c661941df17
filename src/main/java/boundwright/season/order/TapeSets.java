package boundwright.season.order;

import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * The fewest tapes of a place. Going through what works by its far end and laying a tape there whenever none lies in it yet is optimal (the
 * classic stabbing of intervals; {@code boundwright.runway.TapePlanner} says why). All drills of a session together never need more than
 * each drill by itself, so a tape that is laid once and lies until its last rep is also the fewest that are ever laid.
 */
final class TapeSets {
  private TapeSets() {}

  /** The least number of tapes so that each of these holds one. */
  static int least(List<Window> works) {
    return groups(works).size();
  }

  /** The common part of each group, the nearest to the sand first. */
  private static List<Window> groups(List<Window> works) {
    List<Window> open = new ArrayList<>(works);
    open.sort(Comparator.comparingDouble(Window::max_m).thenComparingDouble(Window::min_m));
    List<Window> out = new ArrayList<>();
    double near = 0;
    double last = Double.NEGATIVE_INFINITY;
    for (Window w : open) {
      if (w.min_m() > last) {
        if (!out.isEmpty()) {
          out.set(out.size() - 1, new Window(near, last));
        }
        last = w.max_m();
        near = w.min_m();
        out.add(w);
      }
      near = Math.max(near, w.min_m());
    }
    if (!out.isEmpty()) {
      out.set(out.size() - 1, new Window(near, last));
    }
    return List.copyOf(out);
  }

  /**
   * Where the fewest tapes lie [m], the nearest to the sand first: at the liked marks if those that are needed are as few, else in the middle
   * of what works for all of a group.
   */
  static List<Double> marks(List<Window> works, List<Double> liked) {
    List<Window> groups = groups(works);
    TreeSet<Double> used = new TreeSet<>();
    for (Window w : works) {
      double to = Double.NaN;
      for (double m : liked) {
        if (w.holds(m) && !(Math.abs(m - middle(w)) >= Math.abs(to - middle(w)))) {
          to = m;
        }
      }
      used.add(to);
    }
    if (!used.contains(Double.NaN) && used.size() <= groups.size()) {
      return List.copyOf(used);
    }
    return groups.stream().map(g -> liked.stream().filter(g::holds).findFirst().orElse(centimetre(g))).toList();
  }

  private static double middle(Window w) {
    return (w.min_m() + w.max_m()) / 2;
  }

  private static double centimetre(Window w) {
    double rounded = Math.round(middle(w) * 100) / 100.0;
    return w.holds(rounded) ? rounded : middle(w);
  }
}
