package boundwright.load;

import boundwright.athlete.Athlete;
import boundwright.load.account.DayLoad;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** Everything that was logged of athletes' legs, in whichever room; a service above gathers it, because jumps and meets lie above. */
public interface WorkLog {
  /** Days with work from a day on, oldest first, by the athlete's number; every athlete given is in it. */
  Map<Long, List<DayLoad>> since(List<Athlete> athletes, LocalDate from);

  /** The first day with a logged contact, by the athlete's number; those without any are left out. */
  Map<Long, LocalDate> first(List<Athlete> athletes);
}
