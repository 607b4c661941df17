package boundwright.meet.day;

import java.util.Optional;

/** What is kept of the days of meets. Every write is on disk when the method returns. */
public interface MeetDayLog {
  /** The day of a meet; empty until one was kept. */
  Optional<MeetDay> day(long meetId);

  /**
   * Keeps the day of a meet in place of what was kept.
   *
   * @throws boundwright.quantity.RefusedException if the meet is not there
   */
  void keep(MeetDay day);
}
