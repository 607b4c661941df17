package boundwright.season.conflict;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What cannot hold together, although it could if any one part were given up.
 *
 * @param demands each of its members
 * @param parts the same in words, days of one rule together
 * @param unproven members of which it could not be shown that they are needed; 0 if every one is
 */
public record Clash(List<Demand> demands, List<Part> parts, int unproven) {
  /** Takes copies. */
  public Clash {
    demands = List.copyOf(demands);
    parts = List.copyOf(parts);
  }

  /**
   * A part.
   *
   * @param athlete whose; null for a place
   * @param days on which it holds
   * @param said what it is
   * @param wayOut how it could give way
   */
  public record Part(@Nullable String athlete, List<LocalDate> days, String said, String wayOut) {}
}
