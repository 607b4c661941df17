package boundwright.season;

import boundwright.athlete.Surface;
import boundwright.quantity.RefusedException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;

/**
 * Where one can train.
 *
 * @param key short, by which it is named in a plan
 * @param name as the coach calls it
 * @param surface what is bounded on
 * @param sand whether it has a pit, so that last flights end in sand and jumps can be made
 * @param athletes most at once: lanes times those who share one, 1 to 400
 * @param hours when it is open, by day of the week
 * @param closed days on which it is not, whatever the hours say
 */
public record Venue(String key, String name, Surface surface, boolean sand, int athletes, Map<DayOfWeek, Hours> hours, List<Span> closed) {
  /** Takes copies; refuses a place for nobody. */
  public Venue {
    hours = Map.copyOf(hours);
    closed = List.copyOf(closed);
    if (athletes < 1 || athletes > 400) {
      throw new RefusedException("The place " + name + " takes " + athletes + " athletes at once; that is out of range: 1 to 400.");
    }
  }

  /**
   * Opening hours.
   *
   * @param from opens
   * @param to closes, after {@code from}
   */
  public record Hours(LocalTime from, LocalTime to) {
    /** Refuses an end before the beginning. */
    public Hours {
      if (!to.isAfter(from)) {
        throw new RefusedException("Open from " + from + " to " + to + " ends before it begins. Write the earlier time first.");
      }
    }
  }

  /** Whether it is open on a day. */
  public boolean open(LocalDate day) {
    return hours.containsKey(day.getDayOfWeek()) && closed.stream().noneMatch(s -> s.holds(day));
  }
}
