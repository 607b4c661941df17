package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.load.account.Work;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What is planned for athletes on the day of the plan, all of it, done or not. */
@FunctionalInterface
public interface PlannedWork {
  /** The drills of a day with their reps, from each athlete's rungs, by the athlete's number; every athlete given is in it. */
  Map<Long, List<Work>> of(List<Athlete> athletes, LocalDate day);
}
