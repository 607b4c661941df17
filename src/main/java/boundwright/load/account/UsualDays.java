package boundwright.load.account;

import java.time.DayOfWeek;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The days of the week on which somebody usually comes: three times or more in the {@value #WEEKS} weeks that are looked at (judgement). */
public final class UsualDays {
  /** How many weeks are looked at. */
  public static final int WEEKS = 8;
  private static final int TIMES = 3;

  private UsualDays() {}

  /** How often they came on each of those, in the order of the week; empty where they came too seldom. */
  public static Map<DayOfWeek, Integer> of(List<DayLoad> eightWeeks) {
    Map<DayOfWeek, Integer> times = new EnumMap<>(DayOfWeek.class);
    eightWeeks.stream().filter(d -> d.contacts() > 0).forEach(d -> times.merge(d.date().getDayOfWeek(), 1, Integer::sum));
    times.values().removeIf(n -> n < TIMES);
    return times;
  }
}
