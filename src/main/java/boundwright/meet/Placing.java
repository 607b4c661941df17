package boundwright.meet;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete stands.
 *
 * @param athlete as on the list
 * @param rank 1 is first; level athletes share it; null without a valid mark
 * @param best_m best official mark [m], rounded down, or null
 * @param marks_m all official marks, longest first [m]
 * @param bestLegal_m best with a measured and legal wind [m], or null
 */
public record Placing(
    String athlete, @Nullable Integer rank, @Nullable Double best_m, List<Double> marks_m, @Nullable Double bestLegal_m) {
  /** Takes a copy. */
  public Placing {
    marks_m = List.copyOf(marks_m);
  }
}
