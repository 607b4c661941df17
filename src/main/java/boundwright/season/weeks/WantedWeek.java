package boundwright.season.weeks;

import boundwright.season.SessionKind;
import java.util.Map;

/**
 * What is wanted of one athlete in one week of the season.
 *
 * @param units load of both legs, a meet's own contacts among it [standing-bound contacts]
 * @param sessions by kind; kinds that are not in it are not asked for
 * @param lighter whether it is one of the lighter weeks
 * @param test whether tests are made in it
 */
public record WantedWeek(double units, Map<SessionKind, Integer> sessions, boolean lighter, boolean test) {
  /** Takes a copy. */
  public WantedWeek {
    sessions = Map.copyOf(sessions);
  }

  /** Sessions of a kind. */
  public int sessions(SessionKind kind) {
    return sessions.getOrDefault(kind, 0);
  }

  /** Sessions of all kinds. */
  public int all() {
    return sessions.values().stream().mapToInt(Integer::intValue).sum();
  }
}
