package boundwright.meet;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * How a meet stands.
 *
 * @param sheet as kept
 * @param meet the competition; null with nobody on the list
 * @param placings best first; empty with nobody on the list
 * @param round that is being jumped, 1 to the meet's rounds; null when all is jumped or nobody is on the list
 * @param order of that round; empty without one
 * @param next who jumps next in that round, or null
 */
public record MeetNow(
    MeetSheet sheet, @Nullable Meet meet, List<Placing> placings, @Nullable Integer round, List<String> order, @Nullable String next) {
  /** Takes copies. */
  public MeetNow {
    placings = List.copyOf(placings);
    order = List.copyOf(order);
  }

  /** What the wind of a placing's best mark means in a combined event, a sentence; null elsewhere or without a measured wind. */
  public @Nullable String windWords(Placing placing) {
    Combined part = sheet.rules().combined();
    Double best = placing.best_m();
    if (part == null || best == null || meet == null) {
      return null;
    }
    // of several marks as long the coach reports the one with the least wind
    return meet.attempts().stream()
        .filter(a -> a.athlete().equals(placing.athlete()) && isBest(a, best))
        .map(Attempt::wind)
        .filter(Objects::nonNull)
        .min(Double::compare)
        .map(part.wind()::words)
        .orElse(null);
  }

  private boolean isBest(Attempt a, double best) {
    Double d = a.distance_m();
    return d != null && Math.abs(sheet.rules().measure().down(d) - best) < 1e-9;
  }

  /** Points of a placing by the meet's table, or null without a table or a mark. */
  public @Nullable Integer points(Placing placing) {
    Scoring table = sheet.scoring();
    Double best = placing.best_m();
    return table == null || best == null ? null : Integer.valueOf(table.points(best));
  }
}
