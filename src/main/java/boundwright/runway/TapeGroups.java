package boundwright.runway;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/**
 * The fewest groups of which each shares a mark. Going through the windows by their far end and beginning a group whenever the last one's
 * first far end lies outside the window in hand is optimal: the windows that begin a group are pairwise apart, so any other choice needs as
 * many (the classic stabbing of intervals).
 */
public final class TapeGroups {
  private TapeGroups() {}

  /** The groups, the nearest to the sand first; each by the far ends, and its first member apart from that of every other group. */
  public static <T> List<List<T>> fewest(List<T> all, Function<? super T, Window> works) {
    List<T> byFarEnd = new ArrayList<>(all);
    byFarEnd.sort(Comparator.comparingDouble((T one) -> works.apply(one).max_m()).thenComparingDouble(one -> works.apply(one).min_m()));
    List<List<T>> groups = new ArrayList<>();
    double last = Double.NEGATIVE_INFINITY;
    for (T one : byFarEnd) {
      if (works.apply(one).min_m() > last) {
        last = works.apply(one).max_m();
        groups.add(new ArrayList<>());
      }
      groups.get(groups.size() - 1).add(one);
    }
    return groups;
  }
}
