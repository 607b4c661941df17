package boundwright.season.order;

import boundwright.quantity.LengthUnit;
import boundwright.runway.TapeGroups;
import boundwright.runway.Window;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The fewest tapes of a place ({@link TapeGroups}). All drills of a session together never need more than each drill by itself, so
 * a tape that is laid once and lies until its last rep is also the fewest that are ever laid.
 */
final class TapeSets {
  private TapeSets() {}

  /** The least number of tapes so that each of these holds one. */
  static int least(List<Window> works) {
    return TapeGroups.fewest(works, w -> w).size();
  }

  /** The common part of each group, the nearest to the sand first. */
  private static List<Window> groups(List<Window> works) {
    return TapeGroups.fewest(works, w -> w).stream()
        .map(g -> new Window(g.stream().mapToDouble(Window::min_m).max().orElseThrow(), g.get(0).max_m()))
        .toList();
  }

  /** That of these marks which works and is nearest to the middle of what does; the first of two that are as near; null if none works. */
  static @Nullable Double nearest(Window works, List<Double> marks) {
    Double best = null;
    for (Double m : marks) {
      if (works.holds(m) && (best == null || Math.abs(m - works.middle_m()) < Math.abs(best - works.middle_m()))) {
        best = m;
      }
    }
    return best;
  }

  /**
   * Where the fewest tapes lie [m], the nearest to the sand first: at the liked marks if those that are needed are as few, else in the middle
   * of what works for all of a group.
   */
  static List<Double> marks(List<Window> works, List<Double> liked) {
    List<Window> groups = groups(works);
    TreeSet<Double> used = new TreeSet<>();
    boolean served = true;
    for (Window w : works) {
      Double near = nearest(w, liked);
      served &= near != null;
      if (near != null) {
        used.add(near);
      }
    }
    if (served && used.size() <= groups.size()) {
      return List.copyOf(used);
    }
    return groups.stream().map(g -> liked.stream().filter(g::holds).findFirst().orElse(centimetre(g))).toList();
  }

  private static double centimetre(Window w) {
    double rounded = LengthUnit.METRES.round(w.middle_m());
    return w.holds(rounded) ? rounded : w.middle_m();
  }
}
