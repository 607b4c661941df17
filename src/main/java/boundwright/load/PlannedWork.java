package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.load.account.Work;
import java.util.List;

/** What is planned for an athlete on the day of the plan, all of it, done or not. */
@FunctionalInterface
public interface PlannedWork {
  /** The drills with their reps, from this athlete's rungs. */
  List<Work> of(Athlete athlete);
}
