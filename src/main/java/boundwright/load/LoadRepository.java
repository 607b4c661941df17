package boundwright.load;

import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the account of the legs needs kept beside the logs of the other rooms. Every write is on disk when the method returns. */
public interface LoadRepository {
  /** Adds other work and returns it with its number. */
  OtherWork add(OtherWork work);

  /** Other work of an athlete from a day on, oldest first. */
  List<OtherWork> otherWork(long athleteId, LocalDate from);

  /** Takes other work out and returns it; empty if it is not there. */
  Optional<OtherWork> removeOtherWork(long athleteId, long id);

  /** What the coach said of the weeks before the log, by the athlete's number. */
  Map<Long, LastWeek> lastWeeks();

  /** Keeps what the coach says of the weeks before the log, in place of what was said before. */
  void keep(long athleteId, LastWeek word);

  /** From when which part of the year holds, for the squad and for single athletes, oldest first. */
  List<SeasonStart> seasons();

  /** Keeps from when a part of the year holds, in place of one of the same day and athlete. */
  void keep(SeasonStart start);

  /** Takes one out; nothing happens if it is not there. */
  void remove(SeasonStart start);

  /** Contacts that were timed in athletes' clips on days before this one, by the athlete's number; those without any are left out. */
  Map<Long, List<Timed>> timed(List<Long> athletes, LocalDate before);
}
