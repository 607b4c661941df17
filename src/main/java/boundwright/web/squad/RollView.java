package boundwright.web.squad;

import boundwright.athlete.Athlete;
import boundwright.track.Group;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * Who is here on a day, or who belongs to a group: names to tick.
 *
 * @param day which day
 * @param date the day in words
 * @param lines those who are shown
 * @param ticked numbers of those who are ticked
 * @param groups all groups
 * @param query part of a name that was asked for, or empty
 * @param only number of the group that was asked for, or 0
 * @param roll who is here, in words
 * @param group the group that is being changed
 * @param said what could not be done, or empty
 */
public record RollView(
    LocalDate day,
    String date,
    List<Line> lines,
    Set<Long> ticked,
    List<Group> groups,
    String query,
    long only,
    String roll,
    Named group,
    String said) {
  /** An athlete with the names of their groups. */
  public record Line(Athlete athlete, String groups) {}

  /** The group that is being changed: its number, 0 for a new one or on the page of a day, and its name as written. */
  public record Named(long id, String name) {}
}
