package boundwright.runway;

import java.util.List;

/**
 * The drills of the day in order, the same for the squad; each athlete does them from their own rung or the drill's.
 *
 * @param title what the coach calls it, may be empty
 * @param drills in order
 */
public record DayPlan(String title, List<Drill> drills) {
  /** Takes a copy. */
  public DayPlan {
    drills = List.copyOf(drills);
  }
}
